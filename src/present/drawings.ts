import { svgText } from './draw/svg.ts';
import type { Report } from './record/sections.ts';
import type { ReportFile } from './report.ts';
import { sheets } from './sheet/layout.ts';

const slug = (words: string): string =>
  words
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '')
    .slice(0, 60);

/** Every drawing of these reports as SVG: maps as framed sheets, others by themselves. Same reports, same bytes. */
export const drawingFiles = (...reports: readonly Report[]): readonly ReportFile[] => {
  const encoder = new TextEncoder();
  const maps = reports.flatMap((report) =>
    report.parts
      .filter(({ sections }) =>
        sections.some(({ kind }) => kind === 'map' || kind === 'closeUps' || kind === 'stations'),
      )
      .flatMap((part) =>
        sheets({ ...report, parts: [part] }).map((sheet) => ({ title: part.side, drawing: sheet })),
      ),
  );
  const others = reports.flatMap((report) =>
    report.parts.flatMap(({ sections }) =>
      sections.flatMap((section) =>
        section.kind === 'drawing' ? [{ title: section.title, drawing: section.drawing }] : [],
      ),
    ),
  );
  return [...maps, ...others].map(({ title, drawing }, k) => ({
    name: `drawing-${String(k + 1).padStart(2, '0')}-${slug(title)}.svg`,
    bytes: encoder.encode(svgText(drawing, title)),
  }));
};
