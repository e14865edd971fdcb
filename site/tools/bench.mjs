// Measures the page's budgets in real Chromium and prints them as one table.
// Times inside the worker are of moldwright.call alone; a drag is from the
// pointer event to the frame that shows its plan. Where core/plan has a Go
// benchmark of the same name, the ratio wasm to native stands beside it.
import { spawnSync } from "node:child_process";
import { readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { dist } from "./core.mjs";
import { launch, open } from "../test/browser.mjs";

const root = fileURLToPath(new URL("../../", import.meta.url));
const sorted = (xs) => [...xs].sort((a, b) => a - b);
const median = (xs) => sorted(xs)[xs.length >> 1];
const p95 = (xs) => sorted(xs)[Math.floor(xs.length * 0.95)];
const ms = (x) => `${x.toFixed(1)} ms`;

/** A waisted vase of so many points, the same every time. */
function vase(points) {
  const outer = [{ r: 0, z: 0, corner: true }];
  for (let i = 0; i <= points - 2; i++) {
    const t = i / (points - 2);
    const r = 40 + 14 * Math.sin(1.2 + 4.4 * t);
    outer.push({ r: Math.round(r * 1000) / 1000, z: Math.round(t * 150_000) / 1000, corner: i === 0 || i === points - 2 });
  }
  return { format: "moldwright-job", version: 1, name: "Bench vase", form: { size: "mold", outer } };
}

/** An open bowl of so many points: one part, so its pieces can be printed. */
function bowlOf(points) {
  const outer = [{ r: 0, z: 0, corner: true }];
  for (let i = 0; i <= points - 2; i++) {
    const t = i / (points - 2);
    outer.push({ r: Math.round(25_000 + 50_000 * Math.sqrt(t)) / 1000, z: Math.round(t * 60_000) / 1000, corner: i === 0 || i === points - 2 });
  }
  return { format: "moldwright-job", version: 1, name: "Bench bowl", form: { size: "mold", outer } };
}

/** go test -bench results of core/plan by name, in ms. */
function native() {
  const { stdout } = spawnSync("go", ["test", "-run=^$", "-bench=.", "-benchtime=1s", "./core/plan"], { cwd: root, encoding: "utf8" });
  const out = new Map();
  for (const [, name, ns] of (stdout ?? "").matchAll(/^Benchmark(\S+?)(?:-\d+)?\s+\d+\s+([\d.]+) ns\/op/gm)) out.set(name, ns / 1e6);
  return out;
}

/** Runs in the page: notes when the first drawing stands, in ms since navigation. */
function drawnAt() {
  const watch = new MutationObserver(() => {
    if (!document.querySelector(".drawing svg")) return;
    window.drawnAt = performance.now();
    watch.disconnect();
  });
  watch.observe(document, { childList: true, subtree: true });
}

const rows = [];
const add = (what, got, budget, ok, extra = "") => rows.push([what, got, budget, ok ? "within" : "OVER", extra]);
const goTimes = native();
const ratio = (name, t) => (goTimes.has(name) ? `${ms(goTimes.get(name))} native, x${(t / goTimes.get(name)).toFixed(1)}` : "");

const browser = await launch();
const opened = [];
for (let i = 0; i < 7; i++) {
  const { context, page: p } = await open(browser, { init: drawnAt });
  opened.push(await p.evaluate(() => window.drawnAt));
  await context.close();
}
add("open from file:// to a planned pot", ms(median(opened)), "700 ms", median(opened) <= 700, "from the start of navigation to the drawing");

const { page } = await open(browser);
const worker = page.workers()[0];
/** Runs an op n times in the worker: times, sizes of the blobs, and the reply of the last. */
const inWorker = (op, request, n) => worker.evaluate(([o, r, k]) => {
  const times = [];
  let a;
  for (let i = 0; i < k; i++) {
    const t = performance.now();
    a = globalThis.moldwright.call(o, r, null);
    times.push(performance.now() - t);
  }
  return { times, bytes: a.blobs.map((b) => b.length), reply: a.reply };
}, [op, JSON.stringify(request), n]);

const job = vase(500), bowl = bowlOf(500);
const oval = vase(500);
oval.form.section = { kind: "oval", ratio: 0.8 };
// one budget for 500 points; the others in proportion, at least as much as for 100
for (const [what, name, j, budget] of [["100-point", "Plan100", vase(100), 5], ["500-point", "Plan500", job, 5], ["2000-point", "Plan2000", vase(2000), 20], ["500-point oval", "Plan500Oval", oval, 5]]) {
  const { times } = await inWorker("plan", { job: j }, 60);
  const warm = times.slice(10), t = median(warm);
  add(`plan of a ${what} profile`, `${ms(t)}, p95 ${ms(p95(warm))}`, `${budget} ms median`, t <= budget, ratio(name, t));
}

for (const what of ["prints", "plaster"]) {
  const s = await inWorker("solids", { job: what === "prints" ? bowl : job, what, as: "stl" }, 5);
  const files = JSON.parse(s.reply).files ?? [];
  const triangles = files.reduce((n, f) => n + f.triangles, 0), bytes = s.bytes.reduce((a, b) => a + b, 0);
  const t = median(s.times), allowed = Math.max(20, (150 * triangles) / 500_000);
  add(`solids, ${what}: ${triangles} triangles, ${(bytes / 1e6).toFixed(1)} MB of STL`, ms(t), `${ms(allowed)} at 150 ms for 500,000`, t <= allowed, ratio(`Solids_${what}`, t));
}
for (const sheet of ["profile", "section", "report", "workshop"]) {
  for (const as of ["pdf", "svg"]) {
    const s = await inWorker("sheet", { job, sheet, paper: "A4", as }, 7);
    if (JSON.parse(s.reply).error) continue;
    const t = median(s.times.slice(1)), kb = Math.max(...s.bytes) / 1000;
    add(`sheet ${sheet}, ${as}, ${kb.toFixed(0)} kB`, ms(t), "100 ms, 200 kB", t <= 100 && kb <= 200, ratio(`Sheet_${sheet}_${as}`, t));
  }
}

// A picture of 12 megapixels, handed to a tab that has done nothing else.
{
  const { context, page: p } = await open(browser), w = p.workers()[0];
  const jpeg = readFileSync(join(root, "testdata/photos/vase-1000.jpg"));
  const took = await w.evaluate(async (bytes) => {
    const b = await createImageBitmap(new Blob([new Uint8Array(bytes)]));
    const pixels = (width, height) => {
      const c = new OffscreenCanvas(width, height).getContext("2d");
      c.drawImage(b, 0, 0, width, height);
      return new Uint8Array(c.getImageData(0, 0, width, height).data.buffer);
    };
    const run = (request, blob) => {
      const t = performance.now();
      if (JSON.parse(globalThis.moldwright.call("trace", JSON.stringify(request), blob).reply).error) throw new Error("not traced");
      return performance.now() - t;
    };
    const small = pixels(750, 1000), first = run({ width: 750, height: 1000, draft: true }, small);
    const large = pixels(3000, 4000);
    globalThis.moldwright.hold(large.length, 0, large);
    const full = [];
    for (let i = 0; i < 7; i++) full.push(run({ width: 3000, height: 4000, scale: { what: "height", mm: 170 } }, true));
    return { first, full };
  }, [...jpeg]);
  add("first outline, cold", ms(took.first), "100 ms", took.first <= 100, "of the small copy that the page makes");
  add("trace of 12 megapixels", ms(median(took.full)), "300 ms", median(took.full) <= 300, `${ms(took.full[0])} the first time`);
  await context.close();
}

const drags = await page.evaluate(async () => {
  const times = [];
  const verdict = document.querySelector(".verdict");
  const frame = () => new Promise((r) => requestAnimationFrame(r));
  const node = document.querySelectorAll(".node")[5];
  const at = node.getBoundingClientRect();
  const x = at.x + at.width / 2, y = at.y + at.height / 2;
  node.setPointerCapture = () => {};
  const send = (type, dx) => node.dispatchEvent(new PointerEvent(type, { bubbles: true, pointerId: 1, button: 0, clientX: x + dx, clientY: y }));
  send("pointerdown", 0);
  for (let i = 1; i <= 120; i++) {
    await frame();
    const t = performance.now();
    send("pointermove", 20 * Math.sin(i / 8));
    do { await frame(); } while (verdict.getAttribute("aria-busy") === "true");
    times.push(performance.now() - t);
  }
  send("lostpointercapture", 0);
  return times;
});
add("node drag to drawn frame", `${ms(median(drags))}, p95 ${ms(p95(drags))}`, "16 ms p95", p95(drags) <= 17, "counted in whole frames of the display");
await browser.close();

const size = statSync(join(dist, "moldwright.html")).size;
add("dist/moldwright.html", `${(size / 1e6).toFixed(2)} MB`, "7 MB", size <= 7e6);

const head = ["what", "measured", "budget", "", "beside it"];
const wide = head.map((h, i) => Math.max(h.length, ...rows.map((r) => r[i].length)));
for (const r of [head, ...rows]) console.log(r.map((c, i) => c.padEnd(wide[i])).join("  ").trimEnd());
