import { issue } from '../core/base/issue.ts';
import type { Change, Draft, Tagging } from '../core/job/change.ts';
import type { Choice, Damage, Finding, Reading, RecordOf } from '../core/job/jobSchema.ts';
import { choiceWords, damageTags } from '../present/tags.ts';
import { zoneWords } from '../present/words/names.ts';
import { type AtOnce, useAnswer } from './state/answer.ts';
import { change, refuse } from './state/job.ts';
import { useView } from './state/view.ts';
import { deedText } from './text/deeds.ts';
import { tagText } from './text/frame.ts';

/** What a person does to the job, each as one named change. Buttons, keys and the find box all end here. */

export type TagWord = Tagging['tag'];

const damageOf = { bent: ['bow', 'kink'], cracked: ['crack'] } as const satisfies Record<
  'bent' | 'cracked',
  readonly Damage[]
>;

const idWords = (ids: readonly string[]): string =>
  ids.length <= 2 ? ids.join(', ') : deedText.several(ids.length);

const findingsOf = (now: AtOnce, id: string, kinds: readonly Damage[]): readonly Finding[] =>
  now.coverage.findings.filter((finding) => finding.of === id && kinds.includes(finding.damage));

const bears = (now: AtOnce, id: string, word: TagWord): boolean => {
  const mark = now.marks.get(id);
  switch (word) {
    case 'bent':
    case 'cracked':
      return findingsOf(now, id, damageOf[word]).length > 0;
    case 'forReplacement':
      return mark?.choice === 'replace';
    case 'lookAgain':
    case 'lookedAt':
      return now.coverage.looks.some((look) => look.id === mark?.look && look.state === word);
    default: {
      const never: never = word;
      return never;
    }
  }
};

/** Which tags all of these bear already. */
export const tagStates = (now: AtOnce, ids: readonly string[]): { readonly [W in TagWord]: boolean } => {
  const all = (word: TagWord): boolean => ids.every((id) => bears(now, id, word));
  return {
    bent: all('bent'),
    cracked: all('cracked'),
    forReplacement: all('forReplacement'),
    lookAgain: all('lookAgain'),
    lookedAt: all('lookedAt'),
  };
};

const sized = (finding: Finding): boolean =>
  Object.entries(finding).some(([key, value]) => key.endsWith('In') && typeof value === 'number') ||
  finding.place !== undefined;

/** Records that a tag alone made, and that taking the tag off takes out. A measured finding is removed in its list. */
const madeBy = (now: AtOnce, id: string, word: TagWord): readonly string[] => {
  const mark = now.marks.get(id);
  if (word === 'bent' || word === 'cracked')
    return findingsOf(now, id, damageOf[word])
      .filter((finding) => !sized(finding))
      .map((finding) => finding.id);
  if (word === 'forReplacement')
    return now.coverage.decisions
      .filter(({ of, choice }) => of === id && choice === 'replace')
      .map((d) => d.id);
  return mark?.look === undefined ? [] : [mark.look];
};

/** Tags all of these, or takes the tag off when all of them bear it. */
export const tag = (ids: readonly string[], word: TagWord): void => {
  const now = useAnswer.getState().atOnce;
  if (!now || ids.length === 0) return;
  if (tagStates(now, ids)[word]) {
    const made = ids.flatMap((id) => madeBy(now, id, word));
    if (made.length === 0)
      refuse(issue('tag-rests-on-a-finding', idWords(ids), { of: idWords(ids) }, 'remove-it-from-its-list'));
    else
      change(
        { kind: 'withdraw', ids: made, reason: deedText.tagOff },
        deedText.takenOff(tagText[word].name, idWords(ids)),
      );
    return;
  }
  const of = ids.filter((id) => !bears(now, id, word));
  const { lookBy } = useView.getState();
  const how = word === 'lookedAt' || word === 'lookAgain' ? lookBy : {};
  change({ kind: 'tag', of, tag: word, ...how } as Change, `${tagText[word].name}: ${idWords(of)}`);
};

/** Adds a finding, or corrects one; gives false when it was refused (the reason is shown). */
export const saveFinding = (finding: Draft<Finding>, corrects?: string): boolean => {
  const what = deedText.finding(damageTags[finding.damage].word, finding.of);
  return corrects === undefined
    ? change({ kind: 'addFinding', finding }, what)
    : change({ kind: 'correctFinding', id: corrects, finding }, deedText.corrected(what));
};

export const decide = (of: readonly string[], choice: Choice, reason: string): boolean =>
  change(
    { kind: 'decide', of, choice, ...(reason.trim() === '' ? {} : { reason: reason.trim() }) },
    `${choiceWords[choice]}: ${idWords(of)}`,
  );

export const saveReading = (reading: Draft<Reading>): boolean =>
  change({ kind: 'addReading', reading }, deedText.reading(reading.ends[0].cluster, reading.ends[1].cluster));

/** Adds a photo, or corrects the marks and words of one; the picture itself stays. */
export const savePhoto = (photo: Draft<RecordOf<'photo'>>, corrects?: string): boolean =>
  corrects === undefined
    ? change({ kind: 'addPhoto', photo }, deedText.photo(photo.of))
    : change({ kind: 'correctPhoto', id: corrects, photo }, deedText.corrected(deedText.photo(photo.of)));

export const removeRecord = (id: string, name: string): void => {
  change({ kind: 'withdraw', ids: [id], reason: deedText.byHand }, name);
};

/** Those of one face not looked at yet, with the method chosen. */
export const lookAtZone = (zone: string, ids: readonly string[]): void => {
  const { lookBy } = useView.getState();
  change({ kind: 'tag', of: ids, tag: 'lookedAt', ...lookBy }, deedText.lookedAt(zoneWords(zone)));
};

type Area = RecordOf<'area'>;

const areaOf = (zone: string): Pick<Area, 'bay' | 'face'> => {
  const [bay = zone, face] = zone.split(' ');
  return { bay, ...(face === undefined ? {} : { face: face as NonNullable<Area['face']> }) };
};

export const setAccess = (zone: string, access: Area['access']): void => {
  change({ kind: 'setArea', area: { ...areaOf(zone), access } }, deedText.access(zoneWords(zone), access));
};

/** The answer to "same side?" that ends the question for this bay. Access stays as recorded, covered when nothing is. */
export const bothSidesHurt = (bay: string): void => {
  const standing = useAnswer
    .getState()
    .atOnce?.live.areas.find((area) => area.bay === bay && area.face === undefined);
  change(
    { kind: 'setArea', area: { bay, access: standing?.access ?? 'covered', bothSidesHurt: true } },
    deedText.bothSides(bay),
  );
};

export const setHeldAs = (setup: string, name: string): void => {
  change({ kind: 'setHeld', held: { setup } }, deedText.held(name));
};

export const renameJob = (name: string): void => {
  if (name.trim() !== '') change({ kind: 'renameJob', name: name.trim() }, deedText.jobName);
};

export const setAircraft = (aircraft: string): void => {
  change({ kind: 'setAircraft', aircraft: aircraft.trim() }, deedText.aircraft);
};
