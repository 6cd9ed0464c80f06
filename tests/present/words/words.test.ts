import { describe, expect, it } from 'vitest';
import { rules as dispositionRules } from '../../../src/core/disposition/rules.ts';
import { weightLimits } from '../../../src/core/estimate/limits.ts';
import { orderRules } from '../../../src/core/plan/rules.ts';
import { spliceRules } from '../../../src/core/splice/rules.ts';
import { expandTruss } from '../../../src/core/truss/truss.ts';
import { damageLimits } from '../../../src/core/walkRound/limits.ts';
import { assumptionNames } from '../../../src/present/words/assumptions.ts';
import { excludedWords, topicWords } from '../../../src/present/words/estimate.ts';
import { issueSentences } from '../../../src/present/words/issueSentences.ts';
import { issueSentence, mendSentence, placeWords } from '../../../src/present/words/issues.ts';
import { mendSentences } from '../../../src/present/words/mendSentences.ts';
import {
  clusterWords,
  countWords,
  listWords,
  memberLine,
  memberWords,
  zoneWords,
} from '../../../src/present/words/names.ts';
import { planRefs } from '../../../src/present/words/planAssumptions.ts';
import { planCautionIds } from '../../../src/present/words/planCautions.ts';
import { evidenceWords } from '../../../src/present/words/planGates.ts';
import { toolWords } from '../../../src/present/words/planTakes.ts';
import { reasonsLine } from '../../../src/present/words/reasons.ts';
import {
  releaseWhyWords,
  sawWhyWords,
  targetNoteWords,
  whyWords,
} from '../../../src/present/words/relief.ts';
import { sleeveSays, spliceCautions } from '../../../src/present/words/splice.ts';
import { noFitWords, straightenCautions } from '../../../src/present/words/straighten.ts';
import { emptyJob } from '../made.ts';
import { kebabLiterals, rimCodes } from './coreCodes.ts';

/** Literals of core of the same form that no person reads: units, formats, ids of rows, names of files' parts. */
const notRead = new Set([
  'in-lbf',
  'tubewright-model',
  'tubewright-job',
  'ml-matrix',
  'column-slenderness-limit',
  'column-crippling-limit',
  'trammel-reach',
  // ids of parts and topics of the user's own data
  'sleeve-from',
  'sleeve-to',
  'larger-tube',
  'split-sleeve',
  'outer-sleeve',
  'straighten-only',
  'round-out-only',
  'plan-order',
  'plan-frozen',
  'no-such-step',
  'stands-there',
  'tubewright-estimate',
  'lb-in',
  // ids of set-ups and load cases of a rough model
  'gear-and-tail',
  'own-weight',
  'tail-down',
]);

describe('words', () => {
  it('cover every code that core uses: issue, mend, reason or assumption', () => {
    const codes = kebabLiterals();
    expect(codes.size).toBeGreaterThan(100);
    const worded = new Set([
      ...Object.keys(issueSentences),
      ...Object.keys(mendSentences),
      ...Object.keys(whyWords),
      ...Object.keys(releaseWhyWords),
      ...Object.keys(sawWhyWords),
      ...Object.keys(targetNoteWords),
      ...assumptionNames,
      ...damageLimits.map((row) => row.id),
      ...dispositionRules.map((row) => row.id),
      ...spliceRules.map((row) => row.id),
      ...orderRules.map((row) => row.id),
      ...weightLimits.map((row) => row.id),
      ...Object.keys(toolWords),
      ...Object.keys(evidenceWords),
      ...Object.keys(excludedWords),
      ...Object.keys(topicWords),
      ...planCautionIds,
      ...Object.keys(planRefs),
      ...Object.keys(sleeveSays),
      ...Object.keys(spliceCautions),
      ...Object.keys(straightenCautions),
      ...Object.keys(noFitWords),
      ...notRead,
    ]);
    expect(
      [...codes].filter(([code]) => !worded.has(code)).map(([code, file]) => `${file}: ${code}`),
    ).toEqual([]);
  });

  it('have no sentence for a code that nothing uses', () => {
    const codes = new Set([...kebabLiterals().keys(), ...rimCodes()]);
    const spare = [...Object.keys(issueSentences), ...Object.keys(mendSentences), ...assumptionNames].filter(
      (code) => !codes.has(code),
    );
    expect(spare).toEqual([]);
  });

  it('fill facts in, lengths in the units of the reader', () => {
    const issue = {
      code: 'drawing-against-stations',
      facts: { from: 'U3L', to: 'L4L', drawingIn: 24, modelIn: 24.0625, toleranceIn: 0.03125 },
    };
    expect(issueSentence(issue, 'mm')).toBe(
      'The drawing gives 609.6 mm from U3L to L4L; the stations give 611.2 mm. They differ by more than 0.8 mm.',
    );
    expect(issueSentence({ code: 'doubled-member', facts: { ids: ['U3L-U4L', 'U3L-U4L#2'] } })).toBe(
      'Two tubes run between the same clusters: U3L-U4L, U3L-U4L#2.',
    );
  });

  it('still read when a code is new', () => {
    expect(issueSentence({ code: 'odd-thing-here', facts: { lengthIn: 2.5, ids: ['a', 'b'] } })).toBe(
      'Odd thing here: length in 2.5, ids a, b.',
    );
    expect(mendSentence({ mend: 'look-there-again', facts: {} })).toBe('Look there again.');
  });

  it('say which id was most likely meant', () => {
    expect(mendSentence({ mend: 'name-one-of-the-truss', facts: { id: 'u4r', meant: 'U4R' } })).toBe(
      'Name one that the truss has. U4R was meant?',
    );
  });

  it('say where in the document without brackets', () => {
    expect(placeWords('records[id=r12].lengthIn')).toBe('record r12, length');
    expect(placeWords('stations[3].label')).toBe('station 4, label');
    expect(placeWords('records[hold=beforeCutting]')).toBe('record as found, before cutting');
    expect(placeWords('')).toBe('the whole');
  });

  it('name the kinds of reason before a second one of the same kind', () => {
    const reasons = [
      { kind: 'samePath', with: 'L2R-L3R', share: 1, case: 'blow' },
      { kind: 'samePath', with: 'L3R-L4R', share: 0.9 },
      { kind: 'sharesCluster', with: 'L3R-L4R', cluster: 'L3R' },
    ] as const;
    expect(reasonsLine({ reasons }, 2)).toBe(
      'carries the blow with L2R-L3R (100 %); meets L3R-L4R at lower right 3 (L3R); and 1 more',
    );
    expect(reasonsLine({ reasons }).split('; ')).toHaveLength(3);
  });

  it('name clusters, zones, lists and counts as a person says them', () => {
    expect(clusterWords('U4R')).toBe('Upper right 4');
    expect(clusterWords('L11C')).toBe('Lower centre 11');
    expect(clusterWords('U4aL')).toBe('Upper left 4a');
    expect(clusterWords('GC')).toBe('GC');
    expect(zoneWords('4 left')).toBe('Bay 4, left side');
    expect(zoneWords('4 ring')).toBe('Station 4, across');
    expect(listWords(['a', 'b', 'c'])).toBe('a, b and c');
    expect(countWords(1, 'member')).toBe('1 member');
    expect(countWords(0, 'cluster')).toBe('0 clusters');
  });

  // names of look.md: "Upper longeron, left, bay 3 · U3L–U4L"
  it('name members with side and bay, always the pilot’s sides', () => {
    const members = new Map(expandTruss(emptyJob().model).members.map((m) => [m.id, m]));
    expect(memberLine(members.get('U3L-U4L')!)).toBe('Upper longeron, left, bay 3 · U3L–U4L');
    expect(memberWords(members.get('L3R-L4R')!)).toBe('Lower longeron, right, bay 3');
    expect(memberWords(members.get('U3L-U3R')!)).toBe('Upper cross member, station 3');
    expect(memberWords(members.get('U3R-L3R')!)).toBe('Vertical, right, station 3');
  });
});
