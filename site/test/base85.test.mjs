// Bytes as text, and back: every length, and the digits of a group that the
// encyclopedic example of Ascii85 gives, "Man " as 24 73 80 78 61 (from memory).
import assert from "node:assert/strict";
import { randomBytes } from "node:crypto";
import { readFileSync } from "node:fs";
import { test } from "node:test";
import { transform } from "esbuild";

const { code } = await transform(readFileSync(new URL("../src/base85.ts", import.meta.url), "utf8"), { loader: "ts" });
const { encode, decode } = await import(`data:text/javascript,${encodeURIComponent(code)}`);

test("bytes of every length come back from five signs for four", () => {
  for (let n = 0; n < 100; n++) {
    const bytes = randomBytes(n), text = encode(bytes);
    assert.deepEqual(Buffer.from(decode(text)), bytes);
    assert.equal(text.length, Math.floor(n / 4) * 5 + (n % 4 ? (n % 4) + 1 : 0));
    assert.doesNotMatch(text, /[&<\\\s]/);
  }
  for (const end of [0, 255]) assert.deepEqual(Buffer.from(decode(encode(Buffer.alloc(9, end)))), Buffer.alloc(9, end));
});

test("a group's signs are its digits in base 85", () => {
  const signs = [...Array(88).keys()].map((i) => String.fromCharCode(33 + i)).filter((c) => !"&<\\".includes(c));
  assert.equal(encode(Buffer.from("Man ")), [24, 73, 80, 78, 61].map((d) => signs[d]).join(""));
});
