import { fixed, showStress } from '../../present/show.ts';
import { bordersTo, upward } from './classes.ts';
import { coloured, type Given, type Laid, largestOf, ranked, says } from './laid.ts';

export const lockedIn = ({ all, overlay, light }: Given): Laid => {
  const { lockedIn: locked } = all;
  if (locked.kind === 'movesFreely')
    return says('Locked in by bends', 'A truss that moves freely locks nothing in.');
  if (locked.kind === 'nothingMeasured')
    return says('Locked in by bends', 'No bend has been measured yet: enter the depth of a bow or kink.');
  const values = new Map(locked.members.map((m) => [m.id, m.stressPsi.value]));
  const classes = upward(bordersTo(largestOf(values)), light);
  const most = Math.max(...locked.members.map((m) => m.stressPsi.high ?? m.stressPsi.value));
  return {
    colours: coloured(values, classes),
    ...(overlay.numbers ? { numbers: ranked(values, showStress, classes.borders[0]!) } : {}),
    strip: {
      title: 'Stress locked in by the measured bends',
      unit: 'ksi',
      classes,
      write: (border) => fixed(border / 1000, border < 950 ? 1 : border % 1000 === 0 ? 0 : 1),
      notes: [
        `Best estimate, shortening only; with full end slopes up to ${showStress(most)}. A tube's range and basis stand in its card.`,
        ...(locked.suspects.length > 0
          ? [`Suspected though nobody has seen a bend: ${locked.suspects.map(({ id }) => id).join(', ')}.`]
          : []),
        ...(locked.unmeasured.length > 0
          ? [`Not in it, no size given: ${locked.unmeasured.join(', ')}.`]
          : []),
      ],
    },
  };
};

export const redundancy = ({ all: { statics }, overlay, light }: Given): Laid => {
  if (statics.kind !== 'stands') return says('Redundancy', 'The truss moves freely as it is held.');
  const values = new Map(statics.redundancy.map((m) => [m.id, m.rN]));
  const classes = upward([0.001, 0.01, 0.03, 0.1, 0.3], light);
  const { pinned } = statics;
  return {
    colours: coloured(values, classes),
    ...(overlay.numbers ? { numbers: ranked(values, (v) => `${fixed(100 * v, 1)} %`, 1e-3) } : {}),
    strip: {
      title: 'Of a length error in the tube, what share turns into force',
      unit: '%',
      classes,
      write: (border) => fixed(100 * border, border < 0.01 ? 1 : 0),
      low: 'only shape',
      high: 'clamped',
      notes: [
        `Welded frame: ${statics.indeterminacy} times statically indeterminate.`,
        pinned
          ? `Were every joint pinned: ${pinned.selfStress} states of self-stress, ${pinned.mechanisms} free movements.`
          : 'Pinned joints: not decided for this truss.',
      ],
    },
  };
};
