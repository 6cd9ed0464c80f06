const letters = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/';

/** Text of ASCII letters as base64. Source: RFC 4648, section 4. */
export const toBase64 = (text: string): string => {
  let out = '';
  for (let at = 0; at < text.length; at += 3) {
    const bytes = [0, 1, 2].map((k) => text.charCodeAt(at + k) || 0);
    const word = (bytes[0]! << 16) | (bytes[1]! << 8) | bytes[2]!;
    const given = Math.min(3, text.length - at);
    for (let k = 0; k < 4; k++) out += k > given ? '=' : letters[(word >> (18 - 6 * k)) & 63]!;
  }
  return out;
};

/** The text behind base64; null when it is none. */
export const fromBase64 = (code: string): string | null => {
  if (code.length % 4 !== 0 || !/^[A-Za-z0-9+/]*={0,2}$/.test(code)) return null;
  let out = '';
  for (let at = 0; at < code.length; at += 4) {
    const four = [0, 1, 2, 3].map((k) => Math.max(0, letters.indexOf(code[at + k]!)));
    const word = (four[0]! << 18) | (four[1]! << 12) | (four[2]! << 6) | four[3]!;
    const given = 3 - (code.slice(at, at + 4).match(/=/g)?.length ?? 0);
    for (let k = 0; k < given; k++) out += String.fromCharCode((word >> (16 - 8 * k)) & 255);
  }
  return out;
};
