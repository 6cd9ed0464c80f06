import { create } from 'zustand';

/** Which dialog lies over the sheet; it is opened by a key or a command and closed by itself. */
export const useDialog = create<{ readonly open: 'keys' | null }>(() => ({ open: null }));
