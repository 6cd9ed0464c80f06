import { create } from 'zustand';
import type { Hold, Look } from '../../core/job/jobSchema.ts';
import type { State } from '../../core/walkRound/result.ts';
import type { SceneProps, ViewAsk, ViewName } from '../scene/sceneProps.ts';

/** The words of the route, in the order of the work. Only what exists is shown. */
export const routes = [
  'start',
  'walkRound',
  'loadPath',
  'trammel',
  'decide',
  'plan',
  'estimate',
  'relieve',
  'straighten',
  'splice',
  'record',
  'practice',
] as const;
/** Bench sums stand beside the route: they need no job. */
export type Route = (typeof routes)[number] | 'bench';

/** A bay, a face or a list that is set apart: the rest ghosted, or itself ghosted. */
export interface Apart {
  /** A bay (`4`), a face (`4 left`), or empty when `ids` say what. */
  readonly zone: string;
  readonly ids?: readonly string[];
  readonly how: 'isolate' | 'ghost';
}

export type Middle = 'picture' | 'both' | 'table';
export type SortBy = 'place' | 'id' | 'state' | 'length' | 'tube';

/** How the job is looked at. Kept nowhere and never undone. */
export interface View {
  readonly route: Route;
  /** Members and clusters, in the order they were picked; the last one is the one in hand. */
  readonly selected: readonly string[];
  readonly camera: ViewAsk;
  readonly apart: Apart | null;
  readonly labels: SceneProps['labels'];
  /** States switched off in the legend. */
  readonly hidden: readonly State[];
  readonly middle: Middle;
  readonly search: string;
  readonly sort: { readonly by: SortBy; readonly down: boolean };
  /** Where the selected tube was touched, from its `from` cluster. */
  readonly touchedIn: number | null;
  /** The hold whose measured shape is drawn, and how often its moves are enlarged; none: the truss as drawn. */
  readonly found: { readonly hold: Hold | null; readonly factor: number };
  /** How the next tubes are looked at: goes on every look record. */
  readonly lookBy: { readonly method: Look['method']; readonly finishRemoved: boolean };
  /** Several are picked one after another without a modifier key. */
  readonly several: boolean;
}

export const startView: View = {
  route: 'walkRound',
  selected: [],
  camera: { view: 'threeQuarter', fit: 'all', turn: 0 },
  apart: null,
  labels: 'selection',
  hidden: [],
  middle: 'picture',
  search: '',
  sort: { by: 'place', down: false },
  touchedIn: null,
  found: { hold: null, factor: 1 },
  lookBy: { method: 'eye', finishRemoved: false },
  several: false,
};

export const useView = create<View>(() => startView);

export const setView = (change: Partial<View>): void => useView.setState(change);

/** Picks one thing alone, or with the others when `also`; picked again with `also` it is let go. */
export const select = (id: string, also = false, touchedIn: number | null = null): void =>
  useView.setState(({ selected }) => ({
    selected: also
      ? selected.includes(id)
        ? selected.filter((other) => other !== id)
        : [...selected, id]
      : [id],
    touchedIn,
  }));

export const selectAll = (ids: readonly string[]): void =>
  useView.setState({ selected: [...new Set(ids)], touchedIn: null });

export const ask = (view: ViewName | 'keep', fit: ViewAsk['fit']): void =>
  useView.setState(({ camera }) => ({ camera: { view, fit, turn: camera.turn + 1 } }));
