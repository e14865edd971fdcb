// The meshes as they are handed out, checked by others than the core: manifold
// (closed, genus, overlap, the simulated pull) and admesh (nothing to repair).
// All schemes of two pots, one foot that no pull frees and one waist, and some
// schemes of the others.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";
import { startCore } from "../tools/core.mjs";
import { floorOf, Manifold, repairs, shared, solidOf, turned } from "./solids-help.mjs";

const core = await startCore();
const must = (op, request) => {
  const a = core.ask(op, request);
  assert.equal(a.error, undefined, a.error?.message);
  return a;
};

/** mm3 that solids may share: what float32 loses on touching faces of 100 cm2 and more. */
const NOISE = 1;
const PULLS = [0.5, 2, 10, 100]; // mm

function potJob(name) {
  const text = readFileSync(new URL(`../../testdata/pots/${name}.txt`, import.meta.url), "utf8");
  const { job } = must("read", { kind: "coordinates", text, units: "mm" });
  job.name = name;
  job.form.size = "mold";
  return job;
}

const withScheme = (job, scheme) => ({ ...job, mold: { ...job.mold, scheme } });

/** The handles that a plaster part is designed with: one where it goes round an opening. */
const genus = (part, holdsAxis) => (part.sector || holdsAxis ? 0 : 1);

function checkMold(job) {
  const plan = must("plan", { job }), scheme = plan.schemes.find((s) => s.id === plan.chosen);
  const { files, blobs } = must("solids", { job, what: "all", as: "stl" });
  const of = (kind) => files.map((f, i) => ({ ...f, bytes: blobs[i] })).filter((f) => f.kind === kind);

  const parts = new Map(scheme.parts.map((p) => [p.name, { ...p, solid: null }]));
  for (const f of of("plaster")) parts.get(f.part).solid = solidOf(f.bytes);
  for (const p of parts.values()) {
    assert.ok(p.solid, `part ${p.name} has a mesh`);
    const holdsAxis = !p.sector && plan.drawing.parts.find((d) => d.name === p.name).outline.some(([r]) => r === 0);
    assert.equal(p.solid.genus(), genus(p, holdsAxis), `genus of part ${p.name}`);
    assert.equal(p.solid.decompose().length, 1, `part ${p.name} is one piece`);
  }
  const [castFile] = of("cast");
  const cast = solidOf(castFile.bytes);
  assert.equal(cast.genus(), 0, "genus of the cast");

  // Neighbours touch and no more; the cast lies in the cavity.
  const list = [...parts.values()];
  list.forEach((a, i) => {
    assert.ok(shared(a.solid, cast) < NOISE, `part ${a.name} and the cast share ${shared(a.solid, cast)} mm3`);
    for (const b of list.slice(i + 1)) {
      assert.ok(shared(a.solid, b.solid) < NOISE, `parts ${a.name} and ${b.name} share ${shared(a.solid, b.solid)} mm3`);
    }
  });

  // Parts, strap grooves, cast and openings fill the block, which is convex.
  const smooth = must("solids", { job: { ...job, mold: { ...job.mold, strapGrooves: false } }, what: "plaster", as: "stl" });
  const grooves = smooth.blobs.reduce((v, b) => v + solidOf(b).volume(), 0) - list.reduce((v, p) => v + p.solid.volume(), 0);
  assert.ok(scheme.sides ? grooves > -NOISE : Math.abs(grooves) < NOISE, `grooves of ${grooves} mm3`);
  const block = Manifold.hull(list.map((p) => p.solid));
  const plaster = Manifold.union(list.map((p) => p.solid));
  const d = plan.drawing, top = d.opening.at(-1);
  const openings = turned([...d.opening, [0, top[1]], [0, d.opening[0][1]]])
    + (d.inner.length ? turned([...d.inner, [0, d.inner.at(-1)[1]]]) : 0);
  const sum = list.reduce((v, p) => v + p.solid.volume(), 0) + grooves + cast.volume() + openings;
  assert.ok(Math.abs(sum - block.volume()) < 1e-3 * block.volume(), `parts, grooves, cast and openings are ${sum} mm3, the block is ${block.volume()}`);

  // The positive is what the plaster leaves free, without the gaps at natches.
  const positive = block.subtract(plaster).decompose().sort((a, b) => b.volume() - a.volume())[0];
  assert.ok(positive.volume() > cast.volume() - NOISE);

  // Each part in turn, along its pull.
  const left = new Map(parts), met = [];
  for (const name of plan.order) {
    const part = left.get(name);
    left.delete(name);
    const stays = Manifold.union([positive, ...[...left.values()].map((p) => p.solid)]);
    for (const mm of PULLS) {
      const moved = part.solid.translate(part.pull.map((x) => x * mm));
      const v = shared(moved, stays);
      if (v > NOISE) met.push(`${name} at ${mm} mm: ${v.toFixed(1)} mm3`);
      moved.delete();
    }
    stays.delete();
  }
  assert.equal(left.size, 0, "the order names every part");
  if (scheme.verdict === "catches") assert.notEqual(met.length, 0, "a scheme that catches meets something");
  else assert.deepEqual(met, [], `a scheme that is said to be ${scheme.verdict} comes apart`);

  // Prints: closed, on the bed, and each fits against its plaster; a
  // collar holds the staves only. Of the side parts A and B are looked at; the others differ by a turn.
  for (const f of of("print").filter((p) => !/^[C-F]$/.test(p.part))) {
    const print = solidOf(f.bytes);
    assert.equal(print.decompose().length, 1, `${f.name} is one piece`);
    assert.ok(Math.abs(floorOf(print)) < 1e-6, `${f.name} rests on z = 0`);
    const there = solidOf(f.bytes, f.toMold), part = parts.get(f.part).solid;
    const v = shared(there, part);
    assert.ok(v < NOISE, `${f.name} and part ${f.part} share ${v} mm3`);
    if (!f.name.includes("-collar")) assert.ok(there.minGap(part, 1) < 0.01, `${f.name} touches part ${f.part}`);
  }

  assert.deepEqual(repairs(files.map((f, i) => [f.name, blobs[i]])), [], "admesh finds nothing to repair");
}

const all = (plan) => plan.schemes.map((s) => s.id);
const some = (plan) => [plan.chosen, plan.schemes.find((s) => s.verdict === "catches" && s.id !== plan.chosen)?.id].filter(Boolean);
const pots = {
  "dovetail-foot": all, "waisted-vase": all,
  "round-jar": () => ["two", "sides3+lower+upper"],
  "open-bowl": some, "straight-cylinder": some, "tall-vase": some, "tapered-foot": some,
};
for (const [name, schemes] of Object.entries(pots)) {
  const job = potJob(name);
  for (const id of schemes(must("plan", { job }))) {
    test(`${name}, ${id}: sound, fits, fills the block, comes apart as judged`, () => checkMold(withScheme(job, id)));
  }
}

// Dimples in the wall: wide ones that the side seams cross, and shallow ones
// that one part lets go.
const beaker = (dimples, scheme, outer) => {
  const { job } = must("read", { kind: "coordinates", text: outer.map((p) => p.join(" ")).join("\n"), units: "mm" });
  return { ...job, name: "beaker", form: { ...job.form, size: "mold", section: { ...job.form.section, dimples } }, mold: { ...job.mold, scheme } };
};
const dimpled = {
  "seams through dimples": beaker({ around: 7, heights: [40], diameter: 20, depth: 1.5 }, "sides3+lower", [[0, 0], [30, 0], [35, 80]]),
  "one part": beaker({ around: 10, heights: [20, 40], diameter: 9, depth: 0.9 }, "one", [[0, 0], [30, 0], [60, 60]]),
};
for (const [name, job] of Object.entries(dimpled)) {
  test(`dimples, ${name}: sound, fits, fills the block, comes apart as judged`, () => {
    const plain = { ...job, form: { ...job.form, section: { ...job.form.section, dimples: null } } };
    const bumps = (j) => must("solids", { job: j, what: "plaster", as: "stl" }).files.reduce((v, f) => v + f.volume, 0);
    assert.ok(bumps(job) - bumps(plain) > 0.3, "the plaster has bumps");
    checkMold(job);
  });
}

// Pieces divided to fit a small bed, and the plug of a flared spare.
for (const [name, scheme] of [["round-jar", "two"], ["waisted-vase", "sides2+lower"], ["dovetail-foot", "sides3+upper"]]) {
  test(`${name}, ${scheme}, on a small bed: pieces are sound, fit the bed, and share no space`, () => {
    const plain = potJob(name);
    const job = { ...plain, mold: { ...plain.mold, scheme, spare: { height: 25, flared: true } }, printer: { ...plain.printer, bed: [130, 130, 90] } };
    const plan = must("plan", { job });
    const { files, blobs } = must("solids", { job, what: "all", as: "stl" });
    const plaster = new Map(), prints = [];
    files.forEach((f, i) => {
      if (f.kind === "plaster") plaster.set(f.part, solidOf(blobs[i]));
      if (f.kind === "print") prints.push({ ...f, bytes: blobs[i], there: solidOf(blobs[i], f.toMold) });
    });
    assert.ok(plan.prints.some((p) => / of \d+$/.test(p.name)), "something is divided");
    const made = plan.prints.filter((p) => p.size[0] > 0); // not the tray that cannot be made
    assert.equal(prints.length, made.length);
    made.forEach((p, i) => {
      if (p.fitsBed) p.size.forEach((_, k) => assert.ok(prints[i].size[k] <= job.printer.bed[k] + 0.1, `${p.name} measures ${prints[i].size}`));
      else assert.ok(p.note.length > 0, `${p.name} does not fit and says why`);
    });
    for (const f of prints) {
      assert.equal(f.there.decompose().length, 1, `${f.name} is one piece`);
      const v = shared(f.there, plaster.get(f.part));
      assert.ok(v < NOISE, `${f.name} and part ${f.part} share ${v} mm3`);
    }
    const pieces = new Map();
    for (const f of prints) {
      const whole = f.name.replace(/-\d+-of-\d+\.stl$/, "");
      pieces.set(whole, [...(pieces.get(whole) ?? []), f]);
    }
    for (const list of pieces.values()) {
      list.forEach((a, i) => list.slice(i + 1).forEach((b) => assert.ok(shared(a.there, b.there) < NOISE, `${a.name} and ${b.name} share ${shared(a.there, b.there)} mm3`)));
    }
    assert.deepEqual(repairs(prints.map((f) => [f.name, f.bytes])), [], "admesh finds nothing to repair");
  });
}
