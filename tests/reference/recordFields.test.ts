import { describe, expect, it } from 'vitest';
import { assess } from '../../src/core/assess.ts';
import { standing } from '../../src/core/job/standing.ts';
import {
  byHandAsked,
  type EntryField,
  entriesOf,
  entryFieldsAsked,
} from '../../src/present/papers/entryFields.ts';
import { paperPdf } from '../../src/present/papers/papers.ts';
import { demoJob, options } from '../present/made.ts';
import { readPdf } from '../present/readPdf.ts';

/** What a list asks for, and where it stands on our paper: a field of the draft, or words that are left blank for a hand. */
interface Asked {
  readonly says: string;
  readonly field?: EntryField;
  readonly byHand?: RegExp;
}

// 14 CFR 43.9(a): the record of maintenance, rebuilding, alteration. Looked up in two public copies, 25 November 2026:
// getfileflo.com "part-43-9-maintenance-record-entry-requirements" and open-exam-prep.com, A&P, 11.5; both list the same.
const cfr43_9: readonly Asked[] = [
  { says: '(a)(1) a description of work performed', field: 'what' },
  { says: '(a)(1) or reference to data acceptable to the Administrator', field: 'data' },
  { says: '(a)(2) the date of completion of the work performed', field: 'completed' },
  {
    says: '(a)(3) the name of the person performing the work if other than the one who approves it',
    field: 'doers',
  },
  { says: '(a)(3) the same, written by hand', byHand: /name of the person who did the work/i },
  { says: '(a)(4) the signature', byHand: /^signature/i },
  { says: '(a)(4) certificate number', byHand: /licence number/i },
  { says: '(a)(4) and kind of certificate held', byHand: /kind of licence/i },
];

// 14 CFR 43.11(a): the record of an inspection; public copies at faraim.org and twisted-wrench.com. A repair is not one, and
// (a)(4) and (5) are statements that only a person makes; what else it asks for is on the paper or left blank.
const cfr43_11: readonly Asked[] = [
  { says: '(a)(1) the type of inspection and a brief description of its extent', field: 'checks' },
  { says: '(a)(2) the date of the inspection', byHand: /date/i },
  { says: '(a)(2) and aircraft total time in service', byHand: /total time in service/i },
  {
    says: '(a)(3) the signature, the certificate number, and kind of certificate held',
    byHand: /^signature/i,
  },
];

// FAA Form 337 by AC 43.9-1E, 5/21/87, 5.a and b (public copies at scribd.com 28332513 and 395072210), AC 43.9-1G, 11/1/19
// (studylib.net 27407842), and legalclarity.org for item 1; items 6 to 8 from those pages' summaries.
const form337: readonly Asked[] = [
  { says: 'item 1: make, model, serial number, nationality and registration mark', field: 'aircraft' },
  { says: "item 2: the owner's name and address", byHand: /owner: name and address/i },
  { says: 'item 6: agency, its name, address, kind and certificate number', byHand: /agency/i },
  { says: 'item 6: date and signature', byHand: /date of the signature/i },
  { says: 'item 8: description of the work', field: 'what' },
  { says: 'item 8: where on the aircraft', field: 'where' },
  { says: 'item 8: the data the work rests on', field: 'data' },
  // FAA-G-8082-19 (2010) and aviationinspection.com, "Inspecting repairs or alterations"
  { says: 'weight and balance data revised when appropriate', field: 'weight' },
];

// AC 43-9C by aviationmaintenance.com, "What is a proper entry in aircraft records": so that a person unfamiliar with the work
// can understand what was done and the methods and procedures used.
const ac43_9c: readonly Asked[] = [
  { says: 'what was done', field: 'what' },
  { says: 'with which methods and procedures', field: 'process' },
  { says: 'by reference to other data', field: 'data' },
];

describe.each([
  ['14 CFR 43.9(a)', cfr43_9],
  ['14 CFR 43.11(a)', cfr43_11],
  ['FAA Form 337', form337],
  ['AC 43-9C', ac43_9c],
] as const)('the draft entry, held against %s', (_, list) => {
  const job = demoJob();
  const assessment = assess(job);
  const entries = entriesOf({ job, assessment, units: 'inFraction' }, standing(job.records));

  it.each(list.map((asked) => [asked.says, asked] as const))('has a place for "%s"', async (__, asked) => {
    expect(entries.length).toBeGreaterThan(0);
    const { field, byHand } = asked;
    if (field) for (const entry of entries) expect(Object.keys(entry.fields)).toContain(field);
    if (byHand) expect(byHandAsked.filter(({ words }) => byHand.test(words)).length).toBeGreaterThan(0);
  });

  it('prints each of those places, filled or named as missing, and what asks for it', async () => {
    const pages = await readPdf(await paperPdf('entry-draft', job, assessment, options));
    const text = pages
      .map((page) => page.text)
      .join(' ')
      .replace(/\s+/g, ' ');
    for (const { field, byHand } of list) {
      const asked = field
        ? [entryFieldsAsked[field]]
        : byHandAsked.filter(({ words }) => byHand?.test(words));
      for (const { words, source } of asked) {
        expect(text).toContain(words);
        if (!/no source/.test(source)) expect(text).toContain(source);
      }
    }
  }, 60_000);
});

describe('the statements that only a person makes', () => {
  it('are not on the draft: it certifies nothing and signs nothing', async () => {
    const job = demoJob();
    const pages = await readPdf(await paperPdf('entry-draft', job, assess(job), options));
    const text = pages.map((page) => page.text).join(' ');
    expect(text).not.toMatch(/I certify|return to service|airworthy condition/i);
    expect(text).toContain('It is no entry until a person entitled to has read, completed and signed it.');
  }, 60_000);
});
