const hexOf = (words: string): string => Buffer.from(words, 'latin1').toString('hex');
const comment = (words: string): string =>
  `fffe${(words.length + 2).toString(16).padStart(4, '0')}${hexOf(words)}`;
/** A Huffman table of one code (T.81, B.2.4.2): the bit 0 stands for the value 0. */
const oneCode = (table: '00' | '10'): string => `ffc40014${table}01${'00'.repeat(15)}00`;

/** The least baseline JPEG, 8 × 8 grey, written by hand from ITU-T T.81; a comment makes others with other hashes. */
export const tinyJpeg = (more = ''): Uint8Array => {
  const segments = [
    'ffd8',
    `ffe00010${hexOf('JFIF\0')}010100000100010000`,
    more === '' ? '' : comment(more),
    `ffdb004300${'01'.repeat(64)}`,
    'ffc0000b080008000801011100',
    oneCode('00'),
    oneCode('10'),
    'ffda0008010100003f00',
    '3f',
    'ffd9',
  ];
  return new Uint8Array(Buffer.from(segments.join(''), 'hex'));
};
