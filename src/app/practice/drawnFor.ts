import type { Mark } from '../../core/walkRound/result.ts';
import type { Hit, SceneProps } from '../scene/sceneProps.ts';
import type { AtOnce } from '../state/answer.ts';
import { drawnText } from '../text/practiceDrawn.ts';
import { touchCluster } from './layoutRun.ts';
import type { HandedIn, LayoutRun, Session } from './session.ts';

/** What practice draws in place of the job's own picture. */
export type Drawn = Partial<
  Pick<
    SceneProps,
    'truss' | 'marks' | 'selected' | 'labels' | 'onPick' | 'arrows' | 'lines' | 'shape' | 'ghosted'
  >
>;

const touched = (hit: Hit | null): void => {
  if (hit?.kind === 'cluster') touchCluster(hit.id);
};

/** A truss without its damage map: a drill is about where things are. */
const plain = (now: AtOnce): ReadonlyMap<string, Mark> =>
  new Map(
    [...now.marks].map(([id, { kind }]) => [
      id,
      { id, kind, state: 'lookedAt', findings: [], damage: [], finishRemoved: false },
    ]),
  );

/** Nothing in the picture may give the answer away; once given, the right one is shown. */
const drawnOf = (run: LayoutRun, now: AtOnce): Drawn => {
  const question = run.questions[run.at];
  if (!question) return {};
  const shown = run.shown;
  const without = question.kind === 'missingDiagonal' && !shown ? question.subject : null;
  const ends = now.members.get(question.subject);
  const corners = question.why.kind === 'twin' ? question.why.face : null;
  const face = now.truss.faces.find(({ id }) => id === corners);
  const marked =
    question.kind === 'findCluster'
      ? []
      : question.kind === 'tensionDiagonal'
        ? question.choices
        : question.kind === 'missingDiagonal'
          ? (face?.corners ?? [])
          : question.kind === 'layOutBay'
            ? [question.subject, ...(ends ? [ends.from, ends.to] : [])]
            : [question.subject];
  const named = question.kind !== 'nameTube' && question.kind !== 'whichBay';
  return {
    ...(without === null
      ? {}
      : { truss: { ...now.truss, members: now.truss.members.filter((m) => m.id !== without) } }),
    selected: new Set(shown ? [question.subject] : run.touched === null ? marked : [run.touched]),
    labels: shown || named ? 'selection' : 'none',
    ghosted: new Set(),
    marks: plain(now),
    onPick: (question.by === 'cluster' || question.by === 'pair') && !shown ? touched : () => {},
  };
};

/** The pair under the trammel, as a line with its ends named. */
const spanned = ([from, to]: readonly [string, string], now: AtOnce): Drawn => {
  const [a, b] = [now.clusters.get(from)?.at, now.clusters.get(to)?.at];
  if (!a || !b) return {};
  return {
    selected: new Set([from, to]),
    labels: 'selection',
    lines: [{ id: `${from} ${to}`, from: a, to: b, label: drawnText.pair(from, to), strong: true }],
  };
};

const truthOf = ({ exercise }: Pick<HandedIn, 'exercise'>): Drawn => {
  const { blow, findings, moves } = exercise.truth;
  const largest = Math.max(0.001, ...moves.map(({ moveIn }) => Math.hypot(...moveIn)));
  return {
    selected: new Set(findings.map((f) => f.of)),
    labels: 'selection',
    ...(blow
      ? { arrows: [{ cluster: blow.cluster, towards: blow.direction, share: 1, label: drawnText.blow }] }
      : {}),
    ...(moves.length > 0
      ? {
          shape: {
            name: drawnText.struck,
            moves: new Map(moves.map((m) => [m.id, m.moveIn])),
            factor: Math.max(1, Math.min(20, Math.round(4 / largest))),
          },
        }
      : {}),
  };
};

/** What a session of practice puts into the picture of a job; null leaves the picture as it is. */
export const drawnFor = (now: AtOnce, key: string | null, session: Session): Drawn | null => {
  const { run, handedIn, truthShown, trammel, pair } = session;
  if (run?.kind === 'layout' && run.key === key && !run.over) return drawnOf(run, now);
  if (handedIn && handedIn.key === key && truthShown && run?.key !== key) return truthOf(handedIn);
  if (run?.key === key) return null;
  const shown = trammel?.key === key ? truthOf(trammel) : {};
  return pair ? { ...shown, ...spanned(pair, now) } : null;
};
