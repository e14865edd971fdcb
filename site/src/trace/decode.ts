// Runs in the worker: a picture file, decoded by the browser, as the rows of
// pixels that the core reads, and as a small copy to show. Only the worker
// holds the pixels, so that they stand in memory once and the page never waits
// for them. Rows are read in strips: a canvas of the whole picture would double
// the memory. Transparent pixels are laid on white paper. A small copy of the
// rows is made for the first outline and the snapping path, which look at no
// more than that, so that they come at once.
import { HEAD, header } from "./header";

/** More than this is not opened at all, and more than WORK is scaled down. */
export const MOST = 100e6;
const WORK = 12.5e6, SHOWN = 1800, SKETCHED = 1000, STRIP = 256;

/** The picture as opened: its size as worked on, and as the file has it. */
export interface Opened { width: number; height: number; smallWidth: number; smallHeight: number; fileWidth: number; fileHeight: number; focalPixels: number | null }

export interface Decoded { opened: Opened; pixels: Uint8Array; small: Uint8Array; shown: Uint8Array<ArrayBuffer> }

export class PictureFault extends Error {
  constructor(readonly code: "unreadable" | "tooLarge", readonly megapixels = 0) { super(code); }
}

export async function decode(file: Blob): Promise<Decoded> {
  const head = header(new Uint8Array(await file.slice(0, HEAD).arrayBuffer()));
  if (head && head.width * head.height > MOST) throw new PictureFault("tooLarge", head.width * head.height / 1e6);
  let bitmap: ImageBitmap;
  try {
    bitmap = await createImageBitmap(file, { imageOrientation: "from-image" });
  } catch {
    throw new PictureFault("unreadable");
  }
  const { width: fileWidth, height: fileHeight } = bitmap;
  if (fileWidth * fileHeight > MOST) {
    bitmap.close();
    throw new PictureFault("tooLarge", fileWidth * fileHeight / 1e6);
  }
  const shrink = Math.min(1, Math.sqrt(WORK / (fileWidth * fileHeight)));
  if (shrink < 1) {
    const large = bitmap;
    bitmap = await createImageBitmap(large, {
      resizeWidth: Math.round(fileWidth * shrink), resizeHeight: Math.round(fileHeight * shrink), resizeQuality: "high",
    });
    large.close();
  }
  const { width, height } = bitmap;
  try {
    const picture = scaled(bitmap, SHOWN), shown = await jpeg(picture);
    const sketch = scaled(bitmap, SKETCHED), pixels = rows(bitmap);
    // 35 mm equivalents are taken over the diagonal of that film, 43.27 mm.
    const focalPixels = head?.focal35 ? head.focal35 / Math.hypot(36, 24) * Math.hypot(width, height) : null;
    const { width: smallWidth, height: smallHeight } = sketch.canvas;
    const small = new Uint8Array(sketch.getImageData(0, 0, smallWidth, smallHeight).data.buffer);
    return { opened: { width, height, smallWidth, smallHeight, fileWidth, fileHeight, focalPixels }, pixels, small, shown };
  } finally {
    bitmap.close();
  }
}

function paper(width: number, height: number): OffscreenCanvasRenderingContext2D {
  const c = new OffscreenCanvas(width, height).getContext("2d", { willReadFrequently: true, alpha: false });
  if (!c) throw new PictureFault("unreadable");
  c.fillStyle = "#fff";
  return c;
}

function rows(bitmap: ImageBitmap): Uint8Array<ArrayBuffer> {
  const { width, height } = bitmap, out = new Uint8Array(4 * width * height), c = paper(width, Math.min(STRIP, height));
  for (let y = 0; y < height; y += STRIP) {
    const n = Math.min(STRIP, height - y);
    c.fillRect(0, 0, width, n);
    c.drawImage(bitmap, 0, y, width, n, 0, 0, width, n);
    out.set(c.getImageData(0, 0, width, n).data, 4 * width * y);
  }
  return out;
}

function scaled(bitmap: ImageBitmap, longest: number): OffscreenCanvasRenderingContext2D {
  const k = Math.min(1, longest / Math.max(bitmap.width, bitmap.height));
  const width = Math.max(1, Math.round(bitmap.width * k)), height = Math.max(1, Math.round(bitmap.height * k)), c = paper(width, height);
  c.fillRect(0, 0, width, height);
  c.imageSmoothingQuality = "high";
  c.drawImage(bitmap, 0, 0, width, height);
  return c;
}

async function jpeg(c: OffscreenCanvasRenderingContext2D): Promise<Uint8Array<ArrayBuffer>> {
  const blob = await c.canvas.convertToBlob({ type: "image/jpeg", quality: 0.85 });
  return new Uint8Array(await blob.arrayBuffer());
}
