import type { Figure } from '../../core/base/figure.ts';
import type { LockedMember, Suspect } from '../../core/lockedIn/result.ts';
import { showFigure, type Units } from '../show.ts';
import { type Table, tableOf } from '../table.ts';
import { restsOn } from '../words/basis.ts';
import { suspectWords } from '../words/reasons.ts';
import { type Showing, wordsOf } from './showing.ts';

/** The unit stands in the title. */
const unitless = (figure: Figure, units: Units): string =>
  showFigure(figure, units).replace(/ (lbf|in-lbf|ksi)$/, '');

/** Best estimate and both ends of a range, each in its own column of the CSV. */
const rangeHeads = (title: string, unit: string, of: (row: LockedMember) => Figure, per: number) => [
  { title: `${title}, best`, unit, raw: (row: LockedMember) => of(row).value / per },
  { title: `${title}, low`, unit, raw: (row: LockedMember) => (of(row).low ?? of(row).value) / per },
  { title: `${title}, high`, unit, raw: (row: LockedMember) => (of(row).high ?? of(row).value) / per },
];

/** What the measured bends lock into the members, as ranges between the two readings of a bow. */
export const lockedInTable = (showing: Showing): Table => {
  const words = wordsOf(showing);
  const { units } = showing;
  return tableOf<LockedMember>(
    {
      name: 'locked-in',
      title: 'Locked in by the measured bends',
      note: 'Tension positive. Ranges lie between the two readings of a bow: shortening only, and full end slopes.',
      empty: 'No bend has been measured, so nothing is known of what is locked in.',
      idOf: (row) => row.id,
      columns: [
        { id: 'id', title: 'Id', text: (row) => row.id },
        { id: 'words', title: 'In words', text: (row) => words(row.id) },
        {
          id: 'axial',
          title: 'Axial force',
          unit: 'lbf',
          align: 'right',
          text: (row) => unitless(row.axialLbf, units),
          raw: (row) => row.axialLbf.value,
          csv: rangeHeads('Axial force', 'lbf', (row) => row.axialLbf, 1),
        },
        {
          id: 'moment',
          title: 'End moment',
          unit: 'in-lbf',
          align: 'right',
          text: (row) => unitless(row.endMomentInLbf, units),
          raw: (row) => row.endMomentInLbf.value,
          csv: rangeHeads('End moment', 'in-lbf', (row) => row.endMomentInLbf, 1),
        },
        {
          id: 'stress',
          title: 'Stress',
          unit: 'ksi',
          align: 'right',
          text: (row) => unitless(row.stressPsi, units),
          raw: (row) => row.stressPsi.value / 1000,
          csv: rangeHeads('Stress', 'ksi', (row) => row.stressPsi, 1000),
        },
        {
          id: 'capped',
          title: 'Yielded',
          text: (row) => (row.capped ? 'capped: elastic estimate, yielded' : 'no'),
        },
        { id: 'because', title: 'Because of', text: (row) => row.because.join(', ') },
        { id: 'basis', title: 'Rests on', text: (row) => restsOn(row.stressPsi) },
      ],
    },
    showing.assessment.lockedIn.members,
  );
};

/** Members nobody has seen a bend in that the sums put near yield or buckling. */
export const suspectsTable = (showing: Showing): Table => {
  const words = wordsOf(showing);
  return tableOf<Suspect>(
    {
      name: 'suspects',
      title: 'Suspected of a bend nobody has seen',
      note: 'The sums, not an eye, put these here. Look, and measure.',
      empty: 'The measured bends put no other member near yield or buckling.',
      idOf: (row) => row.id,
      columns: [
        { id: 'id', title: 'Id', text: (row) => row.id },
        { id: 'words', title: 'In words', text: (row) => words(row.id) },
        { id: 'why', title: 'Why', text: suspectWords },
        {
          id: 'share',
          title: 'Share of what it can bear',
          align: 'right',
          text: (row) => showFigure(row.share, showing.units),
          raw: (row) => row.share.value,
          csv: [
            {
              title: 'Share of what it can bear, low',
              unit: 'share',
              raw: (row) => row.share.low ?? row.share.value,
            },
            {
              title: 'Share of what it can bear, high',
              unit: 'share',
              raw: (row) => row.share.high ?? row.share.value,
            },
          ],
        },
        { id: 'basis', title: 'Rests on', text: (row) => restsOn(row.share) },
      ],
    },
    showing.assessment.lockedIn.suspects,
  );
};
