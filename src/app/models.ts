/** The library that comes with the app: text as it lies in the files, fetched when asked for. */
const modelTexts = import.meta.glob<string>('../../models/*.json', { query: '?raw', import: 'default' });
const demoTexts = import.meta.glob<string>('../../demo-data/*.json', { query: '?raw', import: 'default' });

export interface Shelved {
  /** File name without folder and ending. */
  readonly name: string;
  readonly text: () => Promise<string>;
}

const shelved = (texts: Readonly<Record<string, () => Promise<string>>>): readonly Shelved[] =>
  Object.entries(texts)
    .map(([path, text]) => ({ name: path.replace(/^.*\/|\.json$/g, ''), text }))
    .sort((a, b) => (a.name < b.name ? -1 : 1));

export const models = shelved(modelTexts);
export const demos = shelved(demoTexts);

/** What a first visitor sees: the demo job, else the first model. */
export const firstText = async (): Promise<string> => {
  const first = demos[0] ?? models[0];
  if (!first) throw new Error('no model and no demo job was built in');
  return first.text();
};
