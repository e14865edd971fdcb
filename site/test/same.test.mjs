// A picture is traced to the same bytes by the core of the page as by Go on
// amd64: the sums in core/plan/testdata/traces.txt were written there, from the
// pictures that are painted here a second time (core/plan/trace_same_test.go).
import assert from "node:assert/strict";
import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { test } from "node:test";
import { startCore } from "../tools/core.mjs";

const core = await startCore();

function drawnPot(w, h, sketch) {
  const out = new Uint8Array(4 * w * h);
  let seed = 7;
  for (let y = 0; y < h; y++) {
    const z = (0.9 * h - y - 0.5) / (0.8 * h), r = 0.16 + z * (1 - z) * (0.9 - 0.8 * z) * 0.4, lean = w * 0.5 + z * 0.01 * h;
    for (let x = 0; x < w; x++) {
      const d = z < 0 || z > 1 ? -9 : r * h - Math.abs(x + 0.5 - lean);
      const inside = sketch ? Math.max(0, 1 - Math.abs(d) / 3) : Math.max(0, Math.min(1, d + 0.5));
      seed = (Math.imul(seed, 1664525) + 1013904223) >>> 0;
      const v = (200 + (30 * x) / w) * (1 - inside) + 60 * inside + (seed >>> 29) - 3.5;
      out.set([v, v * 0.95, v * 0.9, 255], 4 * (y * w + x)); // whole parts, as in Go
    }
  }
  return out;
}

const sums = readFileSync(new URL("../../core/plan/testdata/traces.txt", import.meta.url), "utf8").trim().split("\n").map((l) => l.split(" ")[1]);
const requests = [...readFileSync(new URL("../../core/plan/trace_same_test.go", import.meta.url), "utf8").matchAll(/^\t\t`(\{"width".*\})`,$/gm)].map((m) => m[1]);

test("every request has its sum", () => assert.equal(requests.length, sums.length));

requests.forEach((request, i) => test(`amd64 and wasm trace to the same bytes: ${request}`, () => {
  const { width, height, mode } = JSON.parse(request), pixels = drawnPot(width, height, mode === "sketch");
  const sum = (a) => createHash("sha256").update(a.reply).digest("hex");
  assert.equal(sum(core.call("trace", request, pixels)), sums[i]);
  // handed over in strips, and looked at twice
  for (let y = 0; y < height; y += 100) {
    core.hold(pixels.length, 4 * width * y, pixels.subarray(4 * width * y, 4 * width * Math.min(height, y + 100)));
  }
  for (let k = 0; k < 2; k++) assert.equal(sum(core.call("trace", request, true)), sums[i]);
  core.hold(0);
  assert.match(core.call("trace", request, true).reply, /emptyPicture/);
}));

test("what is no room, no place and no bytes is left out, and the core goes on", () => {
  for (const args of [[], ["x"], [-5], [1e12], [NaN], [64, -1, new Uint8Array(8)], [64, 99, new Uint8Array(8)], [64, 60, new Uint8Array(8)], [64, 0, "bytes"]]) core.hold(...args);
  assert.match(core.call("trace", '{"width":9,"height":9}', true).reply, /wrongPixels/);
  core.hold(0);
});
