import { create } from 'zustand';

/** What a screen reader is told next; one region on the page says it. */
export const useSaid = create<{ readonly words: string }>(() => ({ words: '' }));

export const tell = (words: string): void => useSaid.setState({ words });
