import { create } from 'zustand';
import type { Method } from '../../core/splice/result.ts';

/** Which way of repair is open for which tube. Kept nowhere and never undone; the decision itself is in the job. */
export interface Shop {
  readonly member: string;
  readonly method: Method | null;
}

export const useShop = create<Shop>(() => ({ member: '', method: null }));

export const openMethod = (member: string, method: Method | null): void =>
  useShop.setState({ member, method });
