import { temporal } from 'zundo';
import { create, useStore } from 'zustand';
import type { Issue } from '../../core/base/issue.ts';
import { type Model, roles } from '../../core/job/modelSchema.ts';
import { readModel } from '../../core/job/read.ts';
import { writeModel } from '../../core/job/write.ts';
import { remember } from '../../core/memo.ts';
import { blankModel, editModel, type ModelChange } from '../../core/truss/modelEdit.ts';
import type { Truss } from '../../core/truss/result.ts';
import { expandTruss } from '../../core/truss/truss.ts';
import { useOnBench } from '../state/onBench.ts';
import { lastChangeText } from '../text/modelUndo.ts';

export const sections = [
  'begin',
  'stations',
  'bracing',
  'tubes',
  'points',
  'loads',
  'distances',
  'tables',
  'use',
] as const;
export type Section = (typeof sections)[number];

/** The model on the bench. It is not the open job's until it is used; it is kept on this device as it is typed. */
export interface DraftState {
  readonly model: Model;
  /** What the latest change is called; undo shows it. */
  readonly change: string | null;
  /** Typing on in the field that made the latest change is still that change. */
  readonly field: string | null;
  readonly refused: readonly Issue[];
  readonly section: Section;
  /** Clusters and tubes in hand, in the order they were touched. */
  readonly picked: readonly string[];
  /** Lengths typed beside the distances to take, by `from to`. */
  readonly typed: Readonly<Record<string, string>>;
  /** A table pasted anywhere on the bench, waiting to be looked at. */
  readonly pasted: string;
}

const PLACE = 'tubewright-model-bench';

const kept = (): Model => {
  try {
    const read = readModel(localStorage.getItem(PLACE) ?? '');
    return read.ok ? read.value : blankModel('in');
  } catch {
    // Blocked storage: the bench then lasts as long as the page.
    return blankModel('in');
  }
};

const TYPED = `${PLACE}-typed`;
const keptTyped = (): DraftState['typed'] => {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(TYPED) ?? '{}');
    return Object.fromEntries(
      Object.entries(kept ?? {}).filter((one): one is [string, string] => typeof one[1] === 'string'),
    );
  } catch {
    return {};
  }
};

type Undoable = Pick<DraftState, 'model' | 'change'>;

export const useDraft = create<DraftState>()(
  temporal(
    (): DraftState => ({
      ...{ model: kept(), change: null, field: null, refused: [] },
      ...{ section: 'begin', picked: [], typed: keptTyped(), pasted: '' },
    }),
    {
      limit: 500,
      partialize: ({ model, change }): Undoable => ({ model, change }),
      equality: (a, b) => a.model === b.model,
    },
  ),
);

const past = useDraft.temporal;

const quietly = (state: Partial<DraftState>): void => {
  past.getState().pause();
  useDraft.setState(state);
  past.getState().resume();
};

useDraft.subscribe((now, before) => {
  try {
    if (now.model !== before.model) localStorage.setItem(PLACE, writeModel(now.model));
    if (now.typed !== before.typed) localStorage.setItem(TYPED, JSON.stringify(now.typed));
  } catch {
    // The person is told on the page for using it: save it as a file.
  }
});

/** How the bench is looked at; never undone. */
export const setDraft = (state: Partial<Omit<DraftState, 'model' | 'change' | 'field'>>): void =>
  quietly(state);

export const openBench = (section: Section = 'begin'): void => {
  quietly({ section });
  useOnBench.setState({ open: true });
};
export const closeBench = (): void => useOnBench.setState({ open: false });

/**
 * Makes changes to the model as one undoable step under one name. With `field`, more changes of the same field join it.
 * A change that is refused leaves the model as it was and keeps the reasons for the screen.
 */
export const changeModel = (
  changes: readonly ModelChange[],
  name: string,
  field: string | null = null,
): boolean => {
  const before = useDraft.getState();
  let model = before.model;
  for (const change of changes) {
    const made = editModel(model, change);
    if (!made.ok) {
      quietly({ refused: made.issues });
      return false;
    }
    model = made.value;
  }
  const next = { model, change: name, field, refused: [] };
  if (field !== null && before.field === field) quietly(next);
  else useDraft.setState(next);
  return true;
};

/** Another model on the bench, as one undoable step. */
export const putModel = (model: Model, name: string): void =>
  useDraft.setState({ model, change: name, field: null, refused: [], picked: [] });

/** The field was left: what is typed next is a change of its own. */
export const leaveField = (): void => {
  if (useDraft.getState().field !== null) quietly({ field: null });
};

export const useDraftUndo = (): { readonly undo: string | null; readonly redo: string | null } => {
  const change = useDraft((draft) => draft.change);
  const back = useStore(past, (state) => state.pastStates.length);
  const forward = useStore(past, (state) => state.futureStates.at(-1)?.change ?? null);
  return { undo: back > 0 ? (change ?? lastChangeText) : null, redo: forward };
};

export const undoDraft = (): void => {
  past.getState().undo();
  quietly({ field: null, refused: [] });
};
export const redoDraft = (): void => {
  past.getState().redo();
  quietly({ field: null, refused: [] });
};

const expanded = remember(expandTruss);

/** The truss of the model on the bench. */
export const useDraftTruss = (): Truss => expanded(useDraft((draft) => draft.model));

/** Stands in where no size is given yet, so that the truss shows from the second station on. In the picture only. */
const thin = { odIn: 0.375, wallIn: 0.028 };

const shown = remember((model: Model): Truss => {
  const sized = Object.fromEntries(roles.map((role) => [role, model.tubes.roles[role] ?? thin]));
  return expandTruss({ ...model, tubes: { ...model.tubes, roles: sized } });
});

/** The truss as the picture shows it: a tube whose size is not given yet is drawn thin. */
export const useShownTruss = (): Truss => shown(useDraft((draft) => draft.model));

/** Touched alone, or with the one before it: two clusters one after another can be joined. */
export const pickOnBench = (id: string | null): void => {
  const { picked } = useDraft.getState();
  const clusters = new Set(expanded(useDraft.getState().model).clusters.map((c) => c.id));
  const before = picked.at(-1);
  const next =
    id === null
      ? []
      : picked.includes(id)
        ? picked.filter((other) => other !== id)
        : clusters.has(id) && before !== undefined && clusters.has(before)
          ? [before, id]
          : [id];
  quietly({ picked: next });
};
