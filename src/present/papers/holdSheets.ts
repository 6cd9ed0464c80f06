import type { AskedReading, HoldPoint } from '../../core/trammel/result.ts';
import { heading } from '../record/heading.ts';
import type { MeasureRow, Part, Section } from '../record/sections.ts';
import { fixed, lengthUnit, showBareLength } from '../show.ts';
import { distanceLine } from '../tables/pairs.ts';
import { rawLength, type Showing } from '../tables/showing.ts';
import { cautionsFor } from '../words/cautions.ts';
import { countWords } from '../words/names.ts';
import { holdWords } from '../words/record.ts';

const wholeTruss =
  'The whole truss is read here: every distance stands on the trammel sheet. Below only what is outside its limit or cannot be told.';

/** Distances on the sheet of a hold: all that can have moved, or of the whole truss what is outside or cannot be told. */
const asked = ({ covers, asks }: HoldPoint): readonly AskedReading[] =>
  covers === 'whatCanMove'
    ? asks
    : asks.filter(({ verdict }) => verdict === 'outside' || verdict === 'cannotTell');

/** The trammel sheet of each hold point: what to hold, its limit, and boxes for what is found and what is left. */
export const holdSheets = (showing: Showing, side: string): readonly Part[] => {
  const { assessment, units } = showing;
  const holds = assessment.trammel.holds ?? [];
  const compared = new Map(assessment.trammel.targets.map((target) => [target.id, target.compared]));
  const rowOf = (hold: HoldPoint['hold'], ask: AskedReading): MeasureRow => {
    const limit = rawLength(ask.toleranceIn?.value, units);
    const found = compared.get(ask.target)?.find((one) => one.hold === hold);
    return {
      id: ask.target,
      words: distanceLine(ask),
      aim: showBareLength(ask.aimIn.value, units, 64),
      limit: limit === null ? 'none loaded' : fixed(limit, units === 'mm' ? 1 : 3),
      ...(found ? { found: showBareLength(found.foundIn.value, units, 64) } : {}),
    };
  };
  if (holds.length === 0)
    return [
      {
        lie: 'upright',
        side,
        sections: [
          heading('Trammel sheets of the hold points'),
          { kind: 'lines', lines: ['No hold asks for a reading.'] },
        ],
      },
    ];
  return holds.map((point, k): Part => {
    const rows = asked(point).map((ask) => rowOf(point.hold, ask));
    const sections: readonly Section[] = [
      heading(
        `Hold ${k + 1} of ${holds.length} · ${holdWords[point.hold]}`,
        point.covers === 'whatCanMove'
          ? 'Read what can have moved. True distances between tube axes; the weld’s shrinkage is in "hold at". Left: after what was done about it.'
          : wholeTruss,
      ),
      ...(k === 0 ? [{ kind: 'cautions', cautions: cautionsFor('measuring') } as const] : []),
      ...(rows.length === 0
        ? ([{ kind: 'lines', lines: ['Nothing is listed here.'] }] as const)
        : ([{ kind: 'measures', unit: lengthUnit(units), rows }] as const)),
      ...(point.fitUps.length > 0
        ? ([
            {
              kind: 'lines',
              lines: [`${countWords(point.fitUps.length, 'joint')} to be seen before tacking: fit-up card.`],
            },
          ] as const)
        : []),
      { kind: 'blanks', names: ['Read by, date', 'Instrument, sure to ±', 'Seen by a second person'] },
    ];
    return { lie: 'upright', side, sections, fresh: 'unlessFits' };
  });
};
