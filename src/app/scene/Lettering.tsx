import { useFrame, useThree } from '@react-three/fiber';
import { type RefObject, useEffect, useMemo, useRef } from 'react';
import { badgeBoxes, paintBadges } from './badges.ts';
import type { Stand } from './Camera.tsx';
import { paintCuts } from './cutMarks.ts';
import type { Drawn } from './drawn.ts';
import type { Floor } from './floor.ts';
import { inks } from './inks.ts';
import { hoverLabel, labelsFor, paintLabels } from './labels.ts';
import { arrowLabels, cutLabels, numberLabels } from './overlayLabels.ts';
import { pinLabels } from './pins.ts';
import type { SceneProps } from './sceneProps.ts';
import { paintLines } from './trammelLines.ts';
import { basis } from './turntable.ts';

interface LetteringProps {
  readonly stand: RefObject<Stand>;
  readonly canvas: RefObject<HTMLCanvasElement | null>;
  readonly hovered: RefObject<string | null>;
  readonly drawn: Drawn;
  readonly floor: Floor;
  readonly shown: SceneProps;
}

const noLines: NonNullable<SceneProps['lines']> = [];
const noNumbers: NonNullable<SceneProps['numbers']> = new Map();
const noArrows: NonNullable<SceneProps['arrows']> = [];
const noPins: NonNullable<SceneProps['pins']> = [];
const noCuts: NonNullable<SceneProps['cutMarks']> = [];

/** Draws everything that is written or ruled flat on the sheet, in step with each frame of the picture. */
export const Lettering = ({ stand, canvas, hovered, drawn, floor, shown }: LetteringProps) => {
  const invalidate = useThree((state) => state.invalidate);
  const dpr = useThree((state) => state.viewport.dpr);
  const widths = useRef(new Map<string, number>());
  const labelWidths = useRef(new Map<object, number>());
  const family = useRef('');
  const pens = useRef<CanvasRenderingContext2D>(null);
  const { marks, selected, ghosted, labels, light } = shown;
  const lines = shown.lines ?? noLines;
  const numbers = shown.numbers ?? noNumbers;
  const arrows = shown.arrows ?? noArrows;
  const cutMarks = shown.cutMarks ?? noCuts;
  const pins = shown.pins ?? noPins;
  const wanted = useMemo(
    () =>
      [
        ...labelsFor(drawn, floor, { marks, selected, ghosted, labels, light, lines }),
        ...numberLabels(drawn, ghosted, numbers),
        ...arrowLabels(drawn, arrows),
        ...cutLabels(drawn, cutMarks),
        ...pinLabels(drawn, ghosted, pins),
      ].sort((a, b) => a.rank - b.rank),
    [drawn, floor, marks, selected, ghosted, labels, light, lines, numbers, arrows, cutMarks, pins],
  );
  // biome-ignore lint/correctness/useExhaustiveDependencies: other labels, or another size of writing
  useEffect(() => labelWidths.current.clear(), [wanted]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: each of these changes what is written
  useEffect(() => invalidate(), [wanted, shown.shape, shown.scaleUnit, dpr, invalidate]);
  useEffect(() => {
    // a font that comes late has other widths
    const measureAgain = () => {
      widths.current.clear();
      labelWidths.current.clear();
      invalidate();
    };
    document.fonts.addEventListener('loadingdone', measureAgain);
    return () => document.fonts.removeEventListener('loadingdone', measureAgain);
  }, [invalidate]);

  useFrame(() => {
    const sheet = canvas.current;
    if (!sheet) return;
    if (pens.current?.canvas !== sheet) pens.current = sheet.getContext('2d');
    const pen = pens.current;
    if (!pen) return;
    if (family.current === '') family.current = getComputedStyle(sheet).fontFamily;
    const { now, size } = stand.current;
    const [width, height] = [Math.round(size.width * dpr), Math.round(size.height * dpr)];
    if (sheet.width !== width || sheet.height !== height) {
      sheet.width = width;
      sheet.height = height;
    }
    pen.setTransform(dpr, 0, 0, dpr, 0, 0);
    pen.clearRect(0, 0, size.width, size.height);
    const overlay = {
      pen,
      basis: basis(now),
      turntable: now,
      size,
      inks: inks[light],
      family: family.current,
      widths: widths.current,
      labelWidths: labelWidths.current,
    };
    paintLines(overlay, lines);
    paintCuts(overlay, drawn, cutMarks);
    const over = hovered.current === null ? null : hoverLabel(drawn, hovered.current);
    paintLabels(overlay, over ? [over, ...wanted] : wanted, badgeBoxes(overlay, shown.shape));
    paintBadges(overlay, shown);
  });
  return null;
};
