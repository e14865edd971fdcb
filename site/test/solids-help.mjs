// What the checks of the meshes share: STL read by its definition, solids in
// manifold (an independent mesh library), and admesh.
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import Module from "manifold-3d";

const toplevel = await Module();
toplevel.setup();
export const { Manifold, Mesh } = toplevel;

/** A binary STL file as an indexed mesh; corners at the same coordinates are one vertex. */
export function readSTL(bytes) {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const n = view.getUint32(80, true);
  if (bytes.length !== 84 + 50 * n) throw new Error(`${n} triangles in ${bytes.length} bytes`);
  const index = new Map(), vertices = [], tris = new Uint32Array(3 * n);
  for (let t = 0; t < n; t++) {
    for (let c = 0; c < 3; c++) {
      const at = 84 + 50 * t + 12 + 12 * c;
      const p = [0, 4, 8].map((o) => view.getFloat32(at + o, true));
      const key = p.join();
      let v = index.get(key);
      if (v === undefined) {
        v = index.size;
        index.set(key, v);
        vertices.push(...p);
      }
      tris[3 * t + c] = v;
    }
  }
  return { vertices: new Float32Array(vertices), tris };
}

/** The solid of an STL file; toMold (three rows of four numbers) moves it. Throws unless it is closed and manifold. */
export function solidOf(bytes, toMold) {
  const { vertices, tris } = readSTL(bytes);
  const mesh = new Mesh({ numProp: 3, vertProperties: vertices, triVerts: tris });
  let m = new Manifold(mesh);
  if (m.status() !== "NoError") throw new Error(m.status());
  if (toMold) {
    const a = toMold;
    m = m.transform([a[0], a[4], a[8], 0, a[1], a[5], a[9], 0, a[2], a[6], a[10], 0, a[3], a[7], a[11], 1]);
  }
  return m;
}

/** The least height of a mesh, mm. */
export const floorOf = (m) => m.boundingBox().min[2];

/** Volume that two solids share, mm3. */
export function shared(a, b) {
  const c = a.intersect(b), v = c.volume();
  c.delete();
  return v;
}

/** Volume in mm3 of a loop of [r, z] turned about the axis, by Pappus. */
export function turned(loop) {
  let sum = 0;
  loop.forEach(([r0, z0], i) => {
    const [r1, z1] = loop[(i + 1) % loop.length];
    sum += (r0 * z1 - r1 * z0) * (r0 + r1);
  });
  return sum * Math.PI / 3;
}

/** What admesh would repair in each of the files; an empty list where nothing. */
export function repairs(files) {
  const dir = mkdtempSync(join(tmpdir(), "stl-")), out = [];
  try {
    for (const [name, bytes] of files) {
      const path = join(dir, "piece.stl");
      writeFileSync(path, bytes);
      const { stdout, status } = spawnSync("admesh", [path], { encoding: "utf8" });
      const fixes = stdout.match(/^(Degenerate facets|Edges fixed|Facets removed|Facets added|Facets reversed|Backwards edges|Normals fixed) *: +\d+/gm) ?? [];
      const open = /^Total disconnected facets *: +(\d+) +(\d+)/m.exec(stdout);
      if (status !== 0 || fixes.length !== 7 || !open) out.push(`${name}: admesh says nothing`);
      else if (fixes.some((l) => !/ 0$/.test(l)) || open[1] !== "0" || open[2] !== "0") out.push(`${name}: ${fixes.join(", ")}, ${open[0]}`);
    }
  } finally {
    rmSync(dir, { recursive: true });
  }
  return out;
}
