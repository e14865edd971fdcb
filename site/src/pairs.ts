// Bytes as text that may stand in a page, 13 bits in a pair of signs: a pair out
// of 91 has 8281 values and 13 bits have 8192, so 16 signs carry 13 bytes, where
// base64 takes 17 and a third. It counts where most of the file is one packed
// core. The signs are those of ASCII from "!" to "~" without the three that mean
// something to HTML or to a string. Bits are taken from the highest on; the last
// are filled up with zeros, and of a pair that holds 6 bits or less the first
// sign is enough, as in Ascii85 (PostScript Language Reference, 3rd ed., 3.13.3).
// Signs that no bytes give are refused; that the bytes are the right ones is left
// to the sum that gzip carries.

const signs = Array.from({ length: 94 }, (_, i) => String.fromCharCode(33 + i)).filter((c) => !"&<\\".includes(c)).join("");

/** Signs of the shortest text of whole bytes without a rest: a text may be cut
 *  after any multiple of them into texts that are decoded by themselves. */
export const WHOLE = 16;

export function encode(bytes: Uint8Array): string {
  const out: string[] = [];
  const pair = (v: number) => out.push(signs[Math.floor(v / 91)]!, signs[v % 91]!);
  let word = 0, bits = 0;
  for (const b of bytes) {
    word = (word << 8) | b;
    bits += 8;
    if (bits < 13) continue;
    bits -= 13;
    pair(word >>> bits);
    word &= (1 << bits) - 1;
  }
  if (bits) pair(word << (13 - bits));
  if (bits && bits <= 6) out.pop();
  return out.join("");
}

const BAD = 1 << 13;
let values: Uint16Array | undefined;

/** A pair's 13 bits by both its signs at once. */
function table(): Uint16Array {
  const t = new Uint16Array(1 << 16).fill(BAD);
  for (let v = 0; v < BAD; v++) t[(signs.charCodeAt(Math.floor(v / 91)) << 8) | signs.charCodeAt(v % 91)] = v;
  return t;
}

/** The bytes of a text; signs that `encode` never writes are a RangeError. */
export function decode(text: string): Uint8Array<ArrayBuffer> {
  const n = text.length, value = (values ??= table());
  const out = new Uint8Array((13 * (n >> 1) + 6 * (n & 1)) >> 3);
  // a last group is filled up; its bytes past the end fall away
  const ascii = new Uint8Array(n + WHOLE).fill(signs.charCodeAt(0));
  const { read } = new TextEncoder().encodeInto(text, ascii.subarray(0, n));
  if (n & 1) ascii[n] = signs.charCodeAt(90);
  let seen = read < n ? BAD : 0;
  /** 26 bits of two pairs. */
  const two = (i: number): number => {
    const a = value[(ascii[i]! << 8) | ascii[i + 1]!]!, b = value[(ascii[i + 2]! << 8) | ascii[i + 3]!]!;
    seen |= a | b;
    return (a << 13) | b;
  };
  for (let to = 0, i = 0; i < n; to += 13, i += WHOLE) {
    const a = two(i), b = two(i + 4), c = two(i + 8), d = two(i + 12);
    out[to] = a >>> 18;
    out[to + 1] = a >>> 10;
    out[to + 2] = a >>> 2;
    out[to + 3] = (a << 6) | (b >>> 20);
    out[to + 4] = b >>> 12;
    out[to + 5] = b >>> 4;
    out[to + 6] = (b << 4) | (c >>> 22);
    out[to + 7] = c >>> 14;
    out[to + 8] = c >>> 6;
    out[to + 9] = (c << 2) | (d >>> 24);
    out[to + 10] = d >>> 16;
    out[to + 11] = d >>> 8;
    out[to + 12] = d;
  }
  if (seen & BAD) throw new RangeError("packed text is damaged");
  return out;
}
