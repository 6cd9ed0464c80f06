import type { Assessment } from '../../core/assessment.ts';
import { length, type Vec3 } from '../../core/base/vec3.ts';
import { fixed } from '../../present/show.ts';
import { movementText, selfStressText, signedEnds } from '../text/picture.ts';
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
  if (total === null) return says(movementText.title, movementText.undecided);
  const which = Math.min(overlay.which, list.length - 1);
  const movement = list[which];
  if (!movement) return says(movementText.title, movementText.none);
  const shape = shapeOf(all, movementText.which(which + 1, total), movement);
  return {
    swings: true,
    shape: { ...shape, size: movementText.size },
    strip: {
      title: shape.name,
      unit: '',
      notes: [
        statics.kind === 'stands' ? movementText.pinned : movementText.asHeld,
        movementText.most(mostMoved(movement)),
      ],
    },
  };
};

export const selfStress = ({ all: { statics }, overlay, light }: Given): Laid => {
  const states = statics.kind === 'stands' ? statics.selfStressStates : [];
  const total = statics.kind === 'stands' ? (statics.pinned?.selfStress ?? null) : 0;
  if (total === null) return says(selfStressText.title, selfStressText.undecided);
  const which = Math.min(overlay.which, states.length - 1);
  const state = states[which];
  if (!state) return says(selfStressText.title, selfStressText.none);
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
      title: selfStressText.which(which + 1, total),
      unit: selfStressText.unit,
      classes,
      write: (border) => `${border < 0 ? '−' : '+'}${fixed(Math.abs(border), 2)}`,
      ...signedEnds,
      notes: [selfStressText.note],
    },
  };
};
