import type { Photo } from '../../core/job/jobSchema.ts';
import type { Photos } from '../backup.ts';
import { jpegSize } from '../jpeg.ts';
import { showTime } from '../show.ts';
import type { Showing } from '../tables/showing.ts';
import { damageTags } from '../tags.ts';
import { clusterWords, memberWords } from '../words/names.ts';
import { heading } from './heading.ts';
import type { Part } from './sections.ts';

/** What a photo shows, in words: the tube or cluster, the finding, where the camera looked, who and when. */
export const photoWords = (photo: Photo, { assessment: { truss, coverage } }: Showing): readonly string[] => {
  const member = truss.members.find(({ id }) => id === photo.of);
  const finding = coverage.findings.find(({ id }) => id === photo.finding);
  return [
    `${photo.of} · ${member ? memberWords(member) : clusterWords(photo.of)}`,
    ...(finding ? [damageTags[finding.damage].word] : []),
    ...(photo.looking ? [photo.looking] : []),
    `${photo.by}, ${showTime(photo.at)} · ${photo.hash.slice(0, 12)}`,
  ];
};

/** The photos of a job, in the order of the truss; those whose bytes are not at hand are named all the same. */
export const photoParts = (showing: Showing, records: readonly Photo[], photos: Photos): readonly Part[] => {
  if (records.length === 0) return [];
  const { members, clusters } = showing.assessment.truss;
  const order = new Map([...members, ...clusters].map(({ id }, place) => [id, place]));
  const place = ({ of }: Photo): number => order.get(of) ?? order.size;
  const shots = [...records]
    .sort((a, b) => place(a) - place(b) || (a.id < b.id ? -1 : 1))
    .map((photo) => {
      const bytes = photos.get(photo.hash);
      const size = bytes && jpegSize(bytes);
      return {
        hash: photo.hash,
        words: photoWords(photo, showing),
        marks: photo.marks ?? [],
        ...(size ? { size } : {}),
      };
    });
  const missing = shots.filter(({ size }) => !size).length;
  const note = missing > 0 ? `${missing} of ${shots.length} are not with this copy of the job.` : undefined;
  return [
    {
      lie: 'upright',
      side: 'Photos: the marks are drawn on, the pictures are as taken',
      sections: [heading('Photos', note), { kind: 'photos', shots }],
    },
  ];
};
