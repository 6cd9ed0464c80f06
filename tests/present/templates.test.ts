import { describe, expect, it } from 'vitest';
import { dot, length, scale, sub, type Vec3 } from '../../src/core/base/vec3.ts';
import type { Tube } from '../../src/core/job/modelSchema.ts';
import { benchTube } from '../../src/core/splice/fishmouth.ts';
import type { CopeTube, Method } from '../../src/core/splice/result.ts';
import { designsOf } from '../../src/core/splice/splice.ts';
import { textWidth } from '../../src/present/draw/helvetica.ts';
import { svgText } from '../../src/present/draw/svg.ts';
import { benchTemplates } from '../../src/present/draw/template.ts';
import { spliceDrawing } from '../../src/present/draw/templateSplice.ts';
import type { ReportHead } from '../../src/present/record/sections.ts';
import { templateFiles, templateFilesOf } from '../../src/present/templates.ts';
import { bench } from '../core/splice/bench.ts';
import { expectNear } from '../kit/near.ts';
import { madeJob } from './made.ts';
import { type PathsOfPage, type Place, readPaths } from './readPaths.ts';

const HUNDREDTH = { abs: 0.01, because: 'finer than any printer; numbers in the file are to 0.001 mm' };
const PAPERS = { a4: [210, 297], letter: [215.9, 279.4] } as const;

const head = (paper: 'a4' | 'letter'): ReportHead => ({
  title: 'Templates',
  job: 'Ditch at Harrow Fell',
  aircraft: 'Invented two-seater',
  practice: false,
  date: '2026-03-02 08:00 UTC',
  revision: 'none',
  version: '0.1.0-test',
  paper,
});

const says = (page: PathsOfPage): string => page.words.map((w) => w.text).join(' ');

const pagesOf = async (
  piece: ReturnType<typeof bench>,
  methods: readonly Method[],
  paper: 'a4' | 'letter' = 'a4',
  paperMm = 0.1,
  sleeve?: Tube,
): Promise<readonly PathsOfPage[]> => {
  const files = await templateFilesOf(
    head(paper),
    piece,
    designsOf(piece, sleeve ? { sleeve: { tube: sleeve } } : {}),
    'Bench',
    {
      paper,
      units: 'inFraction',
      methods,
      paperMm,
    },
  );
  // the drawing that goes ahead of a method's templates is not full size
  const pages = await readPaths(files[0]!.bytes);
  return pages.filter((p) => !says(p).includes('not 1:1'));
};

const lengthsOf = (page: PathsOfPage, upright: boolean): readonly number[] =>
  page.lines
    .filter((l) => l.length === 2)
    .filter(([a, b]) => Math.abs(a![upright ? 0 : 1] - b![upright ? 0 : 1]) < 1e-3)
    .map(([a, b]) => Math.abs(a![upright ? 1 : 0] - b![upright ? 1 : 0]));
const nearest = (lengths: readonly number[], want: number): number =>
  lengths.reduce((a, b) => (Math.abs(b - want) < Math.abs(a - want) ? b : a), Number.POSITIVE_INFINITY);
/** The cut lines: drawn in half degrees of the clock and so with most points. */
const curves = (page: PathsOfPage): readonly (readonly Place[])[] => page.lines.filter((l) => l.length > 200);

describe('every template page', () => {
  for (const paper of ['a4', 'letter'] as const)
    it(`on ${paper} is of its exact size and carries both bars both ways and the inch square`, async () => {
      const pages = await pagesOf(
        bench(),
        ['innerSleeve', 'outerSleeve', 'largerTube', 'splitSleeve'],
        paper,
      );
      expect(pages.length).toBeGreaterThan(8);
      for (const page of pages) {
        expectNear(page.widthMm, PAPERS[paper][0], HUNDREDTH);
        expectNear(page.heightMm, PAPERS[paper][1], HUNDREDTH);
        for (const upright of [false, true]) {
          expectNear(nearest(lengthsOf(page, upright), 100), 100, HUNDREDTH);
          expectNear(nearest(lengthsOf(page, upright), 101.6), 101.6, HUNDREDTH);
        }
        const squares = page.lines.filter(
          (l) => l.length === 5 && Math.abs(l[1]![0] - l[0]![0] - 25.4) < 0.01,
        );
        expect(squares.some((l) => Math.abs(l[2]![1] - l[1]![1] - 25.4) < 0.01)).toBe(true);
        expect(says(page)).toContain('does not approve repairs');
      }
    });

  it('says tube, end, diameter, paper, which side is out, and reverse angle on the second cut', async () => {
    const [first, second] = await pagesOf(bench({ clock: 4 }), ['innerSleeve']);
    for (const [page, end] of [
      [first!, 'A'],
      [second!, 'B'],
    ] as const) {
      const words = says(page);
      for (const wanted of [
        'bench',
        `joint nearer ${end}`,
        '1.000 in',
        '0.1 mm',
        'OUTSIDE OF PAPER',
        'STUB',
        'SECTION',
      ])
        expect(words).toContain(wanted);
    }
    expect(says(first!)).not.toContain('REVERSE ANGLE');
    expect(says(second!)).toContain('REVERSE ANGLE');
  });

  it('keeps all its ink within the frame', async () => {
    for (const page of await pagesOf(bench(), ['innerSleeve', 'splitSleeve'], 'letter'))
      for (const line of page.lines)
        for (const [x, y] of line) {
          expect(x).toBeGreaterThanOrEqual(9.99);
          expect(x).toBeLessThanOrEqual(page.widthMm - 9.99);
          expect(y).toBeLessThanOrEqual(page.heightMm - 9.99);
        }
  });
});

describe('a scarf wrap', () => {
  it('laid round the tube lies in the plane of the cut, closes on itself, and is π (OD + paper) round', async () => {
    for (const paperMm of [0, 0.1, 0.25]) {
      const [page] = await pagesOf(bench({ clock: 4 }), ['innerSleeve'], 'a4', paperMm);
      const [stub, section] = [...curves(page!)].sort((a, b) => b[0]![1] - a[0]![1]);
      for (const curve of [stub!, section!]) {
        const [first, last] = [curve[0]!, curve.at(-1)!];
        expectNear(last[0] - first[0], Math.PI * (25.4 + paperMm), HUNDREDTH);
        expectNear(last[1], first[1], HUNDREDTH);
        // The plane holds three points of the curve; every other one, wrapped on the tube, lies in it.
        const on = curve.map(([x, y]): Vec3 => {
          const phi = (2 * Math.PI * (x - first[0])) / (last[0] - first[0]);
          return [-y, 12.7 * Math.cos(phi), 12.7 * Math.sin(phi)];
        });
        const [p, q, r] = [on[0]!, on[120]!, on[240]!];
        const [u, v] = [sub(q, p), sub(r, p)];
        const n: Vec3 = [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]];
        for (const point of on) expectNear(dot(sub(point, p), n) / length(n), 0, HUNDREDTH);
        // 30° between plane and axis
        expectNear((Math.asin(Math.abs(n[0]) / length(n)) * 180) / Math.PI, 30, {
          abs: 0.02,
          because: '0.01 mm in 44',
        });
      }
      // 4-95a: 1/8 in along the tube
      expectNear(stub![0]![1] - section![0]![1], 25.4 / 8, HUNDREDTH);
    }
  });
});

describe('a cope wrap', () => {
  const main = benchTube('longeron', 1.25, (55 / 180) * Math.PI, 0.08, 4);
  const next = benchTube('vertical', 1.125, (75 / 180) * Math.PI, 0, 9);

  /** First touch of the solid by a line of the branch, coming from far: implicit cylinders, stepping and halving. */
  const touch = (tubes: readonly CopeTube[], clock: number): number => {
    const phi = (clock / 6) * Math.PI;
    const outside = (z: number): number => {
      const p: Vec3 = [z, 0.5 * Math.cos(phi), 0.5 * Math.sin(phi)];
      return Math.min(
        ...tubes.map((t) => {
          const w = sub(p, t.offset);
          return length(sub(w, scale(t.direction, dot(w, t.direction)))) - t.odIn / 2;
        }),
      );
    };
    let high = 6;
    while (outside(high) > 0) high -= 1e-3;
    let [low, top] = [high, high + 1e-3];
    for (let n = 0; n < 40; n++) {
      const mid = (low + top) / 2;
      if (outside(mid) > 0) top = mid;
      else low = mid;
    }
    return low;
  };

  it('follows the solid of one and of two main tubes, at their angles and offsets', async () => {
    for (const meets of [[main], [main, next]]) {
      const pages = await pagesOf(bench({ meets: [meets, meets] }), ['fullMember']);
      // end A: `to` is up the paper, so that z grows upwards
      const curve = curves(pages[0]!)[0]!;
      const [first, last] = [curve[0]!, curve.at(-1)!];
      expectNear(last[1], first[1], HUNDREDTH);
      const zero = touch(meets, 0);
      for (let k = 0; k < curve.length; k += 7) {
        const clock = (12 * (curve[k]![0] - first[0])) / (last[0] - first[0]);
        expectNear((first[1] - curve[k]![1]) / 25.4, touch(meets, clock) - zero, {
          abs: 1e-3,
          because: '0.001 mm steps round a steep curve',
        });
      }
    }
  });
});

describe('a template larger than the paper', () => {
  it('is tiled, and laid mark on mark its curve runs on', async () => {
    const piece = bench({
      tube: { odIn: 2, wallIn: 0.058 },
      betweenClustersIn: 60,
      damageFromIn: 29,
      damageToIn: 31,
    });
    const pages = await pagesOf(piece, ['outerSleeve'], 'a4', 0.1, { odIn: 2.25, wallIn: 0.12 });
    const [one, two] = pages;
    expect(says(one!)).toContain('column 1 of 2');
    const mark = (page: PathsOfPage, name: string): Place => page.words.find((w) => w.text === name)!.at;
    const [dx, dy] = [mark(one!, 'A')[0] - mark(two!, 'A')[0], mark(one!, 'A')[1] - mark(two!, 'A')[1]];
    expectNear(mark(one!, 'B')[0] - mark(two!, 'B')[0], dx, HUNDREDTH);
    expectNear(mark(one!, 'B')[1] - mark(two!, 'B')[1], dy, HUNDREDTH);
    const longest = (page: PathsOfPage): readonly Place[] =>
      page.lines.reduce((a, b) => (b.length > a.length ? b : a));
    const [left, right] = [longest(one!), page2(two!, dx, dy)];
    const end = left.at(-1)!;
    const shared = right.filter(([x]) => x < end[0] - 0.01 && x > left[0]![0]);
    expect(shared.length).toBeGreaterThan(3);
    for (const [x, y] of shared) {
      const near = left.reduce((a, b) =>
        Math.hypot(b[0] - x, b[1] - y) < Math.hypot(a[0] - x, a[1] - y) ? b : a,
      );
      expect(Math.hypot(near[0] - x, near[1] - y)).toBeLessThan(0.5);
    }
    // together they make the whole wrap: π (2-1/4 in + 0.1 mm)
    expectNear(right.at(-1)![0] - left[0]![0], Math.PI * (2.25 * 25.4 + 0.1), HUNDREDTH);
  });
});

/** The curve of a second tile, most of which lies on the first: its longest line, moved by the marks. */
const page2 = (page: PathsOfPage, dx: number, dy: number): readonly Place[] =>
  page.lines
    .filter((l) => l.length > 8)
    .reduce((a, b) => (b.length > a.length ? b : a))
    .map(([x, y]): Place => [x + dx, y + dy]);

describe('bench templates', () => {
  it('have the tube’s own diameter as bore and notch', () => {
    const [guide, blocks, gauge] = benchTemplates(bench(), 'mm');
    for (const t of [guide!, blocks!, gauge!]) {
      const spans = t.ops.flatMap((op) => {
        if (op.kind !== 'path' || op.steps.length < 30) return [];
        const xs = op.steps.flatMap((s) => (s[0] === 'close' ? [] : [s[1] as number]));
        return [Math.max(...xs) - Math.min(...xs)];
      });
      // the gauge's plate is drawn in one line with its notch: twice as wide
      expectNear(Math.min(...spans), t === gauge ? 50.8 : 25.4, HUNDREDTH);
    }
  });
});

describe('template files of a job', () => {
  it('are one PDF and its sheets as SVG, the same bytes twice, and none for a tube the truss has not', async () => {
    const job = madeJob();
    const options = { paper: 'a4', units: 'inFraction' } as const;
    const files = await templateFiles(job, 'L2R-U3R', options);
    expect(files[0]!.name).toBe('templates-L2R-U3R.pdf');
    expect(files.slice(1).every((f) => f.name.endsWith('.svg'))).toBe(true);
    const pages = await readPaths(files[0]!.bytes);
    expect(pages).toHaveLength(files.length - 1);
    expect(says(pages[1]!)).toContain('coped to');
    expect(says(pages[0]!)).toContain("Pilot's right");
    const again = await templateFiles(job, 'L2R-U3R', options);
    expect(again).toEqual(files);
    expect(await templateFiles(job, 'nowhere', options)).toEqual([]);
    const svg = new TextDecoder().decode(files[1]!.bytes);
    expect(svg).toContain('width="210mm" height="297mm"');
  });
});

describe('the drawing of a splice', () => {
  it('shows every part with true lengths, and is not there when the method does not fit', () => {
    const piece = bench({ clock: 4 });
    for (const design of designsOf(piece)) {
      const drawing = spliceDrawing(piece, design, 'inFraction', 180);
      expect(drawing === null).toBe(design.plan === null);
      if (!drawing) continue;
      const words = svgText(drawing, design.method);
      for (const part of design.plan!.parts) expect(words).toContain(part.id);
      for (const op of drawing.ops)
        if (op.kind === 'path')
          for (const step of op.steps)
            for (const v of step.slice(1) as number[]) expect(Number.isFinite(v)).toBe(true);
    }
  });

  it('lets no hair run through or touch the words of a dimension, and keeps them on the sheet', () => {
    const WIDTH_MM = 180;
    const CLEAR_MM = 0.5;
    let seen = 0;
    for (const design of designsOf(bench())) {
      const drawing = spliceDrawing(bench(), design, 'inFraction', WIDTH_MM);
      if (!drawing) continue;
      const corners = (op: (typeof drawing.ops)[number]): readonly (readonly [number, number])[] =>
        op.kind === 'path' ? op.steps.flatMap((step) => (step.length === 3 ? [[step[1], step[2]]] : [])) : [];
      const hairs = drawing.ops.flatMap((op, k) => {
        const [a, b] = corners(op);
        return a && b && corners(op).length === 2 && Math.abs(a[0] - b[0]) < 1e-9 ? [{ k, a, b }] : [];
      });
      drawing.ops.forEach((op, k) => {
        if (op.kind !== 'text' || !/ in · /.test(op.text)) return;
        seen++;
        const half = textWidth(op.text, op.sizeMm) / 2 + CLEAR_MM;
        expect(op.x - half, op.text).toBeGreaterThan(0);
        expect(op.x + half, op.text).toBeLessThan(WIDTH_MM);
        const top = op.y - 0.72 * op.sizeMm - CLEAR_MM;
        const paper = corners(drawing.ops[k - 1]!);
        expect(Math.min(...paper.map(([x]) => x)), op.text).toBeLessThanOrEqual(op.x - half);
        expect(Math.max(...paper.map(([x]) => x)), op.text).toBeGreaterThanOrEqual(op.x + half);
        expect(Math.min(...paper.map(([, y]) => y)), op.text).toBeLessThanOrEqual(top);
        const through = hairs.filter(
          (hair) =>
            hair.k > k &&
            Math.abs(hair.a[0] - op.x) < half &&
            Math.min(hair.a[1], hair.b[1]) < op.y &&
            Math.max(hair.a[1], hair.b[1]) > top,
        );
        expect(through, op.text).toEqual([]);
      });
    }
    expect(seen).toBeGreaterThan(10);
  });
});
