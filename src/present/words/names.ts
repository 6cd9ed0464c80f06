import type { Role } from '../../core/job/modelSchema.ts';
import { readCluster } from '../../core/truss/names.ts';
import type { Cluster, Member } from '../../core/truss/result.ts';

/** Sides are always the pilot's, in words. */
export const sideWords = { L: 'left', R: 'right', C: 'centre' } as const;

export const roleWords = {
  upperLongeron: 'Upper longeron',
  lowerLongeron: 'Lower longeron',
  vertical: 'Vertical',
  crossMember: 'Cross member',
  sideDiagonal: 'Side diagonal',
  topDiagonal: 'Top diagonal',
  bottomDiagonal: 'Bottom diagonal',
  ringDiagonal: 'Diagonal across the station',
  other: 'Tube',
} as const satisfies Record<Role, string>;

export const faceWords = {
  left: 'left side',
  right: 'right side',
  top: 'top',
  bottom: 'bottom',
  ring: 'across the station',
} as const;

/** A cluster id in words: `U4R` → "Upper right 4"; an id of another form stays as it is. */
export const clusterWords = (id: string): string => {
  const name = readCluster(id);
  return name === null
    ? id
    : `${name.height === 'U' ? 'Upper' : 'Lower'} ${sideWords[name.side]} ${name.station}`;
};

/** A cluster in words with its id: "Upper right 4 · U4R". */
export const clusterLine = (cluster: Pick<Cluster, 'id' | 'fitting'>): string => {
  const words = clusterWords(cluster.id);
  const named = words === cluster.id ? cluster.id : `${words} · ${cluster.id}`;
  return cluster.fitting ? `${named} (${cluster.fitting})` : named;
};

/** What a member is, without its id: "Upper longeron, left, bay 3". */
export const memberWords = (member: Pick<Member, 'role' | 'side' | 'bay' | 'station' | 'faces'>): string => {
  const height =
    member.role === 'crossMember'
      ? member.faces.includes('top')
        ? 'Upper cross member'
        : member.faces.includes('bottom')
          ? 'Lower cross member'
          : roleWords.crossMember
      : roleWords[member.role];
  const side = member.side === 'C' ? undefined : sideWords[member.side];
  const place =
    member.bay !== undefined
      ? `bay ${member.bay}`
      : member.station !== undefined
        ? `station ${member.station}`
        : undefined;
  return [height, side, place].filter((part) => part !== undefined).join(', ');
};

/** A member in words with its ends: "Upper longeron, left, bay 3 · U3L–U4L". A second tube in the gap keeps its `#2`. */
export const memberLine = (member: Member): string => {
  const twin = /#\d+$/.exec(member.id)?.[0] ?? '';
  const ends = `${member.from}–${member.to}`;
  const own = member.id === `${member.from}-${member.to}${twin}`;
  return `${memberWords(member)} · ${own ? `${ends}${twin}` : member.id}`;
};

/** A zone id in words: `4 left` → "Bay 4, left side"; `4 ring` → "Station 4, across". */
export const zoneWords = (id: string): string => {
  const [place, face] = id.split(' ') as [string, keyof typeof faceWords | undefined];
  if (face === undefined || !(face in faceWords)) return id;
  return face === 'ring' ? `Station ${place}, across` : `Bay ${place}, ${faceWords[face]}`;
};

/** Ids as a list a person reads: "a", "a and b", "a, b and c". */
export const listWords = (ids: readonly string[]): string =>
  ids.length < 2 ? (ids[0] ?? 'none') : `${ids.slice(0, -1).join(', ')} and ${ids[ids.length - 1]}`;

/** A count with its noun: "1 member", "3 members". */
export const countWords = (count: number, one: string, many = `${one}s`): string =>
  `${count} ${count === 1 ? one : many}`;
