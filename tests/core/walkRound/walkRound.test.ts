import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  choices,
  type Decision,
  type Finding,
  type Look,
  type RecordOf,
} from '../../../src/core/job/jobSchema.ts';
import { readModel } from '../../../src/core/job/read.ts';
import { standing } from '../../../src/core/job/standing.ts';
import { expandTruss } from '../../../src/core/truss/truss.ts';
import { type State, states } from '../../../src/core/walkRound/result.ts';
import { stateOfChoice, walkRound } from '../../../src/core/walkRound/walkRound.ts';
import { recordArb, smallModel } from '../../kit/garbage.ts';
import { soak } from '../../kit/soak.ts';
import { frozen } from '../../kit/trusses.ts';

const truss = frozen(expandTruss(smallModel));
if (truss.issues.length > 0) throw new Error(JSON.stringify(truss.issues));
let next = 0;
const stamp = () => {
  next++;
  return {
    id: `r${next}`,
    by: 'Ana',
    device: 't',
    at: `2026-03-01T09:00:${String(next % 60).padStart(2, '0')}Z`,
  };
};
const bow = (of: string): Finding => ({ kind: 'finding', damage: 'bow', of, origin: 'unknown', ...stamp() });
const look = (of: string, state: Look['state'] = 'lookedAt', finishRemoved = false): Look => ({
  kind: 'look',
  of,
  state,
  method: 'eye',
  finishRemoved,
  ...stamp(),
});
const decide = (of: string, choice: Decision['choice']): Decision => ({
  kind: 'decision',
  of,
  choice,
  ...stamp(),
});
const area = (bay: string, more: Partial<RecordOf<'area'>>): RecordOf<'area'> => ({
  kind: 'area',
  bay,
  access: 'open',
  ...stamp(),
  ...more,
});

interface Entered {
  readonly looks?: readonly Look[];
  readonly findings?: readonly Finding[];
  readonly decisions?: readonly Decision[];
  readonly areas?: readonly RecordOf<'area'>[];
}
const walked = (entered: Entered) =>
  walkRound(
    truss,
    entered.looks ?? [],
    entered.findings ?? [],
    entered.decisions ?? [],
    entered.areas ?? [],
    [],
  );
const stateOf = (id: string, entered: Entered): State | undefined =>
  walked(entered).marks.find((m) => m.id === id)?.state;
const [tube, twin] = ['U1L-U2L', 'U1R-U2R'];

describe('walkRound', () => {
  it('starts with every member and cluster of every shipped model not looked at', () => {
    for (const name of ['high-wing-tandem', 'low-wing-side-by-side', 'practice-truss']) {
      const model = readModel(readFileSync(`models/${name}.json`, 'utf8'));
      if (!model.ok) throw new Error(name);
      const whole = expandTruss(model.value);
      const coverage = walkRound(whole, [], [], [], [], []);
      expect(coverage.notLookedAt.members).toEqual(whole.members.map((m) => m.id));
      expect(coverage.notLookedAt.clusters).toEqual(whole.clusters.map((c) => c.id));
      expect(coverage.members.notLookedAt).toBe(whole.members.length);
      expect(coverage.clusters.notLookedAt).toBe(whole.clusters.length);
      expect(coverage.issues).toEqual([]);
    }
  });

  it('shows the decision before the finding, and the finding before the look', () => {
    const looks = [look(tube, 'lookAgain')];
    const findings = [bow(tube)];
    expect(stateOf(tube, {})).toBe('notLookedAt');
    expect(stateOf(tube, { looks })).toBe('lookAgain');
    expect(stateOf(tube, { looks: [...looks, look(tube)] })).toBe('lookedAt');
    expect(stateOf(tube, { looks, findings })).toBe('undecided');
    expect(stateOf(tube, { looks, findings, decisions: [decide(tube, 'splice')] })).toBe('splice');
    expect(stateOf(tube, { decisions: [decide(tube, 'refer')] })).toBe('undecided');
    expect(stateOf('U2R', { findings: [bow('U2R')] })).toBe('undecided');
  });

  // The table of "State shown" in the shapes of the product, written out again.
  it.each([
    ['straighten', 'straighten'],
    ['roundOut', 'straighten'],
    ['patch', 'splitSleeve'],
    ['splitSleeve', 'splitSleeve'],
    ['splice', 'splice'],
    ['replace', 'replace'],
    ['fingerPlate', 'replace'],
    ['rebuild', 'replace'],
    ['refer', 'undecided'],
  ] as const)('shows the decision %s as %s', (choice, state) => {
    expect(stateOf(tube, { decisions: [decide(tube, choice)] })).toBe(state);
    expect(Object.keys(stateOfChoice).sort()).toEqual([...choices].sort());
  });

  it('counts a finding as looked at', () => {
    const coverage = walked({ findings: [bow(tube)] });
    expect(coverage.notLookedAt.members).not.toContain(tube);
    expect(coverage.members).toMatchObject({ undecided: 1, notLookedAt: truss.members.length - 1 });
  });

  it('shows the latest of several standing looks or decisions, and lists all', () => {
    const [first, second] = [decide(tube, 'splice'), decide(tube, 'straighten')];
    const coverage = walked({
      decisions: [second, first],
      looks: [look(tube, 'lookedAt', true), look(tube)],
    });
    expect(coverage.marks.find((m) => m.id === tube)).toMatchObject({
      choice: 'straighten',
      finishRemoved: false,
    });
    expect(coverage.decisions.length).toBe(2);
  });

  it('says that the finish was off only where a look says so', () => {
    expect(
      walked({ looks: [look(tube, 'lookedAt', true)] }).marks.find((m) => m.id === tube)?.finishRemoved,
    ).toBe(true);
    expect(
      walked({ looks: [look(tube, 'lookAgain', true)] }).marks.find((m) => m.id === tube)?.finishRemoved,
    ).toBe(false);
  });

  it('names each kind of damage once, in order', () => {
    const crack: Finding = { kind: 'finding', damage: 'crack', of: tube, origin: 'older', ...stamp() };
    const findings = [bow(tube), crack, bow(tube)];
    const mark = walked({ findings }).marks.find((m) => m.id === tube);
    expect(mark?.damage).toEqual(['bow', 'crack']);
    expect(mark?.findings).toEqual(findings.map((f) => f.id));
  });

  it('says for each face what is not looked at yet, and how it can be reached', () => {
    const coverage = walked({
      looks: [look(tube)],
      areas: [area('1', { access: 'covered' }), area('1', { face: 'left', access: 'stripped' })],
    });
    const zone = (id: string) => coverage.zones.find((z) => z.id === id);
    expect(zone('1 left')?.members).toContain(tube);
    expect(zone('1 left')?.notLookedAt).not.toContain(tube);
    expect(zone('1 left')?.access).toBe('stripped');
    expect(zone('1 right')?.access).toBe('covered');
    expect(zone('2 ring')).not.toHaveProperty('access');
    expect(walked({}).zones.flatMap((z) => z.members).length).toBeGreaterThan(truss.members.length);
  });

  it('asks "same side?" once for a bay with opposite-hand findings, until a person says both sides are hurt', () => {
    const findings = [bow(tube), bow(twin), bow('L1L-L2L'), bow('L1R-L2R')];
    expect(walked({ findings: findings.slice(0, 1) }).twins).toEqual([]);
    const hurt = findings.map((f) => f.of);
    const first = truss.pairs.find((p) => hurt.includes(p.left) && hurt.includes(p.right));
    expect(walked({ findings }).twins).toEqual([{ bay: '1', left: first?.left, right: first?.right }]);
    expect(walked({ findings: findings.slice(0, 2) }).twins).toEqual([{ bay: '1', left: tube, right: twin }]);
    const said = area('1', { bothSidesHurt: true });
    expect(walked({ findings, areas: [said] }).twins).toEqual([]);
    // A later word on access alone does not take the answer back.
    expect(walked({ findings, areas: [said, area('1', { access: 'blasted' })] }).twins).toEqual([]);
    expect(walked({ findings, areas: [said, area('1', { bothSidesHurt: false })] }).twins.length).toBe(1);
  });

  it('lists a record that names nothing of the truss, and marks nothing for it', () => {
    const coverage = walked({ findings: [bow('U9L-U10L')], areas: [area('77', {})] });
    expect(coverage.issues.map((i) => i.code)).toEqual(['unknown-bay', 'unknown-id']);
    expect(coverage.members.undecided).toBe(0);
  });

  it('counts every member and cluster once, and does not depend on the order of records (seed 481)', () => {
    const records = fc
      .array(recordArb, { maxLength: 14 })
      .chain((list) => fc.tuple(fc.constant(list), fc.shuffledSubarray(list, { minLength: list.length })));
    fc.assert(
      fc.property(records, ([list, other]) => {
        const at = (some: typeof list) => {
          const live = standing(some);
          return walkRound(truss, live.looks, live.findings, live.decisions, live.areas, live.clashes);
        };
        const coverage = at(list);
        expect(at(other)).toEqual(coverage);
        const total = (counts: Readonly<Record<State, number>>): number =>
          states.reduce((sum, s) => sum + counts[s], 0);
        expect(total(coverage.members)).toBe(truss.members.length);
        expect(total(coverage.clusters)).toBe(truss.clusters.length);
      }),
      { seed: 481, numRuns: soak(4000) },
    );
  }, 300_000);
});
