/** Width and height of a JPEG in pixels, read from its frame header (ITU-T T.81, B.2.2); none when it is no JPEG. */
export const jpegSize = (
  bytes: Uint8Array,
): { readonly width: number; readonly height: number } | undefined => {
  if (bytes[0] !== 0xff || bytes[1] !== 0xd8) return undefined;
  let at = 2;
  while (at + 9 < bytes.length && bytes[at] === 0xff) {
    const marker = bytes[at + 1]!;
    const isFrame = marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker);
    const [height, width] = [bytes[at + 5]! * 256 + bytes[at + 6]!, bytes[at + 7]! * 256 + bytes[at + 8]!];
    if (isFrame) return width > 0 && height > 0 ? { width, height } : undefined;
    at += 2 + bytes[at + 2]! * 256 + bytes[at + 3]!;
  }
  return undefined;
};
