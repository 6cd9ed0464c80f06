import { readFileSync } from 'node:fs';
import { assess } from '../../src/core/assess.ts';
import type { Assessment } from '../../src/core/assessment.ts';
import type { Job, JobRecord } from '../../src/core/job/jobSchema.ts';
import type { Model } from '../../src/core/job/modelSchema.ts';

const model = (name: string): Model =>
  JSON.parse(readFileSync(new URL(`../../models/${name}.json`, import.meta.url), 'utf8')) as Model;

const stamp = (n: number) => ({
  id: `r${String(n).padStart(3, '0')}`,
  by: n % 3 === 0 ? 'Odell Farrow' : 'Mira Tannahill',
  at: `2026-03-${String(2 + Math.floor(n / 20)).padStart(2, '0')}T${String(8 + (n % 10)).padStart(2, '0')}:15:00Z`,
  device: 'tablet-a',
});

type Loose = Record<string, unknown> & { kind: string };

const entered: readonly Loose[] = [
  { kind: 'held', setup: 'gear-and-tail' },
  {
    kind: 'mishap',
    cases: [],
    blow: { cluster: 'L2R', direction: [1, -0.2, 0.6] },
    story: 'Ground loop to the left, right gear struck a ditch.',
  },
  { kind: 'area', bay: '2', access: 'stripped' },
  { kind: 'area', bay: '3', access: 'open' },
  { kind: 'area', bay: '7', access: 'covered' },
  ...[
    'L1L-L2L',
    'U1L-U2L',
    'U2L-U3L',
    'U3L-U4L',
    'L3L-L4L',
    'L4L-L5L',
    'U4L-U5L',
    'U5L-U6L',
    'U2R-U3R',
    'U3R-U4R',
  ].map((of) => ({ kind: 'look', of, state: 'lookedAt', method: 'eye', finishRemoved: false })),
  {
    kind: 'look',
    of: 'U4R-U5R',
    state: 'lookAgain',
    method: 'magnifier',
    finishRemoved: true,
    note: 'Paint lifted along the toe',
  },
  {
    kind: 'finding',
    of: 'L2R-L3R',
    origin: 'thisAccident',
    damage: 'bow',
    depthIn: 0.625,
    place: { from: 'L2R', atIn: 6.5 },
    clock: 12,
    shape: 'smooth',
    note: 'Sighted along the tube',
  },
  {
    kind: 'finding',
    of: 'L3R-L4R',
    origin: 'thisAccident',
    damage: 'kink',
    depthIn: 0.25,
    place: { from: 'L3R', atIn: 9 },
    clock: 3,
  },
  { kind: 'finding', of: 'L2R-U3R', origin: 'thisAccident', damage: 'bow' },
  { kind: 'finding', of: 'L3R', origin: 'thisAccident', damage: 'crack', crackIn: 0.34375, where: 'weldToe' },
  { kind: 'finding', of: 'L4L-L5L', origin: 'older', damage: 'thinned', wallLeftIn: 0.028, cause: 'rust' },
  {
    kind: 'finding',
    of: 'L5R-L6R',
    origin: 'unknown',
    damage: 'dent',
    depthIn: 0.09375,
    alongIn: 0.75,
    widthIn: 0.5,
    widthBy: 'across',
    place: { from: 'L5R', atIn: 7.25 },
    clock: 6,
  },
  {
    kind: 'finding',
    of: 'L6L-U7L',
    origin: 'thisAccident',
    damage: 'oval',
    largestIn: 0.65,
    smallestIn: 0.58,
  },
  { kind: 'decision', of: 'L2R-L3R', choice: 'replace', reason: 'Bow too deep for the press here' },
  { kind: 'decision', of: 'L3R-L4R', choice: 'splice', reason: 'Kink mid bay' },
  { kind: 'decision', of: 'L5R-L6R', choice: 'patch' },
  { kind: 'decision', of: 'L6L-U7L', choice: 'straighten', reason: 'Round out and look again' },
  {
    kind: 'reading',
    ends: [
      { cluster: 'U3R', mark: 'axis' },
      { cluster: 'L4R', mark: 'axis' },
    ],
    lengthIn: 49.5,
    instrument: 'trammel',
    stdIn: 0.03125,
    hold: 'beforeCutting',
  },
  {
    kind: 'reading',
    ends: [
      { cluster: 'U3L', mark: 'axis' },
      { cluster: 'L4L', mark: 'axis' },
    ],
    lengthIn: 49.9,
    instrument: 'trammel',
    stdIn: 0.03125,
    hold: 'beforeCutting',
  },
  { kind: 'manual', topic: 'tolerance-diagonal', valueIn: 0.125, source: 'Invented sheet 7' },
  { kind: 'note', words: 'Wreck released on the 1st, by telephone.' },
];

/** The demo job, as the shop's people entered it. */
export const demoJob = (): Job =>
  JSON.parse(readFileSync(new URL('../../demo-data/ground-loop.json', import.meta.url), 'utf8')) as Job;

/** An invented job on an invented model, with one of most things. */
export const madeJob = (name = 'high-wing-tandem', purpose: Job['purpose'] = 'job'): Job => ({
  format: 'tubewright-job',
  version: 1,
  purpose,
  name: 'Ditch at Harrow Fell',
  aircraft: 'Invented two-seater, X-TEST, serial 14',
  model: model(name),
  records: entered.map((record, n) => ({ ...stamp(n), ...record })) as unknown as readonly JobRecord[],
});

export const emptyJob = (name = 'high-wing-tandem'): Job => ({ ...madeJob(name), records: [] });

export const assessed = (job: Job): Assessment => assess(job);

export const options = {
  paper: 'a4',
  units: 'inFraction',
  version: '0.1.0-test',
  hash: '5f2d0c9a7be1446288aa',
} as const;
