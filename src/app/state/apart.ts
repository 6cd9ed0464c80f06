import type { Truss } from '../../core/truss/result.ts';
import type { Mark, State } from '../../core/walkRound/result.ts';
import type { Apart } from './view.ts';

/** Members and clusters of a bay (`4`), or of one face or ring of it (`4 left`); empty when there is no such zone. */
export const zoneIds = (truss: Truss, zone: string): ReadonlySet<string> => {
  const bay = truss.bays.find(({ id }) => id === zone);
  if (bay) {
    const corners = new Set(bay.clusters);
    const inside = truss.members.filter((m) => corners.has(m.from) && corners.has(m.to)).map((m) => m.id);
    return new Set([...bay.clusters, ...bay.members, ...inside]);
  }
  const face = truss.faces.find(({ id }) => id === zone);
  return new Set(face ? [...face.corners, ...face.members] : []);
};

/** The ids, and the clusters at the ends of the members among them. */
const withEnds = (truss: Truss, ids: readonly string[]): ReadonlySet<string> => {
  const named = new Set(ids);
  const ends = truss.members.filter(({ id }) => named.has(id)).flatMap(({ from, to }) => [from, to]);
  return new Set([...ids, ...ends]);
};

const nothing: ReadonlySet<string> = new Set();

/** What is drawn faint: outside an isolated zone, inside a ghosted one, or in a state switched off in the legend. */
export const ghostedIds = (
  truss: Truss,
  marks: ReadonlyMap<string, Mark>,
  apart: Apart | null,
  hidden: readonly State[],
): ReadonlySet<string> => {
  const zone = apart ? (apart.ids ? withEnds(truss, apart.ids) : zoneIds(truss, apart.zone)) : null;
  if (zone === null && hidden.length === 0) return nothing;
  const all = [...truss.members, ...truss.clusters].map(({ id }) => id);
  return new Set(
    all.filter((id) => {
      if (hidden.length > 0 && hidden.includes(marks.get(id)?.state ?? 'notLookedAt')) return true;
      return zone !== null && zone.has(id) === (apart?.how === 'ghost');
    }),
  );
};
