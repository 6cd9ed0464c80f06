import jsQR from 'jsqr';
import { describe, expect, it } from 'vitest';
import { find, findIndex } from '../../src/app/find.ts';
import { assess } from '../../src/core/assess.ts';
import type { PathOp } from '../../src/present/draw/pen.ts';
import { qrOps } from '../../src/present/draw/qr.ts';
import { paperOf } from '../../src/present/papers/papers.ts';
import { tagCode } from '../../src/present/papers/tagSheets.ts';
import { demoJob, options } from './made.ts';

const SIDE = 400;

/** The code as a camera sees it: dark bars on white, `SIDE` dots wide. */
const seen = (text: string): Uint8ClampedArray => {
  const dots = new Uint8ClampedArray(SIDE * SIDE * 4).fill(255);
  for (const op of qrOps(text, 0, 0, SIDE) as readonly PathOp[])
    for (let k = 0; k < op.steps.length; k += 5) {
      const [, x0, y0] = op.steps[k] as ['move', number, number];
      const [, x1, y1] = op.steps[k + 2] as ['line', number, number];
      for (let y = Math.round(y0); y < Math.round(y1); y++)
        for (let x = Math.round(x0); x < Math.round(x1); x++)
          dots.fill(0, 4 * (y * SIDE + x), 4 * (y * SIDE + x) + 3);
    }
  return dots;
};

// jsQR reads codes and shares no code with the encoder
describe('the code of a tag', () => {
  const job = demoJob();
  const assessment = assess(job);

  it('is read back by another program, for every tag of the demo job', () => {
    const labels = paperOf('tags', job, assessment, options).parts.flatMap(({ sections }) =>
      sections.flatMap((section) => (section.kind === 'tags' ? section.tags : [])),
    );
    expect(labels.length).toBeGreaterThan(10);
    for (const { id, code } of labels) {
      expect(jsQR(seen(code), SIDE, SIDE)?.data).toBe(code);
      expect(code).toBe(`${id} · ${job.name}`);
    }
  });

  it('carries letters of any script and a name of any length', () => {
    for (const name of ['Öre 🔧 job', 'x'.repeat(200), '機体 12'])
      expect(jsQR(seen(tagCode('U3R-U4R', name)), SIDE, SIDE)?.data).toBe(tagCode('U3R-U4R', name));
  });

  it('names no address of a network', () => {
    expect(tagCode('U3R-U4R', job.name)).not.toMatch(/https?:|www\.|:\/\//);
  });

  it('finds its tube when it is pasted into the find box', () => {
    const index = findIndex(assessment.truss);
    expect(find(index, tagCode('L4R-L5R', job.name))[0]?.id).toBe('L4R-L5R');
    expect(find(index, tagCode('L4R', job.name))[0]?.id).toBe('L4R');
  });
});
