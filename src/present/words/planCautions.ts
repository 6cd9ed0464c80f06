import type { CautionId } from '../../core/plan/cautionIds.ts';
import { type Caution, cautions } from './cautions.ts';

type Own = Pick<Caution, 'level' | 'text'>;

/** Cautions that only steps of the plan carry. Wording ours; facts common practice, no source, unless named. */
const own: Partial<Record<CautionId, Own>> = {
  'fuel-vapour': {
    level: 'warning',
    text: 'Fuel vapour burns and poisons. Earth the airframe and the can, keep sparks away, have the extinguisher at hand; drained tanks still hold vapour.',
  },
  'support-sound-clusters': {
    level: 'caution',
    text: 'Stand the truss on clusters nobody has found damaged, never mid-tube. A support on a hurt cluster measures the hurt.',
  },
  'no-blast-before-penetrant': {
    level: 'caution',
    text: 'No blasting and no hard buffing before penetrant: both smear cracks shut.',
  },
  'old-finish-dust': {
    level: 'warning',
    text: 'Old primer can hold chromate and lead. Strip wet, mask and gloves, no dry sanding, keep the waste.',
  },
  'old-asbestos': {
    level: 'warning',
    text: 'Old blankets, seals and lagging can be asbestos. Do not touch, sweep or blow: wet it, cover it, keep people out, have it taken away by those who may. Use none for welding.',
  },
  'marks-start-again': {
    level: 'note',
    text: 'Marks that are laid out again are a new baseline. Distances from the old marks and the new ones are never mixed.',
  },
  'no-brace-on-finished-weld': {
    level: 'caution',
    text: 'Do not clamp or tack a brace on a finished weld or on a tube that is to be straightened.',
  },
  'eyes-cutting': {
    level: 'warning',
    text: 'Chips and kerf splinters fly: eye protection on, ends clamped, hands out of the line.',
  },
  'fire-watch-after': {
    level: 'warning',
    text: 'A named person watches with the extinguisher in hand while the torch burns and for an hour after: sparks travel 35 ft and smoulder. 29 CFR 1910.252(a)(2)(iii)(B) asks for half an hour at least; NFPA 51B of 2019 and later an hour, from memory.',
  },
  'return-clamp': {
    level: 'caution',
    text: 'Return clamp beside the weld, on bare tube: current that runs through bearings, cables or instruments burns them.',
  },
  fumes: {
    level: 'warning',
    text: 'Cadmium, zinc and paint give poisonous fumes when heated: strip them well back, ventilate, mask.',
  },
  'eyes-welding': {
    level: 'warning',
    text: 'Filter and gloves for torch or arc; bystanders look away or stand behind a screen.',
  },
  'cool-between-ends': {
    level: 'caution',
    text: 'One end cools in still air before the other is welded. No quenching.',
  },
  'no-dressed-welds': {
    level: 'caution',
    text: 'Clean by wire brush; do not file or grind a weld for looks.',
  },
  'far-side-of-weld': {
    level: 'note',
    text: 'Most misses lie on the far side: mirror and lamp, and write down which side could not be seen.',
  },
  'inside-oil-after-welds': {
    level: 'caution',
    text: 'Inside oil only when every weld on that tube is done: oil in a tube that is welded burns and spoils the weld.',
  },
  'dry-before-closing': {
    level: 'caution',
    text: 'Dry inside before the holes are closed: water shut in rusts from within.',
  },
};

const level = { warning: 0, caution: 1, note: 2 } as const;

/** The cautions of a step by their ids, warnings first. */
export const cautionsOf = (ids: readonly string[]): readonly Caution[] =>
  ids
    .flatMap((id): Caution[] => {
      const known = cautions.find((c) => c.id === id);
      if (known) return [known];
      const mine = own[id as CautionId];
      return mine ? [{ id, step: 'everyPage', ...mine }] : [];
    })
    .sort((a, b) => level[a.level] - level[b.level]);

/** Ids that have words. */
export const planCautionIds: readonly string[] = [...Object.keys(own), ...cautions.map(({ id }) => id)];
