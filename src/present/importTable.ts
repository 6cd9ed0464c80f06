import Papa from 'papaparse';
import { inToMm } from '../core/base/units.ts';
import type { Model } from '../core/job/modelSchema.ts';
import { type ImportKind, importColumns } from '../core/truss/importColumns.ts';
import type { Truss } from '../core/truss/result.ts';
import { formulaBegins } from './csv.ts';

/** The cells of a CSV file or of what a spreadsheet puts on the clipboard (tab separated); the separator is found out. */
export const tableCells = (text: string): readonly (readonly string[])[] => {
  const delimiter = text.includes('\t') ? '\t' : '';
  const { data } = Papa.parse<string[]>(text.replace(/^\uFEFF/, ''), { delimiter, skipEmptyLines: false });
  return data.map((row) => row.map((cell) => cell ?? ''));
};

/** Six decimals: an import takes what comes back within 1e-5 in as unchanged. */
const tidy = (value: number): number => Math.round(value * 1e6) / 1e6 + 0;

/** Columns that hold no length. */
const texts: ReadonlySet<string> = new Set(['Label', 'Cluster', 'Fitting', 'From', 'To', 'Role', 'Member']);

/**
 * Stations, clusters or members of a model as CSV in its drawing unit, titles with units first. Reading it back changes
 * nothing. Clusters and members are all of the truss, not only those the model lists by themselves.
 */
export const modelCsv = (kind: ImportKind, model: Model, truss: Truss): string => {
  const size = (inches: number): number => tidy(model.drawnIn === 'mm' ? inToMm(inches) : inches);
  const titles = importColumns[kind].map((title) =>
    texts.has(title) ? title : `${title}, ${model.drawnIn}`,
  );
  const made: { readonly [K in ImportKind]: () => readonly (readonly (string | number)[])[] } = {
    stations: () =>
      model.stations.map((s): (string | number)[] => [
        s.label,
        size(s.stationIn),
        ...[s.upper, s.lower].flatMap((p): (string | number)[] =>
          p ? [size(p.waterLineIn), size(p.halfWidthIn)] : ['', ''],
        ),
      ]),
    clusters: () =>
      truss.clusters.map((c): (string | number)[] => [c.id, ...c.at.map(size), c.fitting ?? '']),
    members: () =>
      truss.members.map((m): (string | number)[] => [
        m.from,
        m.to,
        ...(m.tube ? [size(m.tube.odIn), size(m.tube.wallIn)] : ['', '']),
        m.role,
        m.id,
      ]),
  };
  const lines = [titles, ...made[kind]()];
  return `\uFEFF${Papa.unparse(lines, { newline: '\r\n', escapeFormulae: formulaBegins })}\r\n`;
};
