import type { Assessment } from '../../core/assessment.ts';
import { length, type Vec3 } from '../../core/base/vec3.ts';
import { fixed } from '../../present/show.ts';
import { colourIn, signed } from './classes.ts';
import { coloured, type Given, type Laid, ranked, says, shapeOf } from './laid.ts';

/** Free movements: of the truss itself when it moves as it is held, else of the truss with pinned joints. */
export const movements = ({
  statics,
}: Assessment): readonly (readonly { readonly id: string; readonly moveIn: Vec3 }[])[] =>
  statics.kind === 'movesFreely' ? [statics.clusters] : statics.mechanismShapes;

/** At most eight clusters that move at least half as far as the one that moves most. */
const mostMoved = (movement: ReturnType<typeof movements>[number]): readonly string[] => {
  const sized = movement
    .map(({ id, moveIn }) => ({ id, size: length(moveIn) }))
    .sort((p, q) => q.size - p.size);
  return sized
    .filter(({ size }) => size > 0.5 * (sized[0]?.size ?? 0))
    .slice(0, 8)
    .map(({ id }) => id);
};

export const moves = ({ all, overlay }: Given): Laid => {
  const list = movements(all);
  const { statics } = all;
  const total = statics.kind === 'stands' ? (statics.pinned?.mechanisms ?? null) : 1;
  if (total === null)
    return says('Free movements', 'Not decided: more than 300 tubes, or no clear gap in the sums.');
  const which = Math.min(overlay.which, list.length - 1);
  const movement = list[which];
  if (!movement)
    return says('Free movements', 'Were every joint pinned, nothing could move: no free movement.');
  const shape = shapeOf(all, `Free movement ${which + 1} of ${total}`, movement);
  return {
    swings: true,
    shape: { ...shape, size: 'its size means nothing' },
    strip: {
      title: shape.name,
      unit: '',
      notes: [
        statics.kind === 'stands'
          ? 'Were every joint a pin, the truss could move like this; welded, its bending alone holds it.'
          : 'Held as it is, the truss can move like this without straining a tube.',
        `Moves most: ${mostMoved(movement).join(', ')}.`,
      ],
    },
  };
};

export const selfStress = ({ all: { statics }, overlay, light }: Given): Laid => {
  const states = statics.kind === 'stands' ? statics.selfStressStates : [];
  const total = statics.kind === 'stands' ? (statics.pinned?.selfStress ?? null) : 0;
  if (total === null)
    return says('States of self-stress', 'Not decided: more than 300 tubes, or no clear gap in the sums.');
  const which = Math.min(overlay.which, states.length - 1);
  const state = states[which];
  if (!state)
    return says(
      'States of self-stress',
      'Were every joint pinned, no tube could be tight without a load: none.',
    );
  const values = new Map(state.members.map((m) => [m.id, m.share]));
  const classes = signed(1, light);
  const none = colourIn(classes, 0);
  return {
    colours: new Map([
      ...(statics.kind === 'stands' ? statics.redundancy.map((m) => [m.id, none] as const) : []),
      ...coloured(values, classes),
    ]),
    ...(overlay.numbers
      ? { numbers: ranked(values, (v) => `${v < 0 ? '−' : '+'}${fixed(Math.abs(v), 2)}`, 0.05) }
      : {}),
    strip: {
      title: `State of self-stress ${which + 1} of ${total}`,
      unit: 'of the largest force',
      classes,
      write: (border) => `${border < 0 ? '−' : '+'}${fixed(Math.abs(border), 2)}`,
      low: '− compression',
      high: 'tension +',
      notes: [
        'Forces that balance without any load, were every joint pinned. Only their shares have a meaning.',
      ],
    },
  };
};
