import { describe, expect, it } from 'vitest';
import { areas, exerciseKinds } from '../../src/core/practice/areas.ts';
import { crash } from '../../src/core/practice/crash.ts';
import { reveal } from '../../src/core/practice/look.ts';
import { checkOrder, planDrill } from '../../src/core/practice/planDrill.ts';
import { planJob } from '../../src/core/practice/planJob.ts';
import { questionBank, questionKinds } from '../../src/core/practice/questions.ts';
import { heldNow } from '../../src/core/statics/held.ts';
import { expandTruss } from '../../src/core/truss/truss.ts';
import { couponCard, couponFiles } from '../../src/present/coupon.ts';
import { csvText } from '../../src/present/csv.ts';
import { practiceResultsTable } from '../../src/present/tables/practice.ts';
import {
  areaWords,
  askWords,
  brokenWords,
  choiceLabel,
  ruleWords,
  seenWords,
  whyWords,
} from '../../src/present/words/practice.ts';
import { assessed, modelOf } from '../core/practice/kit.ts';
import { expectNear } from '../kit/near.ts';
import { bannedIn } from './words/banned.ts';

const tube = { odIn: 0.75, wallIn: 0.035 };
const paper = { tube, paper: 'a4', units: 'inFraction' } as const;

describe('the bench coupon card', () => {
  const card = couponCard(paper);
  const text = JSON.stringify(card);

  // AC 43.13-1B, 4-95: 1.5 D beyond either end of a 30° cut and a gap of 1/8: 2.25 + 0.75 cot 30° + 0.125
  it('gives the sleeve of the splice its length by the rule', () => {
    const facts = card.parts[0]!.sections.flatMap((s) => (s.kind === 'facts' ? s.rows : []));
    const said = facts.find(([name]) => name === 'Sleeve length')?.[1] ?? '';
    expectNear(Number.parseFloat(said), 2.25 + 0.75 * Math.sqrt(3) + 0.125, {
      abs: 0.0006,
      because: 'shown to 0.001',
    });
  });

  it('is marked as training on every sheet and names its subject areas without credit', async () => {
    expect(card.head.practice).toBe(true);
    expect(text).toContain('Fabricate tubular structures (level 1)');
    expect(text).toContain('no credit');
    const files = await couponFiles(paper);
    expect(files.map((f) => f.name)).toEqual(['bench-coupon-card.pdf', 'bench-coupon-templates.pdf']);
    expect(await couponFiles(paper)).toEqual(files);
  });

  it('says when no sleeve goes, and draws no shortened part', () => {
    const rod = couponCard({ ...paper, tube: { odIn: 0.25, wallIn: 0.125 } });
    expect(JSON.stringify(rod)).toContain('no stock sleeve goes into this tube');
  });
});

describe('results of practice as CSV', () => {
  const result = {
    at: '2024-05-01T10:00:00Z',
    who: 'A trainee',
    kind: 'hidden',
    what: 'Practice truss, seed A',
    level: 2,
    exam: true,
    shares: { Found: { got: 3, of: 4 }, Calls: { got: 3, of: 3 } },
  } as const;
  const csv = csvText(practiceResultsTable([result]), { job: 'x', date: 'd', version: 'v', practice: true });

  it('carry the training mark, a row a skill, the areas, and no sum', () => {
    expect(csv).toContain('Training file. Invented aircraft. Not for work.');
    const rows = csv.split('\r\n').filter((row) => row.includes('A trainee'));
    expect(rows).toHaveLength(2);
    expect(rows[0]).toContain(',exam,Found,3,4,');
    expect(rows[0]).toContain('Inspect and check welds (level 3)');
    expect(csv).not.toMatch(/grade|total/i);
  });
});

describe('words of practice', () => {
  // levels as needs.md 6.1 reads them from the former 14 CFR 147 appendices
  it('name each area with its level', () => {
    const levels = Object.fromEntries(areas.map((a) => [a.id, a.level]));
    expect(levels).toEqual({
      fabricate: 1,
      weld: 2,
      alignment: 2,
      welds: 3,
      measure: 3,
      sketch: 3,
      records: 3,
    });
    for (const kind of exerciseKinds) expect(areaWords(kind)).toMatch(/\(level \d\)/);
  });

  it('make a sentence of every question, reason, look and broken rule, and no word of release', () => {
    const model = modelOf('high-wing-tandem');
    const truss = expandTruss(model);
    const named = {
      members: new Map(truss.members.map((m) => [m.id, m])),
      clusters: new Map(truss.clusters.map((c) => [c.id, c])),
    };
    const said: string[] = [];
    const bank = questionBank(truss, null);
    for (const kind of questionKinds)
      for (const { make } of bank[kind].slice(0, 5)) {
        const q = make('s');
        said.push(askWords(q, truss, 'case', 'inFraction'), whyWords(q.why, named, 'case', 'mm'));
        for (const c of q.choices) said.push(choiceLabel(q, c, named));
      }
    const made = crash(model, { seed: 'w', level: 3 });
    if (made.kind !== 'made') return expect.fail(made.kind);
    for (const f of made.exercise.truth.findings)
      for (const method of ['eye', 'other', 'penetrant', 'ultrasonic'] as const)
        for (const seen of reveal(made.exercise, truss, { of: f.of, method, finishRemoved: true }, 0))
          said.push(seenWords(seen, 'inFraction'), ruleWords(seen.by));
    const broke = assessed(planJob(model, 'w')!);
    const ground = {
      ...broke,
      support: heldNow(truss, model, []),
      misfits: broke.lockedIn.misfits,
      stray: [],
    };
    const drill = planDrill(ground, 'w')!;
    for (const broken of checkOrder(drill.right.toReversed(), drill))
      said.push(brokenWords(broken, drill.cards, 'inFraction'));
    expect(said.length).toBeGreaterThan(40);
    for (const words of said) {
      expect(words).not.toMatch(/undefined|NaN|\[object|\.\./);
      expect(bannedIn(words), words).toEqual([]);
    }
  });
});
