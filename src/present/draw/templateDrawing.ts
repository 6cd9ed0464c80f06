import type { Design, Part, Piece } from '../../core/splice/result.ts';
import { showLength, showTube, type Units } from '../show.ts';
import { spliceDrawing } from './templateSplice.ts';
import { methodWords } from './templateWords.ts';
import type { Template } from './templateWrap.ts';

/** Widest drawing that stands whole beside the bars of either paper. */
const WIDTH_MM = 166;

const partLine = (part: Part, units: Units): string =>
  [
    `${part.id.replace(/-/g, ' ')}: ${showTube(part.tube, units)}, ${part.material}`,
    ...(part.longIn.value - part.shortIn.value < 1e-9
      ? [showLength(part.longIn.value, units)]
      : [
          `${showLength(part.longIn.value, units)} longest line, ${showLength(part.shortIn.value, units)} shortest`,
        ]),
    `${part.weightLb.value.toFixed(2)} lb`,
    ...(part.slideOn ? ['slide on first'] : []),
  ].join(' · ');

/** The drawing as a sheet of its own ahead of the templates, with the cut card above it. */
export const drawingTemplate = (piece: Piece, design: Design, units: Units): Template | null => {
  const drawing = spliceDrawing(piece, design, units, WIDTH_MM);
  const { plan } = design;
  return (
    drawing &&
    plan && {
      id: 'drawing',
      title: `${methodWords[design.method]} of ${piece.id}`,
      lines: [
        ...plan.parts.map((p) => partLine(p, units)),
        `Adds ${plan.addedLb.value.toFixed(2)} lb · weld ${showLength(plan.weldIn.value, units)}`,
        ...(plan.stubs && plan.openingIn
          ? [
              `Opening ${showLength(plan.openingIn.value, units)} on the axis, as computed: for ordering. Cut to the opening measured after spreading.`,
            ]
          : []),
      ],
      scale: 'drawing, not 1:1',
      ...drawing,
    }
  );
};
