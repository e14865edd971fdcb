// Bytes as text that may stand in a page, five signs for four bytes: a sixteenth
// less than base64, which counts where most of the file is one packed core. The
// signs are those of ASCII from "!" on without the three that mean something to
// HTML or to a string; a last group of n bytes has n + 1 signs, as in Ascii85
// (PostScript Language Reference, 3rd ed., 3.13.3).

const signs = Array.from({ length: 88 }, (_, i) => String.fromCharCode(33 + i)).filter((c) => !"&<\\".includes(c)).join("");

export function encode(bytes: Uint8Array): string {
  const out: string[] = [];
  for (let at = 0; at < bytes.length; at += 4) {
    const n = Math.min(4, bytes.length - at);
    let word = 0, group = "";
    for (let i = 0; i < 4; i++) word = word * 256 + (i < n ? bytes[at + i]! : 0);
    for (let i = 0; i < 5; i++, word = Math.floor(word / 85)) group = signs[word % 85] + group;
    out.push(group.slice(0, n + 1));
  }
  return out.join("");
}

export function decode(text: string): Uint8Array<ArrayBuffer> {
  const value = new Uint8Array(128);
  for (let i = 0; i < 85; i++) value[signs.charCodeAt(i)] = i;
  const length = Math.floor((text.length * 4) / 5), out = new Uint8Array(length);
  // a last group is filled up; its bytes past the end fall away
  const ascii = new Uint8Array(text.length + 4).fill(signs.charCodeAt(84));
  new TextEncoder().encodeInto(text, ascii);
  const at = (i: number): number => value[ascii[i]!]!;
  for (let to = 0, i = 0; to < length; to += 4, i += 5) {
    const word = ((at(i) * 85 + at(i + 1)) * 85 + at(i + 2)) * 7225 + at(i + 3) * 85 + at(i + 4);
    out[to] = word >>> 24;
    out[to + 1] = word >>> 16;
    out[to + 2] = word >>> 8;
    out[to + 3] = word;
  }
  return out;
}
