import { type LineGroup, lineGroups } from '../../core/estimate/result.ts';
import type { RecordOf } from '../../core/job/jobSchema.ts';
import { fixed } from '../show.ts';
import { type Table, tableOf } from '../table.ts';
import { groupWords } from '../words/estimate.ts';
import type { Showing } from './showing.ts';

/** Topic under which a person enters the hours of a line group when the frame is exchanged. */
export const exchangeTopic = (group: LineGroup): string => `exchange:${group}`;

/** The same line groups for the repair and for an exchange frame, as entered; nothing is recommended. */
export const exchangeTable = (
  { assessment: { estimate, takeoff } }: Showing,
  manual: readonly RecordOf<'manual'>[],
): Table => {
  const repair = (group: LineGroup): number =>
    estimate.lines.filter((l) => l.group === group).reduce((sum, l) => sum + l.hours.likely, 0);
  const exchange = (group: LineGroup): number | null =>
    manual.findLast((m) => m.topic === exchangeTopic(group))?.value ?? null;
  const unseen = estimate.hidden.reduce((sum, h) => sum + (h.chance ? 0 : h.members.length), 0);
  const missing = lineGroups.filter((group) => exchange(group) === null);
  return tableOf<LineGroup>(
    {
      name: 'repair-or-exchange',
      title: 'Repair or exchange the frame',
      note: `Likely hours. The repair leaves out ${unseen} tubes not looked at and not priced, and ${takeoff.ledger.notKnown.length} repairs without a design. The exchange leaves out the frame's price and carriage${missing.length > 0 ? `, and has no hours entered for: ${missing.map((g) => groupWords[g].toLowerCase()).join(', ')}` : ''}. Neither is recommended.`,
      empty: 'none',
      columns: [
        { id: 'group', title: 'Group', text: (g) => groupWords[g] },
        {
          id: 'repair',
          title: 'Repair',
          unit: 'h',
          align: 'right',
          text: (g) => fixed(repair(g), 1),
          raw: repair,
        },
        {
          id: 'exchange',
          title: 'Exchange, as entered',
          unit: 'h',
          align: 'right',
          text: (g) => {
            const hours = exchange(g);
            return hours === null ? 'not entered' : fixed(hours, 1);
          },
          raw: exchange,
        },
      ],
    },
    lineGroups,
  );
};
