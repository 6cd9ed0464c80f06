/**
 * Cautions and standing lines, each with the step it belongs to: shown before the step, on every surface.
 * Order inside one: what can hurt, how to keep clear of it, where, what happens.
 * Source: wording ours (needs.md section 7); facts common practice, no source, unless `source` names one.
 */

export type CautionStep =
  | 'everyPage'
  | 'firstStart'
  | 'practice'
  | 'wreck'
  | 'lookNext'
  | 'measuring'
  | 'lockedIn'
  | 'cutting'
  | 'spreading'
  | 'straightening'
  | 'heating'
  | 'welding'
  | 'blasting'
  | 'noSource'
  | 'generalRules'
  | 'outsideScope';

export interface Caution {
  readonly id: string;
  readonly step: CautionStep;
  /** Warning = people, caution = structure or equipment, note = information. */
  readonly level: 'warning' | 'caution' | 'note';
  readonly text: string;
}

/** The foot of every page and of every export. */
export const pageFoot =
  "Working aid. It does not approve repairs and does not release aircraft. Use the maker's current data and the rules of the country of registry.";

/** The line every title block carries. */
export const workingAid = 'Working aid, not an approval';

/** How sides are named, wherever a table leaves the screen. */
export const sideConvention =
  "Left and right are the pilot's. Station positive aft, butt line positive right, water line positive up.";

export const cautions: readonly Caution[] = [
  {
    id: 'page-foot',
    step: 'everyPage',
    level: 'note',
    text: pageFoot,
  },
  {
    id: 'first-start',
    step: 'firstStart',
    level: 'note',
    text: 'You decide and sign. This program shows sources, sums and gaps.',
  },
  {
    id: 'practice-file',
    step: 'practice',
    level: 'note',
    text: 'Training file. Invented aircraft. Not for work.',
  },
  {
    id: 'wreck-untouched',
    step: 'wreck',
    level: 'note',
    text: 'After a reportable accident do not disturb the wreck until released, except to help people, protect it or protect the public; sketch and photograph first.',
  },
  {
    id: 'look-next-is-a-rank',
    step: 'lookNext',
    level: 'note',
    text: 'This is an order to look in, with reasons. It marks nothing as damaged, and a tube low on the list has not been cleared by it.',
  },
  {
    id: 'cannot-tell',
    step: 'measuring',
    level: 'note',
    text: "A reading is shown with its uncertainty. 'Cannot tell' is a result: repeat the reading, or use a finer instrument.",
  },
  {
    id: 'end-distance-hides-bow',
    step: 'measuring',
    level: 'caution',
    text: 'A bow hardly shortens a tube: 1/4 in over 36 in takes 0.005 in off the end distance. Check straightness on its own.',
  },
  {
    id: 'locked-in-is-arithmetic',
    step: 'lockedIn',
    level: 'note',
    text: 'Locked-in forces are elastic sums on the bends recorded so far, given as a range. A bend not yet measured is missing from them.',
  },
  {
    id: 'stored-strain',
    step: 'cutting',
    level: 'warning',
    text: 'Stored strain can move tubes suddenly when cut. Keep hands and face clear, brace first: at the saw and at the clusters named as moving, ends can spring apart or close on the blade.',
  },
  {
    id: 'baseline-first',
    step: 'cutting',
    level: 'caution',
    text: 'Do not cut until the baseline is recorded: distances, how the truss is held, and a photo. Afterwards the shape as found is gone.',
  },
  {
    id: 'one-opening',
    step: 'cutting',
    level: 'caution',
    text: 'Do not open a neighbour at the same cluster while this one is open, unless the brace or fixture that holds it is in place.',
  },
  {
    id: 'measure-the-kerf',
    step: 'cutting',
    level: 'note',
    text: 'Caliper the kerf before and after. If its movement differs from the sum shown by more than half, these sums do not describe this tube.',
  },
  {
    id: 'spread-slowly',
    step: 'spreading',
    level: 'warning',
    text: 'A spreader that slips throws itself. Keep out of its line, tie it, and load it a little at a time.',
  },
  {
    id: 'spread-spreads-elsewhere',
    step: 'spreading',
    level: 'caution',
    text: 'Spreading one distance moves others. Take the neighbouring distances again before the next step.',
  },
  {
    id: 'cold-straightening',
    step: 'straightening',
    level: 'caution',
    text: 'Cold straightening can start cracks and flatten the section. Check the result by the method in your data. Reinforcement may be required.',
  },
  {
    id: 'no-heat',
    step: 'heating',
    level: 'caution',
    text: 'Do not heat unless your data call for it.',
  },
  {
    id: 'fire-watch',
    step: 'welding',
    level: 'warning',
    text: 'Fire and fumes: remove fuel, fabric, dope, foam and wiring; strip coatings; ventilate; keep a fire watch.',
  },
  {
    id: 'vent-sealed-tubes',
    step: 'welding',
    level: 'warning',
    text: 'Sealed tubes can burst when heated: vent them.',
  },
  {
    id: 'electrics-off',
    step: 'welding',
    level: 'caution',
    text: 'Disconnect battery and electronics.',
  },
  {
    id: 'thin-wall-blast',
    step: 'blasting',
    level: 'caution',
    text: 'Thin or rusted tube can be cut through. Protect bearings, fittings and data plate.',
  },
  {
    id: 'no-limit',
    step: 'noSource',
    level: 'note',
    text: 'No published limit is loaded for bow, ovality, wall loss or alignment, so no verdict stands here. Ask the type-certificate holder or a design source that your authority recognises.',
  },
  {
    id: 'general-methods',
    step: 'generalRules',
    level: 'note',
    text: 'General methods for use when the maker gives none. Check that they fit this aircraft, this part and this repair.',
  },
  {
    id: 'outside-scope',
    step: 'outsideScope',
    level: 'caution',
    text: 'This part or material is outside what the loaded data cover. Stop and get data.',
  },
];

/** The cautions that stand before a step, warnings first. */
export const cautionsFor = (step: CautionStep): readonly Caution[] => cautions.filter((c) => c.step === step);

/** What a level is called. */
export const levelWords = { warning: 'WARNING', caution: 'CAUTION', note: 'NOTE' } as const satisfies Record<
  Caution['level'],
  string
>;
