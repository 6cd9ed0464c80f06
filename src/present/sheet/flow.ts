import { wrap } from '../draw/helvetica.ts';
import { type Op, type Ops, text } from '../draw/pen.ts';
import type { Laid, Late, Room } from './paper.ts';

export const BODY_MM = 3;
export const LEAD_MM = 4.1;

/** A growing run of sheets: where the next thing goes, and a new sheet when it does not fit. */
export interface Flow {
  readonly room: Room;
  readonly turned: boolean;
  readonly bodies: Laid[];
  /** What the title block says of the sheet in hand. */
  side: string;
  /** Distance from the top of the room to the next thing. */
  at: number;
  ops: Op[];
  late: Late[];
  /** Marks that stand on the sheet in hand, and those that wait for the next thing put down. */
  marks: string[];
  waiting: string[];
}

export const newFlow = (room: Room, turned: boolean, side: string): Flow => ({
  room,
  turned,
  bodies: [],
  side,
  at: 0,
  ops: [],
  late: [],
  marks: [],
  waiting: [],
});

export const turnOver = (flow: Flow): void => {
  if (flow.ops.length > 0)
    flow.bodies.push({
      turned: flow.turned,
      side: flow.side,
      scale: 'none',
      ops: flow.ops,
      late: flow.late,
      marks: flow.marks,
    });
  flow.ops = [];
  flow.late = [];
  flow.marks = [];
  flow.at = 0;
};

/** Puts a thing of known height, on the next sheet when it does not fit here. `keep`: room wanted below it too. */
export const put = (
  flow: Flow,
  height: number,
  draw: (x: number, y: number) => Ops,
  keep = 0,
  late?: (x: number, y: number) => Late,
): void => {
  if (flow.at > 0 && flow.at + height + keep > flow.room.h) turnOver(flow);
  flow.marks.push(...flow.waiting);
  flow.waiting = [];
  const [x, y] = [flow.room.x, flow.room.y + flow.at];
  flow.ops.push(...draw(x, y));
  if (late) flow.late.push(late(x, y));
  flow.at += height;
};

export const gap = (flow: Flow, height: number): void => {
  if (flow.at > 0) flow.at += height;
};

/** Words folded to the room, line by line. */
export const putLines = (
  flow: Flow,
  words: string,
  sizeMm: number,
  more: { bold?: boolean; indent?: number; colour?: string } = {},
): void => {
  const indent = more.indent ?? 0;
  const lead = sizeMm * 1.36;
  for (const line of wrap(words, flow.room.w - indent, sizeMm, more.bold ? 'bold' : 'regular'))
    put(flow, lead, (x, y) => [
      text([x + indent, y + sizeMm], line, sizeMm, {
        weight: more.bold ? 'bold' : 'regular',
        ...(more.colour ? { colour: more.colour } : {}),
      }),
    ]);
};
