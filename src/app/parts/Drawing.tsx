import type { CSSProperties } from 'react';
import { type Drawing as Drawn, ink, type Op, type Step } from '../../present/draw/pen.ts';

/** Ink on paper by day, chalk on slate at night: the same drawing in the sheet's own inks. */
const inks: Readonly<Record<string, string>> = {
  [ink.line]: 'var(--ink)',
  [ink.quiet]: 'var(--ink-soft)',
  [ink.rule]: 'var(--rule-strong)',
  [ink.faint]: 'var(--rule)',
  [ink.paper]: 'var(--sheet)',
  [ink.wash]: 'var(--hover)',
};
const inked = (colour: string | undefined): string =>
  colour === undefined ? 'none' : (inks[colour] ?? colour);

const n = (value: number): number => Math.round(value * 1000) / 1000;
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
    default:
      return step satisfies never;
  }
};

const anchors = { left: 'start', middle: 'middle', right: 'end' } as const;

const OpShape = ({ op }: { readonly op: Op }) => {
  if (op.kind === 'text')
    return (
      <text
        x={n(op.x)}
        y={n(op.y)}
        fontSize={op.sizeMm}
        fontWeight={op.weight === 'bold' ? 600 : 400}
        textAnchor={anchors[op.align]}
        style={{ fill: inked(op.colour) }}
      >
        {op.text}
      </text>
    );
  if (op.kind !== 'path') return null;
  const style: CSSProperties = {
    fill: inked(op.fill),
    stroke: inked(op.stroke?.colour),
    strokeWidth: op.stroke?.widthMm,
    ...(op.stroke?.dashMm ? { strokeDasharray: op.stroke.dashMm.join(' ') } : {}),
  };
  return <path d={op.steps.map(stepText).join('')} style={style} strokeLinejoin="round" />;
};

/** A drawing in the sheet's inks, as wide as its place; where that is too narrow to read, it scrolls sideways. */
export const Drawing = ({ drawing, title }: { readonly drawing: Drawn; readonly title: string }) => (
  // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls sideways must be reached by key
  <figure className="drawing" tabIndex={0} aria-label={title}>
    <svg viewBox={`0 0 ${n(drawing.widthMm)} ${n(drawing.heightMm)}`} role="img" aria-label={title}>
      {drawing.ops.map((op, k) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a drawing is replaced as a whole
        <OpShape key={k} op={op} />
      ))}
    </svg>
  </figure>
);
