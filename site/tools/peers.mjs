// What general-purpose libraries need for the like of our work, in the same Node,
// both warm, medians: mesh booleans (manifold-3d), an STL writer (three), marching
// squares (d3-contour). They do less or other than the core does, which stands
// beside each; the figures tell the order of size, no more.
import { contours } from "d3-contour";
import Module from "manifold-3d";
import { BufferAttribute, BufferGeometry, Mesh } from "three";
import { STLExporter } from "three/examples/jsm/exporters/STLExporter.js";
import { startCore } from "./core.mjs";

function median(n, work) {
  work();
  const times = Array.from({ length: n }, () => {
    const t = performance.now();
    work();
    return performance.now() - t;
  });
  return times.sort((a, b) => a - b)[n >> 1];
}

/** A dark pot before a light wall, as RGBA rows. */
function picture(width, height) {
  const rgba = new Uint8Array(4 * width * height);
  for (let y = 0, i = 0; y < height; y++) {
    const t = (y / height - 0.15) / 0.7, half = t > 0 && t < 1 ? width * (0.22 + 0.08 * Math.sin(1 + 5 * t)) : -1;
    for (let x = 0; x < width; x++, i += 4) {
      const v = Math.abs(x - width / 2) < half ? 70 + (40 * x) / width : 200 + (30 * y) / height;
      rgba[i] = rgba[i + 1] = rgba[i + 2] = v;
      rgba[i + 3] = 255;
    }
  }
  return rgba;
}

const rgbaToGrey = (rgba) => Float32Array.from({ length: rgba.length / 4 }, (_, i) => rgba[4 * i]);

/** stlMs is what the native core takes for half a million triangles. Gives
 *  rows of what, ours, the peer's, the ratio of the two, and what differs. */
export async function peers(job, stlMs) {
  const core = await startCore(), rows = [];
  const add = (what, ours, theirs, note) => rows.push([what, `${ours.toFixed(1)} ms`, `${theirs.toFixed(1)} ms`, `x${(theirs / ours).toFixed(1)}`, note]);
  const two = { ...job, mold: { scheme: "two" } };

  // the plaster parts of a lower and an upper part
  const plan = core.ask("plan", { job: two }), seam = plan.schemes.find((s) => s.id === "two").partingHeights[0];
  let made;
  const ours = median(5, () => { made = core.ask("solids", { job: two, what: "plaster", as: "stl" }); });
  const triangles = made.files.reduce((n, f) => n + f.triangles, 0);
  const wasm = await Module();
  wasm.setup();
  const { Manifold, CrossSection } = wasm;
  const nodes = job.form.outer.map((n) => [n.r, n.z]), top = nodes.at(-1)[1], widest = Math.max(...nodes.map((n) => n[0])) + 30;
  const around = Math.round(triangles / (2 * nodes.length));
  let parts;
  const theirs = median(5, () => {
    const pot = Manifold.revolve(new CrossSection([[...nodes, [0, top]]]), around);
    const block = Manifold.cylinder(top + 30, widest, widest, around).translate([0, 0, -30]);
    parts = block.subtract(pot).splitByPlane([0, 0, 1], seam);
    parts.map((p) => p.getMesh());
  });
  const made2 = parts.reduce((n, p) => n + p.numTri(), 0);
  add(`plaster parts: ours ${triangles} triangles, manifold ${made2}`, ours, theirs, "ours with natches, spare and STL bytes; booleans give bare parts");

  // STL bytes of half a million triangles
  const many = 500_000, soup = new BufferGeometry().setAttribute("position", new BufferAttribute(new Float32Array(9 * many).map((_, i) => (i * 7919) % 1000), 3));
  const exporter = new STLExporter(), mesh = new Mesh(soup);
  let bytes;
  const wrote = median(5, () => { bytes = exporter.parse(mesh, { binary: true }).byteLength; });
  if (stlMs) add(`writing ${many} triangles, ${(bytes / 1e6).toFixed(0)} MB of STL`, stlMs, wrote, `ours is the native core: ${(bytes / 1e6 / stlMs).toFixed(1)} GB/s, budget 1`);

  // an outline in a small picture, and in one of 12 megapixels
  for (const [width, height, request] of [[750, 1000, { draft: true }], [3000, 4000, { scale: { what: "height", mm: 170 } }]]) {
    const rgba = picture(width, height), grey = rgbaToGrey(rgba), q = { width, height, ...request };
    if (core.ask("trace", q, rgba).error) throw new Error(core.ask("trace", q, rgba).error.message);
    const trace = median(5, () => core.ask("trace", q, rgba)), squares = contours().size([width, height]).thresholds([150]);
    add(`outline in ${width} × ${height}`, trace, median(5, () => squares(grey)), request.draft ? "d3-contour is told the level and given grey values" : "ours gives a profile with its error, perspective taken out");
  }
  return rows;
}
