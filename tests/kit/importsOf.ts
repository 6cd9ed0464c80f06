import { parseSync } from 'oxc-parser';

/** One import of a source file: static, type-only, re-exported or dynamic. `null` is a dynamic one that cannot be read. */
export interface Import {
  readonly from: string | null;
  readonly start: number;
}

/** Every import of a TypeScript source, found by a parser, not by a pattern. */
export const importsOf = (file: string, source: string): readonly Import[] => {
  const { module, errors } = parseSync(file, source);
  if (errors.length > 0) throw new Error(`${file} does not parse: ${errors[0]?.message}`);
  const text = (start: number, end: number): string | null => {
    const literal = source.slice(start, end).trim();
    return /^(['"`])[^$]*\1$/.test(literal) ? literal.slice(1, -1) : null;
  };
  return [
    ...module.staticImports.map((i) => ({ from: i.moduleRequest.value, start: i.start })),
    ...module.staticExports.flatMap((e) =>
      e.entries.flatMap((entry) =>
        entry.moduleRequest ? [{ from: entry.moduleRequest.value, start: e.start }] : [],
      ),
    ),
    ...module.dynamicImports.map((i) => ({
      from: text(i.moduleRequest.start, i.moduleRequest.end),
      start: i.start,
    })),
  ];
};
