// What a picture says of itself in its first bytes, read before it is decoded:
// its size, so that a huge one is refused unopened, and the focal length that a
// camera noted. Formats: PNG (ISO/IEC 15948), JPEG (ISO/IEC 10918-1) with Exif
// (CIPA DC-008), WebP (RFC 9649). Anything else is left to the browser to try.

export interface Header { width: number; height: number; focal35: number | null }

/** Bytes that are enough to hold size and Exif of any camera's file. */
export const HEAD = 1 << 18;

export function header(bytes: Uint8Array): Header | null {
  const v = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  try {
    if (v.getUint32(0) === 0x89504e47) return { width: v.getUint32(16), height: v.getUint32(20), focal35: null };
    if (v.getUint16(0) === 0xffd8) return jpeg(v);
    if (v.getUint32(0) === 0x52494646 && v.getUint32(8) === 0x57454250) return webp(v);
  } catch {
    // cut short: a RangeError
  }
  return null;
}

function jpeg(v: DataView): Header | null {
  let at = 2, focal35: number | null = null;
  while (v.getUint8(at) === 0xff) {
    const mark = v.getUint8(at + 1);
    if (mark === 0xff) { at++; continue; }
    const size = v.getUint16(at + 2);
    if (mark === 0xe1 && v.getUint32(at + 4) === 0x45786966) focal35 = exifFocal(v, at + 10);
    // the frame headers: all of C0 to CF but tables (C4), C8 and CC
    if (mark >= 0xc0 && mark <= 0xcf && mark !== 0xc4 && mark !== 0xc8 && mark !== 0xcc) {
      return { width: v.getUint16(at + 7), height: v.getUint16(at + 5), focal35 };
    }
    at += 2 + size;
  }
  return null;
}

/** FocalLengthIn35mmFilm (tag A405) of a TIFF block at an offset. */
function exifFocal(v: DataView, at: number): number | null {
  try {
    const little = v.getUint16(at) === 0x4949;
    const u16 = (o: number) => v.getUint16(at + o, little), u32 = (o: number) => v.getUint32(at + o, little);
    const find = (dir: number, tag: number): number | null => {
      for (let i = 0, n = u16(dir); i < n; i++) if (u16(dir + 2 + 12 * i) === tag) return dir + 10 + 12 * i;
      return null;
    };
    const sub = find(u32(4), 0x8769);
    const focal = sub === null ? null : find(u32(sub), 0xa405);
    return focal === null || u16(focal) === 0 ? null : u16(focal);
  } catch {
    return null;
  }
}

function webp(v: DataView): Header | null {
  const u24 = (o: number) => v.getUint16(o, true) + (v.getUint8(o + 2) << 16);
  switch (v.getUint32(12)) {
    case 0x56503858: return { width: u24(24) + 1, height: u24(27) + 1, focal35: null }; // VP8X
    case 0x5650384c: { // VP8L: two times 14 bits
      const b = v.getUint32(21, true);
      return { width: (b & 0x3fff) + 1, height: ((b >> 14) & 0x3fff) + 1, focal35: null };
    }
    case 0x56503820: return { width: v.getUint16(26, true) & 0x3fff, height: v.getUint16(28, true) & 0x3fff, focal35: null }; // VP8
  }
  return null;
}
