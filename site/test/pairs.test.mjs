// Bytes as text, and back: every length, a group worked out by another way of
// counting, and text that is damaged.
import assert from "node:assert/strict";
import { randomBytes } from "node:crypto";
import { readFileSync } from "node:fs";
import { test } from "node:test";
import { transform } from "esbuild";

const { code } = await transform(readFileSync(new URL("../src/pairs.ts", import.meta.url), "utf8"), { loader: "ts" });
const { encode, decode, WHOLE } = await import(`data:text/javascript,${encodeURIComponent(code)}`);
const signs = [...Array(94).keys()].map((i) => String.fromCharCode(33 + i)).filter((c) => !"&<\\".includes(c));

test("bytes of every length come back, from 13 bits in two signs", () => {
  for (let n = 0; n < 300; n++) {
    for (const bytes of [randomBytes(n), Buffer.alloc(n), Buffer.alloc(n, 255)]) {
      const text = encode(bytes), left = (8 * n) % 13;
      assert.deepEqual(Buffer.from(decode(text)), bytes);
      assert.equal(text.length, 2 * Math.floor((8 * n) / 13) + (left > 6 ? 2 : left ? 1 : 0));
      assert.match(text, /^[!-~]*$/);
      assert.doesNotMatch(text, /[&<\\]/);
    }
  }
});

test("a text that is cut after whole groups is decoded in pieces", () => {
  const bytes = randomBytes(10_007), text = encode(bytes);
  for (const groups of [1, 3, 100]) {
    const pieces = text.match(new RegExp(`.{1,${groups * WHOLE}}`, "g"));
    assert.deepEqual(Buffer.concat(pieces.map((p) => decode(p))), bytes);
  }
});

test("signs are the digits in base 91 of the bits taken as one large number", () => {
  for (let i = 0; i < 50; i++) {
    const bytes = randomBytes(13);
    let number = BigInt(`0x${bytes.toString("hex")}`), want = "";
    for (let k = 0; k < 8; k++, number /= 8192n) {
      const v = Number(number % 8192n);
      want = signs[(v - (v % 91)) / 91] + signs[v % 91] + want;
    }
    assert.equal(encode(bytes), want);
  }
});

test("damaged text is refused, wherever the damage stands", () => {
  const damaged = { name: "RangeError", message: "packed text is damaged" };
  for (const n of [13, 26, 27, 40]) {
    const text = encode(randomBytes(n));
    for (let at = 0; at < text.length; at++) {
      for (const sign of ["&", "<", "\\", " ", "\n", "\u007f", "\u0000", "é", "€", "😀"]) {
        assert.throws(() => decode(text.slice(0, at) + sign + text.slice(at + 1)), damaged, JSON.stringify([n, at, sign]));
      }
    }
  }
  // pairs past the 8192 values that 13 bits have
  for (const v of [8192, 8280]) {
    const pair = signs[(v - (v % 91)) / 91] + signs[v % 91];
    for (const text of [pair, `!!${pair}`, `${"!".repeat(WHOLE)}${pair}!`]) assert.throws(() => decode(text), damaged, text);
  }
});
