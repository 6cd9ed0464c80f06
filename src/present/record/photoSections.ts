import type { Standing } from '../../core/job/standing.ts';
import type { Photos } from '../backup.ts';
import type { Showing } from '../tables/showing.ts';
import { heading } from './heading.ts';
import { shotOf } from './photoShots.ts';
import type { Part } from './sections.ts';

/** The photos of a job, in the order of the truss; those whose bytes are not at hand are named all the same. */
export const photoParts = (showing: Showing, live: Standing, photos: Photos): readonly Part[] => {
  if (live.photos.length === 0) return [];
  const { members, clusters } = showing.assessment.truss;
  const order = new Map([...members, ...clusters].map(({ id }, place) => [id, place]));
  const place = ({ of }: { readonly of: string }): number => order.get(of) ?? order.size;
  const shots = [...live.photos]
    .sort((a, b) => place(a) - place(b) || (a.id < b.id ? -1 : 1))
    .map((photo) => shotOf(photo, showing, live, photos));
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
