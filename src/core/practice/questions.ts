import { hashOf } from '../base/seeded.ts';
import { between, distance, type Vec3 } from '../base/vec3.ts';
import type { Statics } from '../statics/result.ts';
import type { Member, Truss } from '../truss/result.ts';

export const questionKinds = [
  'nameTube',
  'findCluster',
  'whichBay',
  'tensionDiagonal',
  'missingDiagonal',
  'layOutBay',
] as const;
export type QuestionKind = (typeof questionKinds)[number];

/** Why the answer is the answer, in numbers of the truss and its statics. Worded in present. */
export type WhyRight =
  | { readonly kind: 'place'; readonly member: string }
  | { readonly kind: 'cluster'; readonly cluster: string }
  | { readonly kind: 'bay'; readonly member: string; readonly stations: readonly [string, string] }
  | {
      readonly kind: 'forces';
      readonly case: string;
      readonly axial: readonly { readonly id: string; readonly axialLbf: number }[];
    }
  | { readonly kind: 'twin'; readonly member: string; readonly twin: string; readonly face: string }
  | { readonly kind: 'steps'; readonly dxIn: number; readonly dyIn: number; readonly dzIn: number };

/** A question and its answer. The same truss, statics and subject give the same one, but for the order of choices. */
export interface Question {
  /** `nameTube:U3L-U4L`: stable, the schedule's key. */
  readonly id: string;
  readonly kind: QuestionKind;
  /** Member, cluster or face it is about. */
  readonly subject: string;
  /** How it is answered: one of `choices`, a cluster or two touched in the picture, or a length. */
  readonly by: 'choice' | 'cluster' | 'pair' | 'length';
  /** Member ids or bay labels. */
  readonly choices: readonly string[];
  readonly right: string;
  readonly rightIn?: number;
  readonly withinIn?: number;
  /** Load case of a question about forces. */
  readonly case?: string;
  readonly why: WhyRight;
}

/** A laid-out length is right to the nearest 1/16; the exercise's own measure, no limit of a truss. */
const LAY_OUT_WITHIN_IN = 1 / 16;
/** A diagonal counts as loaded from this share of the case's largest force. */
const LOADED = 0.02;
const diagonal = new Set<Member['role']>(['sideDiagonal', 'topDiagonal', 'bottomDiagonal']);

/** Everything that can be asked about one kind. */
type Bank = readonly { readonly subject: string; readonly make: (seed: string) => Question }[];

const mixed = (seed: string, right: string, wrong: readonly string[]): readonly string[] => {
  const order = (id: string): number => hashOf(`${seed} ${id}`);
  const others = [...new Set(wrong)].filter((id) => id !== right).sort((a, b) => order(a) - order(b));
  return [right, ...others.slice(0, 3)].sort((a, b) => order(a) - order(b) || (a < b ? -1 : 1));
};

/** How many of the nearest tubes stand for choice beside the right one. */
const NEAREST = 6;

const nameTube = (truss: Truss): Bank => {
  const at = new Map(truss.clusters.map((c) => [c.id, c.at]));
  const middle = (m: Member): Vec3 => between(at.get(m.from)!, at.get(m.to)!, 0.5);
  return truss.members.map((m) => ({
    subject: m.id,
    make: (seed) => {
      const near = truss.members
        .filter((o) => o.id !== m.id)
        .map((o) => ({ id: o.id, away: distance(middle(o), middle(m)) }))
        .sort((a, b) => a.away - b.away || (a.id < b.id ? -1 : 1))
        .slice(0, NEAREST);
      return {
        id: `nameTube:${m.id}`,
        kind: 'nameTube',
        subject: m.id,
        by: 'choice',
        choices: mixed(
          seed,
          m.id,
          near.map((o) => o.id),
        ),
        right: m.id,
        why: { kind: 'place', member: m.id },
      };
    },
  }));
};

const findCluster = (truss: Truss): Bank =>
  truss.clusters.map(({ id }) => ({
    subject: id,
    make: () => ({
      id: `findCluster:${id}`,
      kind: 'findCluster',
      subject: id,
      by: 'cluster',
      choices: [],
      right: id,
      why: { kind: 'cluster', cluster: id },
    }),
  }));

/** Of tubes that run from the one station of a bay to the other: for those alone the answer is plain to see. */
const whichBay = (truss: Truss): Bank => {
  const station = new Map(truss.clusters.map((c) => [c.id, c.station]));
  return truss.members.flatMap((m) => {
    const bay = truss.bays.find((b) => b.id === m.bay);
    const ends = [station.get(m.from), station.get(m.to)];
    if (!bay || truss.bays.length < 2 || !ends.includes(bay.id) || !ends.includes(bay.aft)) return [];
    return [
      {
        subject: m.id,
        make: (seed: string): Question => ({
          id: `whichBay:${m.id}`,
          kind: 'whichBay',
          subject: m.id,
          by: 'choice',
          choices: mixed(
            seed,
            bay.id,
            truss.bays.map((b) => b.id),
          ),
          right: bay.id,
          why: { kind: 'bay', member: m.id, stations: [bay.id, bay.aft] },
        }),
      },
    ];
  });
};

/** One tube in tension among tubes in compression, as the solved case has them. */
const tensionDiagonal = (truss: Truss, solved: Statics): Bank => {
  if (solved.kind !== 'stands') return [];
  const isDiagonal = new Set(truss.members.filter((m) => diagonal.has(m.role)).map((m) => m.id));
  return solved.cases.flatMap((one) => {
    const most = Math.max(...one.members.map((m) => Math.abs(m.axialLbf)));
    const loaded = one.members.filter((m) => isDiagonal.has(m.id) && Math.abs(m.axialLbf) >= LOADED * most);
    const pressed = loaded.filter((m) => m.axialLbf < 0);
    if (pressed.length < 1) return [];
    return loaded
      .filter((m) => m.axialLbf > 0)
      .map((m) => ({
        subject: `${one.id}/${m.id}`,
        make: (seed: string): Question => {
          const choices = mixed(
            seed,
            m.id,
            pressed.map((o) => o.id),
          );
          const axial = choices.map((id) => ({
            id,
            axialLbf: loaded.find((o) => o.id === id)!.axialLbf,
          }));
          return {
            id: `tensionDiagonal:${one.id}/${m.id}`,
            kind: 'tensionDiagonal',
            subject: m.id,
            by: 'choice',
            choices,
            right: m.id,
            case: one.id,
            why: { kind: 'forces', case: one.id, axial },
          };
        },
      }));
  });
};

/** Two clusters as one answer, whichever was touched first. */
export const pairSaid = (a: string, b: string): string => [a, b].sort().join('–');

/** The one diagonal of a side whose opposite side has its twin: the twin says which way it ran. */
const missingDiagonal = (truss: Truss): Bank =>
  truss.pairs
    .filter((pair) => pair.kind === 'member')
    .flatMap(({ left, right }) => {
      const m = truss.members.find((one) => one.id === right);
      const face = truss.faces.find((f) => f.members.includes(right) && f.face === 'right');
      if (m?.role !== 'sideDiagonal' || face?.corners.length !== 4) return [];
      const alone = truss.members.filter((o) => face.members.includes(o.id) && o.role === 'sideDiagonal');
      if (alone.length !== 1) return [];
      return [
        {
          subject: m.id,
          make: (): Question => ({
            id: `missingDiagonal:${m.id}`,
            kind: 'missingDiagonal',
            subject: m.id,
            by: 'pair',
            choices: [],
            right: pairSaid(m.from, m.to),
            why: { kind: 'twin', member: m.id, twin: left, face: face.id },
          }),
        },
      ];
    });

/** True length of a tube from the station table of its bay. */
const layOutBay = (truss: Truss): Bank => {
  const at = new Map(truss.clusters.map((c) => [c.id, c.at]));
  return truss.members
    .filter((m) => m.bay !== undefined)
    .map((m) => ({
      subject: m.id,
      make: () => {
        const [a, b] = [at.get(m.from)!, at.get(m.to)!];
        const [dxIn, dyIn, dzIn] = [b[0] - a[0], b[1] - a[1], b[2] - a[2]];
        return {
          id: `layOutBay:${m.id}`,
          kind: 'layOutBay',
          subject: m.id,
          by: 'length',
          choices: [],
          right: m.id,
          rightIn: Math.hypot(dxIn, dyIn, dzIn),
          withinIn: LAY_OUT_WITHIN_IN,
          why: { kind: 'steps', dxIn, dyIn, dzIn },
        };
      },
    }));
};

/** Every question this truss gives, by kind. */
export const questionBank = (truss: Truss, solved: Statics | null): Readonly<Record<QuestionKind, Bank>> => ({
  nameTube: nameTube(truss),
  findCluster: findCluster(truss),
  whichBay: whichBay(truss),
  tensionDiagonal: solved ? tensionDiagonal(truss, solved) : [],
  missingDiagonal: missingDiagonal(truss),
  layOutBay: layOutBay(truss),
});

/** What a trainee answered: a choice, a cluster id, two as `pairSaid` has them, or a length. */
export type Answer = { readonly said: string } | { readonly lengthIn: number };

export const isRight = (question: Question, answer: Answer): boolean =>
  'said' in answer
    ? question.by !== 'length' && answer.said === question.right
    : question.rightIn !== undefined &&
      Math.abs(answer.lengthIn - question.rightIn) <= (question.withinIn ?? 0) + 1e-9;
