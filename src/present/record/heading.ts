import type { Section } from './sections.ts';

/** A heading, with what a reader must know before what follows. */
export const heading = (text: string, note?: string): Section => ({
  kind: 'heading',
  text,
  ...(note ? { note } : {}),
});
