// Measures the page's budgets in real Chromium and prints them as one table.
// Times inside the worker are of moldwright.call alone. A drag is moved by real input
// of Chromium, and told in two rows: what a hand waits for, with the display, and
// what the work takes without waiting for it. What the browser's other threads and
// the display do after a frame's work on the page is in neither. Beside each stands
// what the core compiled for this machine takes for the same request; a second table
// holds our work against general-purpose libraries.
import { spawnSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { cpus, loadavg, tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { dist } from "./core.mjs";
import { peers } from "./peers.mjs";
import { launch, open, planned } from "../test/browser.mjs";

const root = fileURLToPath(new URL("../../", import.meta.url));
const sorted = (xs) => [...xs].sort((a, b) => a - b);
const median = (xs) => sorted(xs)[xs.length >> 1];
const p95 = (xs) => sorted(xs)[Math.floor(xs.length * 0.95)];
const ms = (x) => `${x.toFixed(1)} ms`;
/** The median, and the least, which a busy machine spoils least. */
const both = (xs) => `${ms(median(xs))}, least ${ms(Math.min(...xs))}`;

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

/** A floor vase of 40 flutes and 500 points whose prints, divided to fit the bed,
 *  have half a million triangles. */
function floorVase() {
  const outer = [{ r: 0, z: 0, corner: true }];
  for (let i = 0; i <= 498; i++) {
    const t = i / 498;
    outer.push({ r: Math.round(110_000 + 40_000 * Math.sin(1.2 + 4.4 * t)) / 1000, z: Math.round(t * 400_000) / 1000, corner: i === 0 || i === 498 });
  }
  return { format: "moldwright-job", version: 1, name: "Bench floor vase", form: { size: "mold", outer, section: { kind: "flutes", count: 40, depth: 4 } } };
}

/** Times of the core compiled for this machine, in ms by name: of the requests
 *  given, word for word as the wasm gets them, and of tracing 12 megapixels. */
function native(requests) {
  const dir = mkdtempSync(join(tmpdir(), "bench-")), file = join(dir, "requests.json"), out = new Map();
  writeFileSync(file, JSON.stringify(requests));
  for (const [room, which] of [["./core/plan", "^BenchmarkRequests$"], ["./core/trace", "12MP$"], ["./core/solid", "^BenchmarkAppendSTL500k$"]]) {
    const { stdout } = spawnSync("go", ["test", "-run=^$", `-bench=${which}`, "-benchtime=0.4s", room], { cwd: root, encoding: "utf8", env: { ...process.env, MOLDWRIGHT_REQUESTS: file } });
    for (const [, name, ns] of (stdout ?? "").matchAll(/^Benchmark(?:Requests\/)?(\S+?)(?:-\d+)?\s+\d+\s+([\d.]+) ns\/op/gm)) out.set(name, ns / 1e6);
  }
  rmSync(dir, { recursive: true });
  return out;
}

/** How the survey, the judging of seams and the search for pockets grow with the points of a profile: a row
 *  for each kind of form, native, the least of a few runs; and the exponent by which
 *  time grows from the smallest to the largest (1 is straight, n log n some 1.1). */
function growth() {
  const sizes = [500, 5000, 50000, 100000], at = new Map();
  for (const [room, which] of [["./core/release", "Survey"], ["./core/parting", "Judge"], ["./core/form", "Pockets"]]) {
    const { stdout } = spawnSync("go", ["test", "-run=^$", `-bench=^Benchmark${which}$`, "-benchtime=0.2s", "-count=2", room], { cwd: root, encoding: "utf8" });
    for (const [, kind, n, ns] of (stdout ?? "").matchAll(/^Benchmark(\w+\/\w+)\/(\d+)(?:-\d+)?\s+\d+\s+([\d.]+) ns\/op/gm)) {
      if (!at.has(kind)) at.set(kind, {});
      at.get(kind)[n] = Math.min(ns, at.get(kind)[n] ?? Infinity);
    }
  }
  return { sizes, rows: [...at].map(([kind, t]) => {
    const least = sizes[0], most = sizes.filter((n) => t[n]).at(-1);
    return [kind, ...sizes.map((n) => (t[n] ? ms(t[n] / 1e6) : "")), `n^${(Math.log(t[most] / t[least]) / Math.log(most / least)).toFixed(2)}`];
  }) };
}

/** Runs in the page: notes when the first drawing stands, in ms since navigation,
 *  and when the frame has ended that draws the live core's first plan. */
function drawnAt() {
  const Own = Worker;
  window.Worker = class extends Own {
    constructor(...a) {
      super(...a);
      const hear = ({ data }) => {
        if (data.kind !== "answer") return;
        this.removeEventListener("message", hear);
        requestAnimationFrame(() => {
          const c = new MessageChannel(); // heard when the page has laid out and painted
          c.port1.onmessage = () => { window.liveAt = performance.now(); };
          c.port2.postMessage(0);
        });
      };
      this.addEventListener("message", hear);
    }
  };
  const watch = new MutationObserver(() => {
    if (!document.querySelector(".drawing svg")) return;
    window.drawnAt = performance.now();
    watch.disconnect();
  });
  watch.observe(document, { childList: true, subtree: true });
}

const rows = [];
let goTimes = new Map();
const add = (what, got, budget, ok, extra = "") => rows.push([what, got, budget, budget && (ok ? "within" : "OVER"), extra]);
const requests = {}; // by name, for the native core
const ratio = (name, ts) => () => (goTimes.has(name) ? `${ms(goTimes.get(name))} native, x${(Math.min(...[ts].flat()) / goTimes.get(name)).toFixed(1)}` : "");

/** Whether process p was started by this one, or by one that it started. */
const own = (p) => p === String(process.pid) || p !== "0" && own(readFileSync(`/proc/${p}/stat`, "utf8").replace(/^.*\) \S /s, "").split(" ")[0]);
/** Processes of our tabs that run now. */
const renderers = () => readdirSync("/proc").filter((p) => {
  try { return /^\d+$/.test(p) && readFileSync(`/proc/${p}/cmdline`, "utf8").includes("--type=renderer") && own(p); } catch { return false; }
});
/** The memory of the largest tab process that is not among the old ones, MB: its
 *  share of every page, those that it has with other processes divided among
 *  them (PSS), and all that it has in reach (RSS), where the browser's program,
 *  which every tab shares, counts in full. The first is what closing the tab
 *  gives back. */
const rendererMB = (old) => renderers().filter((p) => !old.has(p)).map((p) => {
  const mb = (file, key) => Math.round(Number(new RegExp(`^${key}:\\s+(\\d+)`, "m").exec(readFileSync(`/proc/${p}/${file}`, "utf8"))[1]) * 1.024e-3);
  return { pss: mb("smaps_rollup", "Pss"), rss: mb("status", "VmRSS"), most: mb("status", "VmHWM") };
}).sort((a, b) => b.rss - a.rss)[0];

/** A clock of what the core's thread has computed so far in the tab that is not among
 *  the old ones, ms: unlike the time of day, others on the machine do not lengthen it. */
const computing = (old) => {
  const tasks = renderers().filter((p) => !old.has(p)).flatMap((p) => readdirSync(`/proc/${p}/task`).map((t) => `/proc/${p}/task/${t}`));
  const core = tasks.filter((t) => readFileSync(`${t}/comm`, "utf8").startsWith("DedicatedWorker"));
  if (core.length !== 1) throw new Error(`${core.length} threads look like the core's`);
  return () => Number(readFileSync(`${core[0]}/schedstat`, "utf8").split(" ")[0]) / 1e6;
};

/** Waits until the browser has nothing more to do for a window that it has just made:
 *  it computes for half a second at that, in processes of its own, which nobody waits
 *  for who opens a file in a browser that stands. */
async function atRest() {
  const ticks = () => readdirSync("/proc").reduce((sum, p) => {
    try {
      if (!/^\d+$/.test(p) || p === String(process.pid) || !own(p)) return sum;
      const [user, system] = readFileSync(`/proc/${p}/stat`, "utf8").replace(/^.*\) /s, "").split(" ").slice(11, 13);
      return sum + Number(user) + Number(system);
    } catch { return sum; }
  }, 0);
  for (let before = ticks(), still = 0, i = 0; still < 3 && i < 40; i++) {
    await new Promise((r) => setTimeout(r, 150));
    const t = ticks();
    still = t - before <= 1 ? still + 1 : 0;
    before = t;
  }
}

const browser = await launch();
const opened = [], live = [];
for (let i = 0; i < 9; i++) {
  const { context, page: p } = await open(browser, { init: drawnAt, first: atRest });
  await p.waitForFunction(() => window.liveAt);
  opened.push(await p.evaluate(() => window.drawnAt));
  live.push(await p.evaluate(() => window.liveAt));
  await context.close();
}
add("open from file:// to a planned pot", both(opened), "700 ms", median(opened) <= 700, "from the start of navigation in a window at rest; its plan is the core's own, of when the page was built");
add("open from file:// to the first plan of the live core", both(live), "700 ms", median(live) <= 700, "to the end of the frame that draws it: what a pot of an earlier visit waits for");

const { page } = await open(browser);
const worker = page.workers()[0];
/** Runs an op n times in the worker: times, sizes of the blobs, and the reply of the last.
 *  Between two of them it rests, as the page's own worker does when nobody waits. */
const inWorker = (op, request, n, name) => {
  requests[name] = { op, request };
  return asked(op, request, n);
};
const asked = (op, request, n, w = worker) => w.evaluate(([o, r, k]) => {
  const times = [];
  let a;
  for (let i = 0; i < k; i++) {
    if (i > 0) globalThis.moldwright.rest();
    const t = performance.now();
    a = globalThis.moldwright.call(o, r, null);
    times.push(performance.now() - t);
  }
  return { times, bytes: a.blobs.map((b) => b.length), reply: a.reply };
}, [op, JSON.stringify(request), n]);

const job = vase(500), bowl = bowlOf(500);
const oval = vase(500);
oval.form.section = { kind: "oval", ratio: 0.8 };
// The browser compiles anew, and better, what is asked for often: plans before that, by
// themselves, and then in a page that has been at work for a while.
const early = (await asked("plan", { language: "en", job: vase(100) }, 120)).times;
// one budget for 500 points; the others in proportion, at least as much as for 100
for (const [what, name, j, budget] of [["100-point", "Plan100", vase(100), 5], ["500-point", "Plan500", job, 5], ["2000-point", "Plan2000", vase(2000), 20], ["500-point oval", "Plan500Oval", oval, 5]]) {
  const { times } = await inWorker("plan", { language: "en", job: j }, 60, name);
  const warm = times.slice(10), t = median(warm);
  add(`plan of a ${what} profile`, both(warm), `${budget} ms median`, t <= budget, () => `${ratio(name, warm)()}${name === "Plan100" ? `; the first ten of this tab ${both(early.slice(0, 10))}` : ""}`);
}

// The budget of solids is for half a million triangles of prints; the others are
// held to their share of it.
{
  const pids = new Set(renderers());
  const { context, page: p } = await open(browser), w = p.workers()[0], computed = computing(pids);
  for (const [name, what, j, n] of [["Solids_prints500k", "prints", floorVase(), 15], ["Solids_prints", "prints", bowl, 25], ["Solids_plaster", "plaster", job, 25]]) {
    const request = { job: j, what, as: "stl" }, times = [], cpu = [];
    requests[name] = { op: "solids", request };
    let files, bytes;
    for (let i = 0; i < n; i++) {
      const before = computed();
      const s = await asked("solids", request, 1, w);
      cpu.push(computed() - before);
      times.push(s.times[0]);
      files = JSON.parse(s.reply).files;
      bytes = s.bytes.reduce((a, b) => a + b, 0);
    }
    const warm = cpu.slice(5), triangles = files.reduce((k, f) => k + f.triangles, 0), allowed = (150 * triangles) / 500_000;
    add(`solids, ${what}: ${files.length} pieces, ${triangles} triangles, ${(bytes / 1e6).toFixed(1)} MB of STL`, `${both(warm)} of computing`,
      `${ms(allowed)} at 150 ms for 500,000`, median(warm) <= allowed, () => `by the clock ${both(times.slice(5))}, the first ${ms(times[0])}; ${ratio(name, warm)()}`);
    if (name === "Solids_prints500k") {
      const held = rendererMB(pids);
      add("memory after solids of half a million triangles", `${held.pss} MB`, "", true, `the tab's process (PSS); in full (RSS) at most ${held.most} MB`);
    }
  }
  await context.close();
}
for (const sheet of ["profile", "section", "report", "workshop"]) {
  for (const as of ["pdf", "svg"]) {
    const s = await inWorker("sheet", { job, sheet, paper: "A4", as }, 7, `Sheet_${sheet}_${as}`);
    if (JSON.parse(s.reply).error) continue;
    const t = median(s.times.slice(1)), kb = Math.max(...s.bytes) / 1000;
    add(`sheet ${sheet}, ${as}, ${kb.toFixed(0)} kB`, both(s.times.slice(1)), "100 ms, 200 kB", t <= 100 && kb <= 200, ratio(`Sheet_${sheet}_${as}`, s.times));
  }
}

// A picture of 12 megapixels, handed to a tab that has done nothing else.
{
  const pids = new Set(renderers());
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
  add("first outline, cold", ms(took.first), "100 ms", took.first <= 100, ratio("FirstOutline12MP", took.first));
  add("trace of 12 megapixels", both(took.full), "300 ms", median(took.full) <= 300, ratio("Trace12MP", took.full));
  const held = rendererMB(pids);
  add("memory with 12 megapixels held and traced", `${held.pss} MB`, "300 MB", held.pss <= 300, `the tab's process, pages shared with others in part (PSS); in full (RSS) ${held.rss} MB, at most ${held.most} MB`);
  await context.close();
}

/** A hand that drags a node: real input of Chromium, 60 moves a second that know
 *  nothing of the display's frames, each of which makes another job. The times, ms:
 *  shown, of each move from the event's own time to the end of the page's work on the
 *  frame that first shows the plan of it or of a later one; and of each plan the work,
 *  handler, core, reply and that frame with its layout and painting, without the wait
 *  for the display between: by the clock, and as the two threads computed it, which
 *  others on the machine do not lengthen. */
async function dragged(p, moves) {
  await p.evaluate(() => {
    const { core } = window.moldwrightPage, ask = core.ask.bind(core), seen = window.dragSeen = [];
    const mark = (what, i) => performance.mark(`${what} ${i}`).startTime; // the trace tells the thread's own time with it
    let at = null, taken = -1;
    // before the page hears of it: as it comes, where the page takes it so, or with the frame
    for (const told of ["pointerrawupdate", "pointermove"]) addEventListener(told, (e) => { at = e.timeStamp; mark("begun", seen.length); }, true);
    core.ask = (op, ...rest) => {
      const answer = ask(op, ...rest);
      if (op !== "plan" || at === null) return answer;
      const i = seen.push({ at }) - 1;
      mark("asked", i);
      at = null;
      return answer.then((a) => {
        if (a === null) return a; // overtaken
        mark("heard", taken = i);
        queueMicrotask(() => queueMicrotask(() => mark("taken", i))); // when the page has taken it up
        return a;
      });
    };
    let frames = 0;
    const frame = () => {
      const to = taken, n = frames++, c = new MessageChannel();
      mark("frame", n);
      c.port1.onmessage = () => { // heard when the page has laid out and painted
        const shown = mark("ended", n);
        for (let i = to; i >= 0 && !seen[i].shown; i--) Object.assign(seen[i], { shown, frame: n });
      };
      c.port2.postMessage(0);
      requestAnimationFrame(frame);
    };
    requestAnimationFrame(frame);
  });
  await p.workers()[0].evaluate(() => {
    const hear = globalThis.onmessage;
    let n = 0;
    globalThis.onmessage = (e) => {
      performance.mark(`begins ${n}`);
      hear(e);
      performance.mark(`ends ${n++}`);
    };
  });
  const cdp = await p.context().newCDPSession(p), box = await p.locator(".node .dot").nth(5).boundingBox();
  const at = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  const move = (i) => cdp.send("Input.dispatchMouseEvent", { type: "mouseMoved", x: at.x + 12 * Math.sin(i / 8) + (i % 2 ? 6 : -6), y: at.y, button: "left", buttons: 1, modifiers: 1 }); // Alt: nothing snaps
  await browser.startTracing(p, { categories: ["blink.user_timing"] });
  await p.mouse.move(at.x, at.y);
  await p.mouse.down();
  const sent = [], start = performance.now();
  for (let i = 1; i <= moves; i++) {
    const due = start + (i * 1000) / 60;
    while (performance.now() < due) await new Promise((r) => setTimeout(r, due - performance.now()));
    sent.push(move(i));
  }
  await Promise.all(sent);
  await planned(p);
  await p.mouse.up();
  const marks = new Map(JSON.parse(await browser.stopTracing()).traceEvents.filter((e) => e.tts).map((e) => [e.name, e]));
  const seen = await p.evaluate(() => window.dragSeen), plans = seen.map((m, i) => [m, i]).filter(([, i]) => marks.has(`taken ${i}`));
  const span = (time, from, to, k) => (marks.get(`${to} ${k}`)[time] - marks.get(`${from} ${k}`)[time]) / 1000;
  const frame = (time, m) => span(time, "frame", "ended", m.frame);
  const clock = plans.map(([m, i]) => span("ts", "begun", "taken", i) + frame("ts", m));
  const computed = plans.map(([m, i], n) => span("tts", "begun", "asked", i) + span("tts", "begins", "ends", n) + span("tts", "heard", "taken", i) + frame("tts", m));
  const warm = (xs) => xs.slice(moves / 10);
  return { shown: warm(seen.map((m) => m.shown - m.at)), computed: warm(computed), clock: warm(clock), overtaken: seen.length - plans.length };
}
{
  const { shown, computed, clock, overtaken } = await dragged(page, 300), all = (xs) => `${both(xs)}, p95 ${ms(p95(xs))}`;
  add("node drag, pointer to drawn plan", all(shown), "", true, `by the clock from the event's own time, with the waits for a display of 60 frames a second; ${overtaken} of ${shown.length} jobs overtaken, shown by a later plan`);
  add("node drag, job -> plan -> drawn frame", `${all(computed)} of computing`, "16 ms p95", p95(computed) <= 16, `by the clock ${all(clock)}, without the wait for the frame`);
}
await browser.close();

const size = statSync(join(dist, "moldwright.html")).size;
add("dist/moldwright.html", `${(size / 1e6).toFixed(2)} MB`, "7 MB", size <= 7e6);

goTimes = native(Object.entries(requests).map(([name, r]) => ({ name, ...r })));
const print = (head, lines) => {
  const all = [head, ...lines.map((r) => r.map((c) => (typeof c === "function" ? c() : c)))];
  const wide = head.map((_, i) => Math.max(...all.map((r) => r[i].length)));
  for (const r of all) console.log(r.map((c, i) => c.padEnd(wide[i])).join("  ").trimEnd());
};
print(["what", "measured", "budget", "", "beside it: the core native, and how many times that the wasm takes"], rows);
console.log();
print(["in Node, against general libraries", "ours", "theirs", "theirs/ours", "what differs"], await peers(job, goTimes.get("AppendSTL500k")));
console.log();
const grown = growth();
print(["release and parting, native, by points", ...grown.sizes.map((n) => n.toLocaleString("en")), "growth"], grown.rows);
const load = loadavg()[0];
if (load > cpus().length / 2) console.log(`\nThe machine was busy (load ${load.toFixed(1)} on ${cpus().length} processors): times are longer than they are by themselves; the least says more than the median.`);
