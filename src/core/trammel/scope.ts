import type { Finding, RecordOf } from '../job/jobSchema.ts';
import type { Cluster, Truss } from '../truss/result.ts';
import { type Datum, datumOf, spansPlane } from './datum.ts';

/** Bays with findings and one sound bay each side; the whole truss when nothing is found. */
const baysConcerned = (truss: Truss, findings: readonly Finding[]): number[] => {
  const hurt = new Set(findings.map((f) => f.of));
  const hit = truss.bays.map(
    (b) => b.members.some((id) => hurt.has(id)) || b.clusters.some((id) => hurt.has(id)),
  );
  if (!hit.includes(true)) return hit.map((_, k) => k);
  return hit.flatMap((_, k) => (hit[k - 1] || hit[k] || hit[k + 1] ? [k] : []));
};

/** Bays (by index) to plan for, their clusters, and what is taken as undamaged. */
export interface Scope {
  readonly bays: readonly number[];
  readonly clusters: readonly Cluster[];
  readonly datum: Datum;
}

/** Every cluster of the truss, from the first four of the datum that span a plane: the rest of it is measured too. */
export const wholeScope = (truss: Truss, { datum }: Scope): Scope => {
  const first: Cluster[] = [];
  for (const c of truss.clusters)
    if (datum.clusters.has(c.id) && (first.length < 4 || !spansPlane(first.map((one) => one.at))))
      first.push(c);
  const clusters = new Set(first.map((c) => c.id));
  return { bays: truss.bays.map((_, k) => k), clusters: truss.clusters, datum: { ...datum, clusters } };
};

/**
 * What to plan for: the bays concerned, widened until they hold enough of the datum, and the datum itself; with nothing
 * found, the whole truss from its forward station.
 */
export const scopeOf = (
  truss: Truss,
  findings: readonly Finding[],
  manual: readonly RecordOf<'manual'>[],
): Scope => {
  const inBays = (bays: readonly number[]): Cluster[] => {
    const ids = new Set(bays.flatMap((k) => truss.bays[k]!.clusters));
    return truss.bays.length === 0 ? [...truss.clusters] : truss.clusters.filter((c) => ids.has(c.id));
  };
  const bays = baysConcerned(truss, findings);
  const zone = datumOf(truss, findings, manual);
  const spans = (cs: readonly Cluster[]): boolean =>
    spansPlane(cs.filter((c) => zone.clusters.has(c.id)).map((c) => c.at));
  const named = zone.by === 'named';
  if ((findings.length === 0 && !named) || zone.by === 'none') {
    const clusters = inBays(bays);
    const [first] = clusters;
    const ring = clusters.filter((c) => c.station !== undefined && c.station === first?.station);
    return { bays, clusters, datum: { clusters: new Set(ring.map((c) => c.id)), by: 'forwardStations' } };
  }
  let wide = bays;
  while (!spans(inBays(wide)) && wide.length < truss.bays.length)
    wide = truss.bays.flatMap((_, k) => (wide.some((b) => Math.abs(b - k) <= 1) ? [k] : []));
  return { bays: wide, clusters: inBays(wide), datum: zone };
};

/** Bays planned at once when the whole is too many. */
const WINDOW = 6;

/** A scope cut into windows of bays, outward from its datum; each takes as known what an earlier one has fixed. */
export const windowsOf = (truss: Truss, { bays, clusters, datum }: Scope): readonly Scope[] => {
  const start = Math.max(
    0,
    bays.findIndex((k) => truss.bays[k]!.clusters.some((id) => datum.clusters.has(id))),
  );
  const known = new Set(datum.clusters);
  const inScope = new Set(clusters.map((c) => c.id));
  const parts: (readonly number[])[] = [];
  for (let k = start; k < bays.length; k += WINDOW) parts.push(bays.slice(k, k + WINDOW));
  for (let k = start; k > 0; k -= WINDOW) parts.push(bays.slice(Math.max(0, k - WINDOW), k));
  return parts.map((part): Scope => {
    const ids = new Set(part.flatMap((k) => truss.bays[k]!.clusters).filter((id) => inScope.has(id)));
    const piece = clusters.filter((c) => ids.has(c.id));
    const own = new Set(piece.filter((c) => known.has(c.id)).map((c) => c.id));
    for (const id of ids) known.add(id);
    return { bays: part, clusters: piece, datum: { ...datum, clusters: own } };
  });
};
