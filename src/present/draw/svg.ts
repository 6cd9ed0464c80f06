import type { Drawing, Op, Step } from './pen.ts';

const n = (value: number): string => String(Math.round(value * 1000) / 1000 + 0);

const stepText = (step: Step): string => {
  switch (step[0]) {
    case 'move':
      return `M${n(step[1])} ${n(step[2])}`;
    case 'line':
      return `L${n(step[1])} ${n(step[2])}`;
    case 'curve':
      return `C${step
        .slice(1)
        .map((v) => n(v as number))
        .join(' ')}`;
    case 'close':
      return 'Z';
    default: {
      const never: never = step;
      return never;
    }
  }
};

const escaped = (words: string): string =>
  words.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;').replace(/"/g, '&quot;');

const anchors = { left: 'start', middle: 'middle', right: 'end' } as const;

const opText = (op: Op): string => {
  if (op.kind === 'text') {
    const bold = op.weight === 'bold' ? ' font-weight="700"' : '';
    return `<text x="${n(op.x)}" y="${n(op.y)}" font-size="${n(op.sizeMm)}"${bold} text-anchor="${anchors[op.align]}" fill="${op.colour}">${escaped(op.text)}</text>`;
  }
  // A drawing holds no photos: their place is shown.
  if (op.kind === 'image')
    return `<rect x="${n(op.x)}" y="${n(op.y)}" width="${n(op.w)}" height="${n(op.h)}" fill="none" stroke="#5A636B" stroke-width="0.2"/>`;
  const { stroke, fill } = op;
  const dash = stroke?.dashMm ? ` stroke-dasharray="${stroke.dashMm.map(n).join(' ')}"` : '';
  const line = stroke
    ? ` stroke="${stroke.colour}" stroke-width="${n(stroke.widthMm)}" stroke-linejoin="round" stroke-linecap="${stroke.cap ?? 'butt'}"${dash}`
    : '';
  return `<path d="${op.steps.map(stepText).join('')}" fill="${fill ?? 'none'}"${line}/>`;
};

/** A drawing as SVG, true to size in millimetres. `title` is what a screen reader says of it. */
export const svgText = (drawing: Drawing, title: string): string =>
  [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${n(drawing.widthMm)}mm" height="${n(drawing.heightMm)}mm" viewBox="0 0 ${n(drawing.widthMm)} ${n(drawing.heightMm)}" font-family="Helvetica, Arial, sans-serif" role="img" aria-label="${escaped(title)}">`,
    `<title>${escaped(title)}</title>`,
    ...drawing.ops.map(opText),
    '</svg>',
  ].join('\n');
