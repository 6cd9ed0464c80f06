import { readFileSync } from 'node:fs';
import { parseSync } from 'oxc-parser';

/** Attributes whose text nobody reads. */
const unread = new Set([
  'className',
  'd',
  'viewBox',
  'style',
  'accept',
  'transform',
  'rel',
  'htmlFor',
  'id',
  'key',
  'aria-keyshortcuts',
]);

const isWords = (text: string): boolean =>
  /\s/.test(text.trim()) && (text.match(/\p{L}+/gu)?.length ?? 0) > 1;

interface Node {
  readonly type: string;
  readonly [field: string]: unknown;
}
const isNode = (value: unknown): value is Node =>
  typeof value === 'object' && value !== null && typeof (value as Node).type === 'string';

const textOf = (node: Node): string | null => {
  if (node.type === 'JSXText') return String(node.value);
  if (node.type === 'Literal' && typeof node.value === 'string') return node.value;
  if (node.type === 'TemplateLiteral')
    return (node.quasis as readonly { value: { cooked: string } }[])
      .map(({ value }) => value.cooked)
      .join('0 ');
  return null;
};

/**
 * Every text of two words or more that stands inside an element of a source, one a row; in a plain `.ts` source,
 * which has no elements, every one that stands anywhere.
 */
export const literalsOf = (file: string): readonly string[] => {
  const found: string[] = [];
  const walk = (node: Node, inside: boolean): void => {
    if (node.type === 'JSXAttribute' && unread.has(String((node.name as Node).name))) return;
    const within = inside || node.type === 'JSXElement' || node.type === 'JSXFragment';
    const text = within ? textOf(node) : null;
    if (text !== null && isWords(text)) found.push(text.replace(/\s+/g, ' ').trim());
    for (const value of Object.values(node))
      for (const child of Array.isArray(value) ? value : [value]) if (isNode(child)) walk(child, within);
  };
  walk(parseSync(file, readFileSync(file, 'utf8')).program as unknown as Node, file.endsWith('.ts'));
  return found;
};
