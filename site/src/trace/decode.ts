// Runs in the worker: a picture file, decoded by the browser, as the rows of
// pixels that the core holds, and as a small copy to show. Rows are read in
// strips and handed over one by one: they stand in memory once, and the page
// never waits for them. Transparent pixels are laid on white paper. A small copy of the
// rows is made for the first outline and the snapping path, which look at no
// more than that, so that they come at once.
import { HEAD, header } from "./header";

/** More than this is not opened at all, and more than WORK is scaled down. */
export const MOST = 100e6;
const WORK = 12.5e6, SHOWN = 1800, SKETCHED = 1000, STRIP = 128;

/** The picture as opened: its size as worked on, and as the file has it. */
export interface Opened { width: number; height: number; smallWidth: number; smallHeight: number; fileWidth: number; fileHeight: number; focalPixels: number | null }

export interface Decoded { opened: Opened; small: Uint8Array; shown: Uint8Array<ArrayBuffer> }

export class PictureFault extends Error {
  constructor(readonly code: "unreadable" | "tooLarge", readonly megapixels = 0) { super(code); }
}

/** Takes some of a picture's size bytes, which lie at a place among them. */
export type Lay = (size: number, at: number, bytes: Uint8Array) => void;

export async function decode(file: Blob, lay: Lay): Promise<Decoded> {
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
    free(picture);
    const sketch = scaled(bitmap, SKETCHED);
    rows(bitmap, lay);
    // 35 mm equivalents are taken over the diagonal of that film, 43.27 mm.
    const focalPixels = head?.focal35 ? head.focal35 / Math.hypot(36, 24) * Math.hypot(width, height) : null;
    const { width: smallWidth, height: smallHeight } = sketch.canvas;
    const small = new Uint8Array(sketch.getImageData(0, 0, smallWidth, smallHeight).data.buffer);
    free(sketch);
    return { opened: { width, height, smallWidth, smallHeight, fileWidth, fileHeight, focalPixels }, small, shown };
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

function rows(bitmap: ImageBitmap, lay: Lay): void {
  const { width, height } = bitmap, c = paper(width, Math.min(STRIP, height));
  for (let y = 0; y < height; y += STRIP) {
    const n = Math.min(STRIP, height - y);
    c.fillRect(0, 0, width, n);
    c.drawImage(bitmap, 0, y, width, n, 0, 0, width, n);
    const { buffer } = c.getImageData(0, 0, width, n).data;
    lay(4 * width * height, 4 * width * y, new Uint8Array(buffer));
  }
  free(c);
}

/** Gives a canvas's pixels back at once, not when the browser next tidies up. */
function free(c: OffscreenCanvasRenderingContext2D): void {
  c.canvas.width = c.canvas.height = 0;
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
