import type { Cluster, Member, Truss } from '../core/truss/result.ts';
import { clusterWords, memberWords } from '../present/words/names.ts';

/** One thing the find box can find. */
export interface Found {
  readonly kind: 'member' | 'cluster';
  readonly id: string;
  readonly words: string;
}

interface Entry extends Found {
  readonly bareId: string;
  readonly keys: readonly string[];
}

/** What people say for a tube, besides what we write. A strut is any tube between longerons. */
const alsoSaid: Readonly<Record<string, string>> = {
  upperLongeron: 'top rail',
  lowerLongeron: 'bottom rail',
  vertical: 'upright strut post',
  crossMember: 'spacer strut crosstube',
  sideDiagonal: 'brace strut',
  topDiagonal: 'brace strut upper',
  bottomDiagonal: 'brace strut lower',
  ringDiagonal: 'brace strut bulkhead ring',
  other: '',
};

const bare = (text: string): string => text.toLowerCase().replace(/[^a-z0-9#]/g, '');

/** Words of a text; "bay 4" and "station 4" hold together as one. */
const wordsOf = (text: string): readonly string[] =>
  text
    .toLowerCase()
    .replace(/\b(bay|station)s?\s+([0-9]+[a-z]?)\b/g, '$1$2')
    .split(/[^a-z0-9#]+/)
    .filter((word) => word !== '' && word !== 'the' && word !== 'of' && word !== 'at' && word !== 'in');

const memberEntry = (member: Member): Entry => {
  const words = memberWords(member);
  const said = `${words} ${alsoSaid[member.role] ?? ''} ${member.faces.map((face) => `${face} face`).join(' ')}`;
  const shop = member.shopNumber ?? '';
  return {
    kind: 'member',
    id: member.id,
    words,
    bareId: bare(member.id),
    keys: [...wordsOf(said), ...wordsOf(shop), bare(shop)],
  };
};

const clusterEntry = (cluster: Cluster): Entry => {
  const words = clusterWords(cluster.id);
  const said = [
    words,
    'cluster joint station point',
    cluster.height === 'U' ? 'top' : cluster.height === 'L' ? 'bottom' : '',
    cluster.station === undefined ? '' : `station ${cluster.station} ${cluster.station}`,
    cluster.fitting ?? '',
  ].join(' ');
  return { kind: 'cluster', id: cluster.id, words, bareId: bare(cluster.id), keys: wordsOf(said) };
};

/** Everything of a truss that can be found, clusters after members. */
export const findIndex = (truss: Truss): readonly Entry[] => [
  ...truss.members.map(memberEntry),
  ...truss.clusters.map(clusterEntry),
];

/** 0 best; null when it does not match. */
const rankOf = (entry: Entry, bareQuery: string, words: readonly string[]): number | null => {
  if (bareQuery !== '' && entry.bareId === bareQuery) return 0;
  if (bareQuery.length > 1 && entry.bareId.startsWith(bareQuery)) return 1;
  if (words.every((word) => entry.keys.includes(word))) return 2;
  if (words.every((word) => entry.keys.some((key) => key.startsWith(word)))) return 3;
  return null;
};

/** What a typed text means, by id (`u4r`, `U3R U4R`) or by words ("upper left longeron, bay 4"); best first. */
export const find = (index: readonly Entry[], entered: string, limit = 12): readonly Found[] => {
  // the code of a printed tag says the id, then the job
  const typed = entered.split(' · ')[0]!;
  const bareQuery = bare(typed);
  const words = wordsOf(typed);
  if (words.length === 0) return [];
  const ranked = index.flatMap((entry, order) => {
    const rank = rankOf(entry, bareQuery, words);
    return rank === null ? [] : [{ entry, rank, order }];
  });
  ranked.sort((a, b) => a.rank - b.rank || a.order - b.order);
  return ranked.slice(0, limit).map(({ entry: { kind, id, words: said } }) => ({ kind, id, words: said }));
};
