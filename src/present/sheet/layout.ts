import { legend, legendHeight } from '../draw/legend.ts';
import { shift } from '../draw/pen.ts';
import type { Part, Report, Section } from '../record/sections.ts';
import { type Flow, newFlow, turnOver } from './flow.ts';
import { framed } from './frame.ts';
import { closeUpBodies, mapBody, type Picture, stationBodies } from './maps.ts';
import { type Paper, roomOf, type Sheet } from './paper.ts';
import { draws } from './sectionOps.ts';

type Mapped = Extract<Section, { kind: 'map' | 'closeUps' | 'stations' }>;
const isMap = (section: Section): section is Mapped =>
  section.kind === 'map' || section.kind === 'closeUps' || section.kind === 'stations';

const picturesOf = (section: Mapped, flow: Flow, legendAt: number): readonly Picture[] => {
  switch (section.kind) {
    case 'map':
      return [mapBody(section, flow.room, legendAt)];
    case 'closeUps':
      return closeUpBodies(section, flow.room, legendAt);
    case 'stations':
      return stationBodies(section, flow.room, legendAt);
    default:
      return section satisfies never;
  }
};

/** Sheets that a map fills by itself, over its legend. */
const putMap = (flow: Flow, section: Mapped): void => {
  turnOver(flow);
  const legendAt = legendHeight(4) + 3;
  const { x, y, w, h } = flow.room;
  for (const { ops, scale } of picturesOf(section, flow, legendAt)) {
    flow.bodies.push({
      turned: flow.turned,
      side: flow.side,
      scale,
      ops: [...shift(ops, x, y), ...legend(x + 2, y + h - legendAt + 2, w - 4, 4, section.coverage)],
      late: [],
      marks: flow.waiting,
    });
    flow.waiting = [];
  }
};

const putSections = (flow: Flow, sections: readonly Section[]): void => {
  for (const section of sections) {
    if (isMap(section)) putMap(flow, section);
    else (draws[section.kind] as (f: Flow, s: Section) => void)(flow, section);
  }
};

/** Would this part end on the sheet that is begun? Laid once for trial. */
const fits = (part: Part, begun: Flow): boolean => {
  const trial = { ...newFlow(begun.room, begun.turned, begun.side), at: begun.at };
  putSections(trial, part.sections);
  return trial.bodies.length === 0;
};

/** Parts that lie alike and say the same of their sides run on, one below the other; others begin a sheet. */
const flowed = (parts: readonly Part[], paper: Paper): readonly Flow[] => {
  const flows: Flow[] = [];
  for (const part of parts) {
    const turned = part.lie === 'turned';
    const last = flows.at(-1);
    const alike = last && last.turned === turned && last.side === part.side;
    const runsOn = alike && (part.fresh === 'unlessFits' ? fits(part, last) : !part.fresh);
    const flow = runsOn ? last : newFlow(roomOf(paper, turned), turned, part.side);
    if (!runsOn) {
      if (last) turnOver(last);
      flows.push(flow);
    }
    putSections(flow, part.sections);
  }
  const last = flows.at(-1);
  if (last) turnOver(last);
  return flows;
};

/** A report laid out: every sheet as a drawing, framed, with its number among all. */
export const sheets = (report: Report): readonly Sheet[] => {
  const bodies = flowed(report.parts, report.head.paper).flatMap((flow) => flow.bodies);
  const sheetOf = (mark: string): number | null => {
    const at = bodies.findIndex(({ marks }) => marks.includes(mark));
    return at < 0 ? null : at + 1;
  };
  return bodies.map((body, k) =>
    framed(
      report.head,
      { ...body, ops: [...body.ops, ...body.late.flatMap((late) => late(sheetOf))] },
      k + 1,
      bodies.length,
    ),
  );
};
