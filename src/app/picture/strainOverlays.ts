import { fixed, showStress } from '../../present/show.ts';
import { lockedInText, redundancyText } from '../text/picture.ts';
import { bordersTo, upward } from './classes.ts';
import { coloured, type Given, type Laid, largestOf, ranked, says } from './laid.ts';

export const lockedIn = ({ all, overlay, light }: Given): Laid => {
  const { lockedIn: locked } = all;
  if (locked.kind === 'movesFreely') return says(lockedInText.title, lockedInText.movesFreely);
  if (locked.kind === 'nothingMeasured') return says(lockedInText.title, lockedInText.nothingMeasured);
  const values = new Map(locked.members.map((m) => [m.id, m.stressPsi.value]));
  const classes = upward(bordersTo(largestOf(values)), light);
  const most = Math.max(...locked.members.map((m) => m.stressPsi.high ?? m.stressPsi.value));
  return {
    colours: coloured(values, classes),
    ...(overlay.numbers ? { numbers: ranked(values, showStress, classes.borders[0]!) } : {}),
    strip: {
      title: lockedInText.measured,
      unit: 'ksi',
      classes,
      write: (border) => fixed(border / 1000, border < 950 ? 1 : border % 1000 === 0 ? 0 : 1),
      notes: [
        lockedInText.basis(showStress(most)),
        ...(locked.suspects.length > 0 ? [lockedInText.suspects(locked.suspects.map(({ id }) => id))] : []),
        ...(locked.unmeasured.length > 0 ? [lockedInText.unmeasured(locked.unmeasured)] : []),
      ],
    },
  };
};

export const redundancy = ({ all: { statics }, overlay, light }: Given): Laid => {
  if (statics.kind !== 'stands') return says(redundancyText.title, redundancyText.movesFreely);
  const values = new Map(statics.redundancy.map((m) => [m.id, m.rN]));
  const classes = upward([0.001, 0.01, 0.03, 0.1, 0.3], light);
  const { pinned } = statics;
  return {
    colours: coloured(values, classes),
    ...(overlay.numbers ? { numbers: ranked(values, (v) => `${fixed(100 * v, 1)} %`, 1e-3) } : {}),
    strip: {
      title: redundancyText.share,
      unit: '%',
      classes,
      write: (border) => fixed(100 * border, border < 0.01 ? 1 : 0),
      low: redundancyText.low,
      high: redundancyText.high,
      notes: [
        redundancyText.welded(statics.indeterminacy),
        pinned ? redundancyText.pinned(pinned.selfStress, pinned.mechanisms) : redundancyText.pinnedUndecided,
      ],
    },
  };
};
