import { create } from 'zustand';

/** Whether the model bench stands in place of the sheet. Its model is fetched with it. */
export const useOnBench = create<{ readonly open: boolean }>(() => ({ open: false }));
