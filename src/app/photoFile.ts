/** About two megapixels: enough for a crack beside a thumb, small enough for hundreds in a job. */
export const MOST_PIXELS = 2_000_000;

/**
 * A picture from a camera or a file as a JPEG of at most two megapixels, turned upright. It is drawn anew, so that
 * nothing else the file carried (place, time, camera) comes along. None when the browser cannot read the picture.
 */
export const asJpeg = async (file: Blob): Promise<Uint8Array | undefined> => {
  try {
    const picture = await createImageBitmap(file, { imageOrientation: 'from-image' });
    const scale = Math.min(1, Math.sqrt(MOST_PIXELS / (picture.width * picture.height)));
    const canvas = document.createElement('canvas');
    canvas.width = Math.max(1, Math.floor(picture.width * scale));
    canvas.height = Math.max(1, Math.floor(picture.height * scale));
    const pen = canvas.getContext('2d');
    if (!pen) return undefined;
    pen.fillStyle = '#fff';
    pen.fillRect(0, 0, canvas.width, canvas.height);
    pen.drawImage(picture, 0, 0, canvas.width, canvas.height);
    picture.close();
    const blob = await new Promise<Blob | null>((give) => canvas.toBlob(give, 'image/jpeg', 0.86));
    return blob ? new Uint8Array(await blob.arrayBuffer()) : undefined;
  } catch {
    return undefined;
  }
};
