/** A key of the keypad: a digit, a mark, a fraction's lower half, or one of the deeds. */
export type Key = string;

/** Lower halves of fractions, as a tape is divided. */
export const underKeys = ['/2', '/4', '/8', '/16', '/32', '/64'] as const;

const LONGEST = 24;

/**
 * What stands in the entry after a key. A fraction is its upper half and then `/16`; the space between whole inches and
 * the fraction is a key of its own (`and`), so that `23 5/16` is five presses. A second fraction takes the first's place.
 */
export const pressed = (text: string, key: Key): string => {
  switch (key) {
    case 'back':
      return text.slice(0, -1).trimEnd();
    case 'clear':
      return '';
    case 'and':
      return text === '' || /[ /]$/.test(text) || text.includes('/') ? text : `${text} `;
    case 'sign':
      return text.startsWith('-') ? text.slice(1) : `-${text}`;
    case "'":
      return /['"/.]|^-?$/.test(text) ? text : `${text}' `;
    case '"':
      return text === '' || text.endsWith('"') ? text : `${text.trimEnd()}"`;
    case '.':
      return /[./]\S*$/.test(text) ? text : `${text === '' || text.endsWith(' ') ? `${text}0` : text}.`;
    default:
      break;
  }
  if (key.startsWith('/')) {
    if (/\d\/\d*$/.test(text)) return text.replace(/\/\d*$/, key);
    return /(^|[ '-])\d+$/.test(text) ? `${text}${key}` : /[ ']$|^-?$/.test(text) ? `${text}1${key}` : text;
  }
  if (text.length >= LONGEST || text.endsWith('"') || text.includes('/')) return text;
  return `${text}${key}`;
};
