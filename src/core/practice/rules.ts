/** What a way of looking can show, and where that is written. */
export interface MethodRule {
  readonly id: string;
  readonly says: string;
  readonly source: string;
}

const ac = (place: string): string => `FAA AC 43.13-1B with CHG 1 (1998/2001), ${place}`;
const practice = 'common practice, no source';

export const methodRules = [
  {
    id: 'eye-first',
    says: 'Clean and look with the finish on; take it off when another method needs bare metal.',
    source: ac('5-18g'),
  },
  {
    id: 'eye-sights-bends',
    says: 'Sighting along a tube shows a bend of 1/150 of its length or more, kinks, dents and holes.',
    source: practice,
  },
  {
    id: 'straight-edge-measures',
    says: 'A straight edge and a caliper measure bows, dents and ovality.',
    source: practice,
  },
  {
    id: 'magnifier-shows-open-cracks',
    says: 'A ten-power glass confirms a crack that the finish does not cover.',
    source: ac('5-16, 5-18h'),
  },
  {
    id: 'penetrant-needs-bare-metal',
    says: 'Penetrant shows what is open to the surface; paint must come off.',
    source: ac('5-60, 5-62'),
  },
  {
    id: 'magnetic-needs-bare-metal',
    says: 'Magnetic particle shows cracks in steel; paint thicker than .003 in is stripped.',
    source: ac('5-41 to 5-51'),
  },
  {
    id: 'corners-show-bands',
    says: 'Sharp corners and abrupt changes of section give broad bands that are no cracks.',
    source: ac('5-41b'),
  },
  {
    id: 'ultrasonic-reads-wall',
    says: 'Ultrasonic pulse-echo reads the wall from outside.',
    source: ac('5-96d'),
  },
  {
    id: 'borescope-shows-rust',
    says: 'A borescope shows rust inside, without its depth.',
    source: ac('5-17'),
  },
] as const satisfies readonly MethodRule[];
export type MethodRuleId = (typeof methodRules)[number]['id'];
