import { create } from 'zustand';
import type { ExerciseKind } from '../../core/practice/areas.ts';
import type { Share } from '../../core/practice/hiddenDamage.ts';
import type { Card } from '../../core/practice/schedule.ts';

/** One finished exercise, each skill by itself. */
export interface Result {
  /** Day and time it was handed in. */
  readonly at: string;
  readonly who: string;
  readonly kind: ExerciseKind;
  /** Truss and seed. */
  readonly what: string;
  readonly level: number | null;
  readonly exam: boolean;
  readonly shares: Readonly<Record<string, Share>>;
}

/** How far a trainee is: kept on this device only, never in a job. */
export interface Progress {
  readonly cards: readonly Card[];
  readonly results: readonly Result[];
  /** When a round was handed in, by the key of its job: its marks come back with the job. */
  readonly handedIn: Readonly<Record<string, string>>;
}

const PLACE = 'tubewright-practice';
const MOST_RESULTS = 500;
const MOST_ROUNDS = 100;

const isNumber = (v: unknown): boolean => typeof v === 'number' && Number.isFinite(v);
const isCard = (v: unknown): v is Card => {
  const c = v as Card | null;
  return (
    typeof c?.id === 'string' &&
    [c.box, c.dueDay, c.asked, c.right].every(isNumber) &&
    c.box >= 0 &&
    c.box <= 4
  );
};
const isResult = (v: unknown): v is Result => {
  const r = v as Result | null;
  return (
    [r?.at, r?.who, r?.kind, r?.what].every((one) => typeof one === 'string') &&
    typeof r?.shares === 'object' &&
    Object.values(r.shares ?? {}).every((s) => isNumber(s?.got) && isNumber(s?.of))
  );
};

const load = (): Progress => {
  try {
    const kept = JSON.parse(localStorage.getItem(PLACE) ?? '{}') as Partial<Progress> | null;
    const list = <T>(value: unknown, is: (v: unknown) => v is T): readonly T[] =>
      Array.isArray(value) ? value.filter(is) : [];
    return {
      cards: list(kept?.cards, isCard),
      results: list(kept?.results, isResult),
      handedIn: Object.fromEntries(
        Object.entries(kept?.handedIn ?? {}).filter(([, at]) => typeof at === 'string'),
      ),
    };
  } catch {
    // Storage is blocked or garbled: progress then lasts as long as the page.
    return { cards: [], results: [], handedIn: {} };
  }
};

export const useProgress = create<Progress>(load);

useProgress.subscribe((progress) => {
  try {
    localStorage.setItem(PLACE, JSON.stringify(progress));
  } catch {
    // Blocked storage loses progress only.
  }
});

/** Whole days since 1970 on this device's clock: what the schedule counts in. */
export const today = (): number =>
  Math.floor((Date.now() - new Date().getTimezoneOffset() * 60_000) / 86_400_000);

export const keepResult = (result: Result): void =>
  useProgress.setState(({ results }) => ({ results: [...results, result].slice(-MOST_RESULTS) }));

export const forgetProgress = (): void => useProgress.setState({ cards: [], results: [] });

export const keepHandedIn = (key: string, at: string): void =>
  useProgress.setState(({ handedIn }) => ({
    handedIn: Object.fromEntries([...Object.entries({ ...handedIn, [key]: at })].slice(-MOST_ROUNDS)),
  }));
