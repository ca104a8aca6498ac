// A drawing as a picture of points.

/** Longest side that every browser can still paint. */
const longest = 8192;

/** A PNG in base64; undefined where it could not be made. */
export async function rasterise(svg: string, width: number, height: number, scale: number): Promise<string | undefined> {
  const fitting = Math.min(scale, longest / Math.max(width, height));
  if (!(width > 0 && height > 0 && fitting > 0)) return undefined;
  const address = URL.createObjectURL(new Blob([svg], { type: 'image/svg+xml' }));
  try {
    const picture = new Image();
    picture.src = address;
    await picture.decode();
    const canvas = document.createElement('canvas');
    canvas.width = Math.round(width * fitting);
    canvas.height = Math.round(height * fitting);
    const pen = canvas.getContext('2d');
    if (pen === null) return undefined;
    pen.drawImage(picture, 0, 0, canvas.width, canvas.height);
    const [kind, png] = canvas.toDataURL('image/png').split(',');
    return kind === 'data:image/png;base64' && png !== '' ? png : undefined;
  } catch {
    return undefined;
  } finally {
    URL.revokeObjectURL(address);
  }
}
