import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { colourIn, roundDown, roundUp, signed, upward } from '../../../src/app/picture/classes.ts';
import type { Given } from '../../../src/app/picture/laid.ts';
import { overlayFor } from '../../../src/app/picture/overlayFor.ts';
import { type OverlayName, overlays } from '../../../src/app/state/overlay.ts';
import { assess } from '../../../src/core/assess.ts';
import type { Assessment } from '../../../src/core/assessment.ts';
import { length } from '../../../src/core/base/vec3.ts';
import type { Job } from '../../../src/core/job/jobSchema.ts';
import { readJob } from '../../../src/core/job/read.ts';
import { expectNear } from '../../kit/near.ts';

let job: Job;
let all: Assessment;

beforeAll(() => {
  const read = readJob(readFileSync('demo-data/ground-loop.json', 'utf8'));
  if (!read.ok) throw new Error('the demo job does not open');
  job = read.value;
  all = assess(job, { targets: ['L2R-U3R'] });
}, 60_000);

const given = (show: OverlayName, more: Partial<Given['overlay']> = {}): Given => ({
  all,
  model: job.model,
  overlay: {
    show,
    caseId: 'landing',
    numbers: true,
    arrows: true,
    which: 0,
    playing: false,
    cut: null,
    ...more,
  },
  light: 'day',
  units: 'inFraction',
});

describe('load arrows', () => {
  it('show a force with its pounds and a moment, twice headed, with its inch-pounds along its axis', () => {
    const [first] = job.model.loadCases;
    const loads = [
      { cluster: 'L3L', forceLbf: [0, 0, -300] as [number, number, number] },
      {
        cluster: 'L3L',
        forceLbf: [400, 0, 0] as [number, number, number],
        momentInLbf: [0, -1200, 0] as [number, number, number],
      },
    ];
    const model = {
      ...job.model,
      loadCases: [{ ...first!, id: 'landing', weights: [], loads }],
    };
    const { arrows } = overlayFor({ ...given('forces'), model })!;
    expect(arrows?.map(({ label, turns = false }) => [label, turns])).toEqual([
      ['500 lbf', false],
      ['1,200 in-lbf', true],
    ]);
    expect(arrows?.[0]?.towards).toEqual([0.8, 0, -0.6]);
    expect(arrows?.[1]?.towards.map((v) => v + 0)).toEqual([0, -1, 0]);
  });
});

describe('classes', () => {
  it('are 1, 2 or 5 of a power of ten, up or down', () => {
    expect([0.3, 1, 1.2, 684, 2001].map(roundUp)).toEqual([0.5, 1, 2, 1000, 5000]);
    expect([0.3, 1, 1.9, 684, 5001].map(roundDown)).toEqual([0.2, 1, 1, 500, 5000]);
  });

  it('have one border fewer than colours, and no two classes of one colour', () => {
    for (const light of ['day', 'night', 'outdoor'] as const)
      for (const classes of [signed(900, light), upward([1, 2, 3, 4, 5], light)]) {
        expect(classes.colours.length).toBe(classes.borders.length + 1);
        expect(new Set(classes.colours).size).toBe(classes.colours.length);
        expect([...classes.borders].sort((a, b) => a - b)).toEqual(classes.borders);
      }
  });

  it('tell tension from compression, and little from either', () => {
    const classes = signed(900, 'day');
    const [push, rest, pull] = [-600, 0, 600].map((v) => colourIn(classes, v));
    expect(new Set([push, rest, pull]).size).toBe(3);
    expect(push).toBe(classes.colours[0]);
    expect(pull).toBe(classes.colours.at(-1));
  });
});

describe('what is laid over the picture', () => {
  it('is nothing until something is chosen', () => {
    expect(overlayFor(given('nothing'))).toBeNull();
  });

  it('says for every choice what it is, and each number carries its unit', () => {
    for (const show of overlays.filter((name) => name !== 'nothing')) {
      const laid = overlayFor(given(show))!;
      expect(laid.strip.title, show).not.toBe('');
      const unit = /lbf$|ksi$|%$| in$|^[+−]\d\.\d\d$/;
      for (const text of laid.numbers?.values() ?? []) expect(text, show).toMatch(unit);
    }
  });

  it('draws each load of the case where and as it is, and the largest one longest', () => {
    const arrows = overlayFor(given('forces'))!.arrows!;
    const loads = job.model.loadCases.find(({ id }) => id === 'landing')!;
    for (const { cluster, forceLbf } of loads.loads) {
      const arrow = arrows.find((a) => a.cluster === cluster)!;
      const weight = loads.weights?.find((w) => w.cluster === cluster)?.weightLbf ?? 0;
      const force = forceLbf!.map((f, k) => f + weight * loads.gravity[k]!);
      const size = Math.hypot(...force);
      expect(arrow.label).toBe(`${Math.round(size)} lbf`);
      force.forEach((f, k) => {
        expectNear(arrow.towards[k]!, f / size, { abs: 1e-12, because: 'same vector' });
      });
    }
    expect(Math.max(...arrows.map(({ share }) => share))).toBe(1);
  });

  it('enlarges the moves by a round factor that makes the largest a fiftieth to a twentieth of the truss', () => {
    const shape = overlayFor(given('deflected'))!.shape!;
    const largest = Math.max(...[...shape.moves.values()].map(length)) * shape.factor;
    const x = all.truss.clusters.map(({ at }) => at[0]);
    const long = Math.max(...x) - Math.min(...x);
    expect(largest).toBeGreaterThan(0.015 * long);
    expect(largest).toBeLessThan(0.055 * long);
    expect(roundUp(shape.factor)).toBe(shape.factor);
  });

  it('shows a cut with its kerf at once, and its shape when every move is known', () => {
    const target = all.relief.targets.find(({ member }) => member === 'L2R-U3R')!;
    const [best] = target.candidates;
    const laid = overlayFor(given('cut', { cut: { target: 'L2R-U3R', cuts: best!.cuts } }))!;
    expect(laid.cutMarks!.map(({ member }) => member)).toEqual(best!.cuts);
    expect(laid.shape!.moves.size).toBe(all.truss.clusters.length);
    const other = all.relief.targets.find(({ member }) => member !== 'L2R-U3R')!;
    const waiting = overlayFor(
      given('cut', { cut: { target: other.member, cuts: other.candidates[0]!.cuts } }),
    )!;
    expect(waiting.shape).toBeUndefined();
    expect(waiting.cutMarks!.length).toBeGreaterThan(0);
  });
});
