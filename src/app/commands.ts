import { type TagWord, tag } from './deeds.ts';
import { saveCopy } from './handout.ts';
import { openFromPicker } from './opening.ts';
import type { ViewName } from './scene/sceneProps.ts';
import { stopWork, useAnswer } from './state/answer.ts';
import { useDialog } from './state/dialog.ts';
import { redo, redoName, undo, undoName, useJob } from './state/job.ts';
import { setPrefs, usePrefs } from './state/prefs.ts';
import { tell } from './state/said.ts';
import { ask, type Route, routes, selectAll, setView, useView } from './state/view.ts';
import { commandText as text } from './text/commands.ts';
import { lightText, routeText, tagText, viewText } from './text/frame.ts';

/** Something a person can do, once: buttons, keys and the find box all use this row. */
export interface Command {
  readonly id: string;
  readonly name: string;
  /** `Mod` is Ctrl or ⌘. A single letter acts only outside fields, and can be switched off. */
  readonly keys?: string;
  readonly when: () => boolean;
  readonly do: () => void;
}

/** Goes a step back or forward and says which; nothing when there is none. */
const stepAloud = (say: (name: string) => string, name: string | null, go: () => void): void => {
  if (name === null) return;
  go();
  tell(say(name));
};

const open = (): boolean => useJob.getState().job !== null;
const picked = (): boolean => useView.getState().selected.length > 0;

const focusOn = (selector: string): void => {
  const field = document.querySelector<HTMLElement>(selector);
  field?.focus();
};

const twins = (): readonly string[] => {
  const truss = useAnswer.getState().atOnce?.truss;
  const byId = new Map<string, string>();
  for (const { left, right } of truss?.pairs ?? []) {
    byId.set(left, right);
    byId.set(right, left);
  }
  return useView.getState().selected.flatMap((id) => byId.get(id) ?? []);
};

const apartBay = (how: 'isolate' | 'ghost'): void => {
  const { selected, apart } = useView.getState();
  const now = useAnswer.getState().atOnce;
  const last = selected.at(-1);
  const bay =
    last === undefined ? undefined : (now?.members.get(last)?.bay ?? now?.clusters.get(last)?.station);
  const zone = now?.truss.bays.find(({ id }) => id === bay)?.id;
  setView({ apart: apart?.how === how || zone === undefined ? null : { zone, how } });
};

export const commands: readonly Command[] = [
  {
    id: 'undo',
    name: text.undo,
    keys: 'Mod+Z',
    when: () => undoName() !== null,
    do: () => stepAloud(text.undone, undoName(), undo),
  },
  {
    id: 'redo',
    name: text.redo,
    keys: 'Mod+Shift+Z',
    when: () => redoName() !== null,
    do: () => stepAloud(text.redone, redoName(), redo),
  },
  {
    id: 'find',
    name: text.find,
    keys: '/',
    when: open,
    do: () => focusOn('#find'),
  },
  {
    id: 'keys',
    name: text.keys,
    keys: '?',
    when: () => true,
    do: () => useDialog.setState({ open: 'keys' }),
  },
  { id: 'open', name: text.open, keys: 'Mod+O', when: () => true, do: openFromPicker },
  { id: 'saveCopy', name: text.saveCopy, keys: 'Mod+S', when: open, do: () => void saveCopy() },
  ...(Object.keys(tagText) as TagWord[]).map((word) => ({
    id: `tag-${word}`,
    name: text.tag(tagText[word].name),
    keys: tagText[word].keys,
    when: () => open() && picked(),
    do: () => tag(useView.getState().selected, word),
  })),
  ...(Object.keys(viewText) as ViewName[]).map((view) => ({
    id: `view-${view}`,
    name: text.view(viewText[view].name),
    keys: viewText[view].keys,
    when: open,
    do: () => ask(view, 'all'),
  })),
  { id: 'fitAll', name: text.fitAll, keys: 'F', when: open, do: () => ask('keep', 'all') },
  {
    id: 'fitSelected',
    name: text.fitSelected,
    keys: 'Shift+F',
    when: picked,
    do: () => ask('keep', 'selection'),
  },
  { id: 'isolateBay', name: text.isolateBay, keys: 'I', when: picked, do: () => apartBay('isolate') },
  { id: 'ghostBay', name: text.ghostBay, keys: 'G', when: picked, do: () => apartBay('ghost') },
  {
    id: 'showAll',
    name: text.showAll,
    keys: 'Shift+G',
    when: () => useView.getState().apart !== null || useView.getState().hidden.length > 0,
    do: () => setView({ apart: null, hidden: [] }),
  },
  {
    id: 'twin',
    name: text.twin,
    keys: 'T',
    when: () => twins().length > 0,
    do: () => selectAll(twins()),
  },
  { id: 'clear', name: text.clear, keys: 'Escape', when: picked, do: () => selectAll([]) },
  {
    id: 'names',
    name: text.names,
    keys: 'N',
    when: open,
    do: () => setView({ labels: useView.getState().labels === 'all' ? 'selection' : 'all' }),
  },
  {
    id: 'table',
    name: text.table,
    keys: 'V',
    when: open,
    do: () => setView({ middle: useView.getState().middle === 'picture' ? 'both' : 'picture' }),
  },
  {
    id: 'several',
    name: text.several,
    keys: 'M',
    when: open,
    do: () => setView({ several: !useView.getState().several }),
  },
  {
    id: 'stop',
    name: text.stop,
    keys: 'Mod+.',
    when: () => useAnswer.getState().working,
    do: stopWork,
  },
  ...routes.map((route: Route, i) => ({
    id: `go-${route}`,
    name: text.go(routeText[route]),
    ...(i < 9 ? { keys: `Alt+${i + 1}` } : {}),
    when: () => true,
    do: () => setView({ route }),
  })),
  {
    id: 'go-bench',
    name: text.go(routeText.bench),
    when: () => true,
    do: () => setView({ route: 'bench' }),
  },
  ...(['day', 'night', 'outdoor'] as const).map((light) => ({
    id: `light-${light}`,
    name: text.light(lightText[light]),
    when: () => usePrefs.getState().light !== light,
    do: () => setPrefs({ light }),
  })),
];

/** A key press as the rows above write it: `Mod+Shift+Z`, `F`, `Shift+F`, `/`. */
export const keysOf = (
  event: Pick<KeyboardEvent, 'key' | 'code' | 'ctrlKey' | 'metaKey' | 'altKey' | 'shiftKey'>,
): string => {
  const digit = event.altKey ? /^Digit(\d)$/.exec(event.code)?.[1] : undefined;
  const plain = digit ?? (event.key.length === 1 ? event.key.toUpperCase() : event.key);
  const shift = event.shiftKey && /^([A-Z]|[A-Z][a-z]+)$/.test(plain);
  return [event.ctrlKey || event.metaKey ? 'Mod' : '', event.altKey ? 'Alt' : '', shift ? 'Shift' : '', plain]
    .filter((part) => part !== '')
    .join('+');
};

const within = (target: EventTarget | null, selector: string): boolean =>
  target instanceof Element && target.closest(selector) !== null;

const fields = 'input, select, textarea, [contenteditable]';
const texts = 'input:not([type="checkbox"], [type="radio"]), textarea, [contenteditable]';

/** Whether a key must be left to what has the focus: typing in a field, and a text field's own undo. */
const isTheirs = (event: KeyboardEvent, keys: string): boolean => {
  if (within(event.target, 'dialog')) return true;
  const held = event.ctrlKey || event.metaKey || event.altKey;
  if (!held) return within(event.target, fields);
  return (keys === 'Mod+Z' || keys === 'Mod+Shift+Z') && within(event.target, texts);
};

/** Does what the key says; gives whether there was such a command. */
export const pressKey = (event: KeyboardEvent): boolean => {
  const keys = keysOf(event);
  const command = commands.find((one) => one.keys === keys);
  const isLetter = /^(Shift\+)?.$/.test(keys);
  if (!command?.when() || isTheirs(event, keys)) return false;
  if (isLetter && !usePrefs.getState().letterKeys) return false;
  command.do();
  return true;
};

export const commandOf = (id: string): Command => {
  const command = commands.find((one) => one.id === id);
  if (!command) throw new Error(`no command ${id}`);
  return command;
};
