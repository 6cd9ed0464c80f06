import type { JobRecord, Photo, photoTimes } from '../../core/job/jobSchema.ts';
import { secondsOf } from '../../core/job/stampOrder.ts';
import type { Standing } from '../../core/job/standing.ts';
import type { Photos } from '../backup.ts';
import { jpegSize } from '../jpeg.ts';
import { showTime } from '../show.ts';
import type { Showing } from '../tables/showing.ts';
import { damageTags } from '../tags.ts';
import { clusterWords, memberWords } from '../words/names.ts';
import { photoTimeWords } from '../words/record.ts';
import type { Section, Shot } from './sections.ts';

type Shows = (typeof photoTimes)[number];

/** When a photo was taken: a correction of its marks or words is a later record of the same picture. */
const takenAt = (photo: Photo, records: readonly JobRecord[]): string => {
  const before = records.find(({ id }) => id === photo.replaces);
  return before?.kind === 'photo' && before.hash === photo.hash
    ? takenAt(before as Photo, records)
    : photo.at;
};

/** What a photo shows: as entered, or by its time: as found until the first tick of its repair, as left after the last. */
export const showsOf = (photo: Photo, { job, assessment: { plan } }: Showing, live: Standing): Shows => {
  if (photo.shows) return photo.shows;
  const steps = plan.steps.filter(({ of }) => of === photo.of);
  const ids = new Set(steps.map(({ id }) => id));
  const ticks = live.progress.filter((p) => p.done && ids.has(p.step)).map(({ at }) => secondsOf(at));
  const at = secondsOf(takenAt(photo, job.records));
  if (ticks.length === 0 || at <= Math.min(...ticks)) return 'asFound';
  return steps.every(({ done }) => done) && at > Math.max(...ticks) ? 'asLeft' : 'atWork';
};

/** What a photo shows, in words: the tube or cluster, when, the finding, where the camera looked, who. */
const photoWords = (photo: Photo, showing: Showing, live: Standing): readonly string[] => {
  const { truss, coverage } = showing.assessment;
  const member = truss.members.find(({ id }) => id === photo.of);
  const finding = coverage.findings.find(({ id }) => id === photo.finding);
  return [
    `${photo.of} ${photoTimeWords[showsOf(photo, showing, live)]} · ${member ? memberWords(member) : clusterWords(photo.of)}`,
    ...(finding ? [damageTags[finding.damage].word] : []),
    ...(photo.looking ? [photo.looking] : []),
    `${photo.by}, ${showTime(photo.at)} · ${photo.hash.slice(0, 12)}`,
  ];
};

/** A photo ready to be laid, with its size when its bytes are at hand. */
export const shotOf = (photo: Photo, showing: Showing, live: Standing, photos: Photos): Shot => {
  const bytes = photos.get(photo.hash);
  const size = bytes && jpegSize(bytes);
  return {
    hash: photo.hash,
    words: photoWords(photo, showing, live),
    marks: photo.marks ?? [],
    ...(size ? { size } : {}),
  };
};

/** Before and after of each of these members and clusters that has a photo: as found on the left, as left on the right. */
export const pairShots = (
  ids: readonly string[],
  showing: Showing,
  live: Standing,
  photos: Photos,
): readonly Shot[] =>
  ids.flatMap((id): readonly Shot[] => {
    const mine = live.photos.filter(({ of }) => of === id);
    if (mine.length === 0) return [];
    const of = (shows: Shows): readonly Photo[] => mine.filter((p) => showsOf(p, showing, live) === shows);
    const shot = (photo: Photo | undefined, shows: Shows): Shot =>
      photo
        ? shotOf(photo, showing, live, photos)
        : { hash: '', words: [`${id} ${photoTimeWords[shows]}`], marks: [], instead: 'No photo is taken.' };
    return [shot(of('asFound')[0], 'asFound'), shot(of('asLeft').at(-1), 'asLeft')];
  });

/** Everything decided, in the order of the truss. */
export const decidedIds = ({ assessment: { coverage } }: Showing): readonly string[] =>
  coverage.marks.filter(({ choice }) => choice !== undefined).map(({ id }) => id);

/** Before-and-after pictures under their heading; nothing when nobody took a photo of them. */
export const pairSections = (
  ids: readonly string[],
  showing: Showing,
  live: Standing,
  photos: Photos,
): readonly Section[] => {
  const shots = pairShots(ids, showing, live, photos);
  return shots.length === 0
    ? []
    : [
        { kind: 'subheading', text: 'Pictures as found and as left', keepMm: 74 },
        { kind: 'photos', shots },
      ];
};
