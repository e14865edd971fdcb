// Letters in space stand on their bodies: reckoned on a ring, cut in half, whose
// measures are known.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";
import { transform } from "esbuild";

const { code } = await transform(readFileSync(new URL("../src/space/spots.ts", import.meta.url), "utf8"), { loader: "ts" });
const { crossings, onCut, onEnd, onSkin, onTop, reaches, spread, widest } = await import(`data:text/javascript,${encodeURIComponent(code)}`);

/** A prism between two arcs about the axis, radii 20 and 40 mm, from 0 to 50 mm high, over azimuths in degrees. */
function sector(from, to, [low, high] = [0, 50]) {
  const out = [], n = Math.round((to - from) / 5);
  const at = (r, k, z) => { const a = ((from + ((to - from) * k) / n) * Math.PI) / 180; return [r * Math.cos(a), r * Math.sin(a), z]; };
  const quad = (p, q, r, s) => out.push(...p, ...q, ...r, ...p, ...r, ...s);
  for (let k = 0; k < n; k++) {
    for (const r of [20, 40]) quad(at(r, k, low), at(r, k + 1, low), at(r, k + 1, high), at(r, k, high));
    for (const z of [low, high]) quad(at(20, k, z), at(40, k, z), at(40, k + 1, z), at(20, k + 1, z));
  }
  for (const k of [0, n]) quad(at(20, k, low), at(40, k, low), at(40, k, high), at(20, k, high));
  return new Float32Array(out);
}
const about = (got, want, within, what) => assert.ok(got && got.every((x, i) => Math.abs(x - want[i]) <= within), `${what}: ${got}, want ${want}`);
const half = sector(0, 180);

test("a line is in matter between its crossings", () => {
  about(crossings(half, [0.01, 0.01, 25], Math.PI / 2), [20, 40], 0.2, "through the wall");
  about(crossings(half, [0.01, 10, 25], 0), [-38.7, -17.3, 17.3, 38.7], 0.3, "through both arms");
  assert.deepEqual(crossings(half, [0.01, 0.01, 60], 1), [], "above it");
});

test("a letter on a cut stands in the middle of matter, and nowhere where the cut misses", () => {
  about(onCut(half, 0, 50, 0), [0, 30, 25], 0.3, "through the axis");
  assert.equal(onCut(half, 0, 50, 41), null);
});

test("a letter on the outside stands on the skin, on an end between inside and outside", () => {
  about(onSkin(half, 25, Math.PI / 2), [0, 40, 25], 0.2, "outside");
  assert.equal(onSkin(half, 25, -Math.PI / 2), null, "where there is none");
  about(onEnd(half, 0, 50, 1, true), [30 * Math.cos(1), 30 * Math.sin(1), 50], 0.2, "top");
  about(onEnd(half, 0, 50, 1, false), [30 * Math.cos(1), 30 * Math.sin(1), 0], 0.2, "bottom");
  const domed = new Float32Array([...half, ...sector(100, 110, [50, 54])]);
  about(onEnd(domed, 0, 54, 1, true), [30 * Math.cos(1), 30 * Math.sin(1), 48], 0.2, "top, beside a dome");
});

test("a letter laid out stands on the top of its piece", () => {
  const [x, y, z] = onTop(sector(0, 360), 50, [0, 0]);
  assert.ok(z === 50 && Math.abs(Math.hypot(x, y) - 20) < 0.1, `${x}, ${y}, ${z}`);
});

test("the widest height and the reach round are the body's", () => {
  const lid = new Float32Array([...sector(0, 360, [0, 40]), ...sector(0, 360, [40, 50]).map((v, i) => (i % 3 < 2 ? 2 * v : v))]);
  assert.ok(widest(lid, 0, 50) > 40);
  assert.ok(Math.abs(widest(half, 0, 50) - 25) < 1);
  about(reaches(half, 4), [40, 40, 40, 0], 0.01, "reach");
});

test("no letter covers another, and the nearer one keeps its place", () => {
  const at = (words, x, y, far) => ({ words, x, y, far });
  assert.deepEqual(spread([at("L", 0, 0, 0.9), at("U", 40, 0, 0.5)]), [[0, 0], [40, 0]], "apart already");
  assert.deepEqual(spread([at("U", 3, 2, 0.9), at("U", 0, 0, 0.5)]), [null, [0, 0]], "one of the same part behind");
  assert.deepEqual(spread([at("L", 3, 2, 0.9), at("U", 0, 0, 0.5)]), [[31, 2], [0, 0]], "one of another part behind");
  assert.deepEqual(spread([at("L", 3, 2, 0.9), at("U", 0, 0, 0.5), at("L", 50, 0, 0.7)]), [null, [0, 0], [50, 0]], "one of a part that is named elsewhere");
  const crowd = Array.from({ length: 60 }, (_, i) => at("LUAB"[i % 4] + (i >> 2), (i * 37) % 101, (i * 53) % 83, i)), stood = spread(crowd).filter(Boolean);
  assert.ok(stood.length > 8);
  for (const [i, a] of stood.entries()) for (const b of stood.slice(i + 1)) assert.ok(Math.abs(a[0] - b[0]) >= 28 || Math.abs(a[1] - b[1]) >= 28, `${a} and ${b}`);
});
