// What a file or a paste is, before anything tries to read it: its text, whatever
// of the usual encodings it is in, or in one word why it has none.

export type Strange = "empty" | "page" | "zip" | "pdf" | "mesh" | "binary";

const starts = (b: Uint8Array, ...magic: number[]): boolean => magic.every((m, i) => b[i] === m);

/** PNG, JPEG, GIF, or a RIFF or ISO container such as WebP and HEIC hold. */
export const looksLikePicture = (b: Uint8Array): boolean =>
  starts(b, 0x89, 0x50, 0x4e, 0x47) || starts(b, 0xff, 0xd8, 0xff) || starts(b, 0x47, 0x49, 0x46, 0x38) || starts(b, 0x52, 0x49, 0x46, 0x46) || starts(b.subarray(4), 0x66, 0x74, 0x79, 0x70);

/** The text of a file, its byte order mark gone. Text of two bytes a letter is
 *  known by the mark, or by the noughts that plain letters have in it. */
export function decode(b: Uint8Array): string {
  const head = b.subarray(0, 400);
  const noughts = (odd: number) => head.filter((x, i) => x === 0 && i % 2 === odd).length / Math.max(1, head.length / 2);
  const kind = starts(b, 0xff, 0xfe) || (noughts(1) > 0.6 && noughts(0) < 0.1) ? "utf-16le"
    : starts(b, 0xfe, 0xff) || (noughts(0) > 0.6 && noughts(1) < 0.1) ? "utf-16be" : "utf-8";
  return new TextDecoder(kind).decode(b);
}

/** Why a text is none that can be read; null where it may be. */
export function strange(text: string): Strange | null {
  const start = text.slice(0, 2000).trimStart();
  if (start === "") return text.trim() === "" ? "empty" : null;
  if (/^<(!doctype html|html|head|body)\b/i.test(start)) return "page";
  if (start.startsWith("PK\u0003\u0004")) return "zip";
  if (start.startsWith("%PDF")) return "pdf";
  if (/^solid\b[\s\S]*\bfacet\b/.test(start)) return "mesh";
  const odd = start.match(/[\u0000-\u0008\u000e-\u001f\ufffd]/g)?.length ?? 0;
  return odd > start.length / 50 + 1 ? "binary" : null;
}

/** Whether a text is, or was, a saved job: one that lost its beginning still has its keys. */
export const likeJob = (text: string): boolean => text.trimStart().startsWith("{") || /"outer"\s*:|"moldwright-job"/.test(text);
