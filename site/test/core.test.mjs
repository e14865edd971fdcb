// The bridge and the contract, on the built wasm in Node: every op answers,
// every failure is data, and the next call works after each of them.
import assert from "node:assert/strict";
import { readdirSync, readFileSync } from "node:fs";
import { test } from "node:test";
import { startCore } from "../tools/core.mjs";

const progress = [];
const core = await startCore({ onProgress: (f, words) => progress.push([f, words]) });
const bowl = {
  format: "moldwright-job", version: 1, name: "Test bowl",
  form: { size: "mold", outer: [[0, 0], [30, 0], [60, 50]].map(([r, z]) => ({ r, z, corner: true })) },
};
const alive = () => {
  const plan = core.ask("plan", { job: bowl });
  assert.equal(plan.error, undefined);
  assert.equal(plan.schemes.find((s) => s.id === plan.chosen).verdict, "clear");
};

test("read completes a job with defaults and keeps what it says", () => {
  const { job, error } = core.ask("read", { kind: "job", text: JSON.stringify(bowl) });
  assert.equal(error, undefined);
  assert.equal(job.name, "Test bowl");
  assert.deepEqual(job.form.outer, bowl.form.outer);
  assert.equal(job.clay.dryingShrinkage, 6);
  assert.equal(job.mold.scheme, "auto");
});

test("reading what was written gives the same bytes", () => {
  const once = core.ask("read", { kind: "job", text: JSON.stringify(bowl) });
  const page = JSON.stringify(once.job, null, 1) + "\n"; // as the page writes it
  assert.equal(page, once.text);
  assert.equal(core.ask("read", { kind: "job", text: page }).text, page);
});

for (const [name, text] of [
  ["tabs and decimal commas", "0\t0\n30,5\t0\n60\t50,25"],
  ["spaces and decimal points", "0 0\n30.5 0\n60 50.25"],
  ["semicolons", "0;0\n30,5;0\n60;50,25"],
]) {
  test(`coordinates with ${name}`, () => {
    const { job, error } = core.ask("read", { kind: "coordinates", text, units: "mm" });
    assert.equal(error, undefined);
    assert.deepEqual(job.form.outer.map((n) => [n.r, n.z]), [[0, 0], [30.5, 0], [60, 50.25]]);
  });
}

test("coordinates in cm and inches come back in mm", () => {
  for (const [units, mm] of [["cm", 10], ["in", 25.4]]) {
    const { job } = core.ask("read", { kind: "coordinates", text: "0 0\n3 0\n6 5", units });
    assert.ok(Math.abs(job.form.outer[2].r - 6 * mm) < 1e-9, units);
  }
});

test("figures come as rows with formula, source and standing, equal to the plan's", () => {
  const { rows } = core.ask("figures", { job: bowl }), { casting } = core.ask("plan", { job: bowl });
  assert.ok(rows.length > 30);
  for (const r of rows) {
    assert.ok(r.label && r.formula && r.source && r.status, r.key);
    assert.equal(r.value, casting[r.key], r.key);
  }
});

test("every bad row is named by its line", () => {
  const a = core.ask("read", { kind: "coordinates", text: "0 0\n30 x\n60 50\nseven 8", units: "mm" });
  assert.equal(a.error.line, 2);
  assert.deepEqual(a.errors.map((e) => e.line), [2, 4]);
  alive();
});

test("plan: the keys of the contract, with their meaning", () => {
  const plan = core.ask("plan", { job: bowl });
  for (const k of ["scale", "size", "schemes", "chosen", "whyNotFewer", "order", "traps", "cautions", "casting", "prints"]) {
    assert.ok(k in plan, k);
  }
  assert.equal(plan.scale, 1);
  assert.equal(plan.chosen, "one");
  assert.ok(Math.abs(plan.size.height - 50) < 1e-9);
  assert.ok(Math.abs(plan.size.maxRadius - 60) < 1e-9);
  const [part] = plan.schemes.find((s) => s.id === "one").parts;
  assert.deepEqual(part.pull, [0, 0, -1]);
  // The wall leans atan(30/50) from upright: draft 30.96 degrees everywhere but under the foot.
  const area = part.draftBands.reduce((s, b) => s + b.area, 0);
  const cone = Math.PI * (30 + 60) * Math.hypot(30, 50) / 100; // lateral area of a frustum, cm2
  assert.ok(Math.abs(area - cone - Math.PI * 9) < 0.01 * area, `${area} cm2`);
  for (const k of ["minutes", "slipFill", "slipTaken", "castWet", "castDry", "castFired", "castsPerDay", "liftForce", "bandForce"]) {
    assert.equal(typeof plan.casting[k], "number", k);
  }
});

test("solids: one blob a file, STL of the length its count says", () => {
  for (const what of ["prints", "plaster", "cast", "all"]) {
    const { files, blobs, error } = core.ask("solids", { job: bowl, what, as: "stl" });
    assert.equal(error, undefined, `${what}: ${error?.message}`);
    assert.equal(files.length, blobs.length);
    assert.ok(files.length > 0, what);
    files.forEach((f, i) => {
      const view = new DataView(blobs[i].buffer, blobs[i].byteOffset, blobs[i].byteLength);
      assert.equal(view.getUint32(80, true), f.triangles, f.name);
      assert.equal(blobs[i].length, 84 + 50 * f.triangles, f.name);
      assert.ok(f.volume > 0, f.name);
    });
  }
  assert.ok(progress.every(([f, words]) => f >= 0 && f <= 1 && typeof words === "string"));
});

test("sheet: PDF and SVG on every paper", () => {
  for (const sheet of ["profile", "report"]) {
    for (const paper of ["A4", "A3", "Letter"]) {
      const pdf = core.ask("sheet", { job: bowl, sheet, paper, as: "pdf" });
      assert.equal(pdf.error, undefined, pdf.error?.message);
      assert.ok(pdf.pages >= 1);
      assert.equal(Buffer.from(pdf.blobs[0]).subarray(0, 4).toString(), "%PDF");
      const svg = core.ask("sheet", { job: bowl, sheet, paper, as: "svg" });
      assert.equal(svg.blobs.length, svg.pages);
      assert.match(Buffer.from(svg.blobs[0]).subarray(0, 400).toString(), /<svg/);
    }
  }
});

test("the same job gives the same bytes", () => {
  for (const [op, request] of [
    ["plan", { job: bowl }],
    ["solids", { job: bowl, what: "prints", as: "stl" }],
    ["sheet", { job: bowl, sheet: "report", paper: "A4", as: "pdf" }],
  ]) {
    const a = core.call(op, JSON.stringify(request), null), b = core.call(op, JSON.stringify(request), null);
    assert.equal(a.reply, b.reply, op);
    assert.deepEqual(a.blobs, b.blobs, op);
  }
});

const bad = {
  "an unknown op": ["gild", "{}", null],
  "an op that is no string": [7, "{}", null],
  "a request that is no string": ["plan", { job: bowl }, null],
  "a request that is no JSON": ["plan", "{", null],
  "a request of null": ["plan", "null", null],
  "no arguments": [],
  "a blob that is no bytes": ["plan", JSON.stringify({ job: bowl }), "bytes"],
  "a job without a form": ["plan", JSON.stringify({ job: { format: "moldwright-job", version: 1 } }), null],
  "a key that no job has": ["plan", JSON.stringify({ job: { ...bowl, glaze: "celadon" } }), null],
  "a negative radius": ["plan", JSON.stringify({ job: { ...bowl, form: { outer: [{ r: 0, z: 0 }, { r: -5, z: 9 }, { r: 9, z: 30 }] } } }), null],
  "a profile that crosses itself": ["plan", JSON.stringify({ job: { ...bowl, form: { outer: [[0, 0], [50, 0], [20, 50], [50, 50], [20, 0.5]].map(([r, z]) => ({ r, z, corner: true })) } } }), null],
  "units that no one knows": ["read", JSON.stringify({ kind: "coordinates", text: "0 0\n3 0\n6 5", units: "cubit" }), null],
  "a kind that no one knows": ["read", JSON.stringify({ kind: "poem", text: "" }), null],
  "a sheet that no one knows": ["sheet", JSON.stringify({ job: bowl, sheet: "sail", paper: "A4", as: "pdf" }), null],
  "a paper that no one knows": ["sheet", JSON.stringify({ job: bowl, sheet: "profile", paper: "B9", as: "pdf" }), null],
  "solids of nothing we know": ["solids", JSON.stringify({ job: bowl, what: "dreams", as: "stl" }), null],
};
for (const [name, args] of Object.entries(bad)) {
  test(`${name} is answered as data, and the next call works`, () => {
    const { reply, blobs } = core.call(...args);
    const { error } = JSON.parse(reply);
    assert.ok(error.code && error.message.length > 10, reply);
    assert.deepEqual([...blobs], []);
    alive();
  });
}

test("faults name their field", () => {
  const job = structuredClone(bowl);
  job.form.outer[1].r = -3;
  assert.equal(core.ask("plan", { job }).error.field, "form.outer[1].r");
  const other = { ...bowl, clay: { wall: -1 } };
  assert.equal(core.ask("plan", { job: other }).error.field, "clay.wall");
});

test("a listener that throws does not hurt the core", () => {
  globalThis.moldwrightProgress = () => { throw new Error("listener"); };
  assert.equal(core.ask("solids", { job: bowl, what: "prints", as: "stl" }).error, undefined);
  alive();
});

test("every sample pot reads, plans and draws its report", () => {
  const dir = new URL("../samples/", import.meta.url);
  for (const name of readdirSync(dir).filter((f) => f.endsWith(".json"))) {
    const { job, error } = core.ask("read", { kind: "job", text: readFileSync(new URL(name, dir), "utf8") });
    assert.equal(error, undefined, name);
    assert.equal(core.ask("plan", { job }).error, undefined, name);
    assert.equal(core.ask("sheet", { job, sheet: "report", paper: "A4", as: "pdf" }).error, undefined, name);
  }
});

test("a reply is in the language that the request names", () => {
  const ripple = (request) => core.ask("plan", request).findings.find((f) => f.code === "ripple").text;
  const english = ripple({ job: bowl });
  assert.match(english, /^Layers of 0\.20 mm leave/);
  assert.equal(ripple({ job: bowl, language: "en" }), english);
  assert.match(ripple({ job: bowl, language: "de" }), /^Schichten von 0,20 mm .* 0,\d+ mm\.$/);
  assert.match(ripple({ language: "fr", job: bowl }), /^Des couches de 0,20 mm /);
  assert.match(core.call("plan", `{ "job": ${JSON.stringify(bowl)},\n"language" : "es" }`, null).reply, /Las capas de 0,20 mm /);
  assert.equal(ripple({ job: bowl }), english, "nothing stays of another language");
});

test("but for its words a reply is the same in every language", () => {
  const bare = (language) => JSON.stringify(core.ask("plan", { job: bowl, language }), (_, v) => (typeof v === "string" && v.includes(" ") ? "" : v));
  for (const language of ["de", "fr", "es"]) assert.equal(bare(language), bare("en"), language);
});

test("a language that the core does not speak is a fault that names the four", () => {
  for (const [op, request] of [["plan", { job: bowl }], ["read", { kind: "job", text: "{}" }], ["exercise", { do: "pose" }]]) {
    const { error } = core.ask(op, { ...request, language: "xx" });
    assert.equal(error.field, "language");
    assert.match(error.message, /"xx".*en, de, fr or es/);
  }
  alive();
});

test("faults are in the language too", () => {
  assert.match(core.ask("solids", { job: bowl, what: "dreams", as: "stl", language: "de" }).error.message, /möglich sind/);
});

test("at rest the core collects what requests have left, and no answer is another for it", () => {
  const request = JSON.stringify({ job: bowl }), { reply } = core.call("plan", request, null);
  for (let i = 0; i < 3; i++) core.rest(); // with nothing to collect too
  const held = core.memory();
  for (let i = 0; i < 60; i++) {
    assert.equal(core.call("plan", request, null).reply, reply);
    core.rest();
  }
  assert.equal(core.memory(), held, "the instance has not grown");
});
