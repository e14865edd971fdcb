// Everything that is checked, counted for real. Each step gives a number of
// checks that passed and failed; a step that breaks before it counts is one that
// failed, so nothing can be left out unseen. The last line is the sum, and the
// exit code is 0 only when nothing failed and something passed.
import { spawn, spawnSync } from "node:child_process";
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { createInterface } from "node:readline";
import { fileURLToPath } from "node:url";

const root = fileURLToPath(new URL("../../", import.meta.url));
const STATICCHECK = "honnef.co/go/tools/cmd/staticcheck@v0.8.2";
const FUZZ_TIME = "3s";
/** Files of page tests that take longest, which are begun first. */
const LONG = ["access", "page", "robust", "keep", "keyboard", "class", "trace", "solids", "journeys"];

let passed = 0, failed = 0, skipped = 0;
const count = (p, f) => { passed += p; failed += f; };
const say = (line) => console.log(line);
const has = (tool) => spawnSync("sh", ["-c", `command -v ${tool}`]).status === 0;

/** Runs a command; its output goes through line by line, or to onLine. */
function run(cmd, args, { cwd = root, env = {}, onLine = say } = {}) {
  return new Promise((resolve) => {
    const child = spawn(cmd, args, { cwd, env: { ...process.env, ...env }, stdio: ["ignore", "pipe", "pipe"] });
    let out = "";
    const readers = [child.stdout, child.stderr].map((s) => new Promise((done) => {
      createInterface({ input: s }).on("line", (l) => { out += l + "\n"; onLine(l); }).on("close", done);
    }));
    child.on("error", (e) => resolve({ code: 1, out: String(e) }));
    child.on("close", (code) => Promise.all(readers).then(() => resolve({ code: code ?? 1, out })));
  });
}

async function step(name, work) {
  const before = [passed, failed], t = performance.now();
  say(`== ${name}`);
  try {
    await work();
    if (passed === before[0] && failed === before[1]) throw new Error("the step counted nothing");
  } catch (e) {
    say(`FAIL ${name}: ${e.message}`);
    count(0, 1);
  }
  say(`   ${passed - before[0]} passed, ${failed - before[1]} failed, ${((performance.now() - t) / 1000).toFixed(1)} s`);
}

/** One check: the command ends well, and says nothing where it should not. */
async function check(cmd, args, { quiet = false, ...opts } = {}) {
  const { code, out } = await run(cmd, args, opts);
  const ok = code === 0 && !(quiet && out.trim());
  if (!ok) say(`FAIL ${cmd} ${args.join(" ")}`);
  count(ok ? 1 : 0, ok ? 0 : 1);
  return ok;
}

async function tools() {
  const need = { chromium: "chromium", pdftoppm: "poppler-utils", admesh: "admesh" };
  const useful = { "firefox-esr": "firefox-esr" }; // without it the tests in that browser are skipped, and counted as such
  const missing = [...Object.entries(need), ...Object.entries(useful)].filter(([t]) => !has(t)).map(([, debian]) => debian);
  if (missing.length && has("apt-get") && process.getuid?.() === 0) {
    await run("apt-get", ["update", "-q"], { onLine: () => {} });
    for (const m of missing) await run("apt-get", ["install", "-y", "-q", "--no-install-recommends", m], { onLine: () => {} });
  }
  for (const [t, debian] of Object.entries(useful)) if (!has(t)) say(`   ${t} is missing: what needs it is skipped; install ${debian} to run it`);
  for (const t of ["go", "node", "npm", ...Object.keys(need)]) {
    if (has(t)) count(1, 0);
    else { say(`FAIL ${t} is missing; install ${need[t] ?? t} and run again`); count(0, 1); }
  }
}

/** Go tests, subtests counted by their leaves; a package that fails outside a test is one failure. */
async function goTests() {
  const results = new Map(), packages = new Map(), words = new Map();
  const { code } = await run("go", ["test", "-json", "-timeout=30m", "./..."], {
    onLine(l) {
      let e;
      try { e = JSON.parse(l); } catch { return say(l); }
      const id = `${e.Package ?? e.ImportPath} ${e.Test ?? ""}`;
      if (e.Output) words.set(id, (words.get(id) ?? "") + e.Output);
      if (!["pass", "fail"].includes(e.Action)) return;
      (e.Test ? results : packages).set(id, e.Action);
    },
  });
  const names = [...results.keys()];
  const parents = new Set(names.map((n) => n.slice(0, n.lastIndexOf("/"))));
  let good = 0, bad = 0;
  for (const [id, action] of results) {
    if (action === "pass") good += parents.has(id) ? 0 : 1;
    else { if (!parents.has(id)) bad++; say(`FAIL ${id}\n${words.get(id) ?? ""}`); }
  }
  for (const [id, action] of packages) {
    if (action === "fail" && !names.some((n) => n.startsWith(id) && results.get(n) === "fail")) {
      bad++;
      say(`FAIL package ${id}\n${words.get(id) ?? ""}`);
    }
  }
  if (code !== 0 && bad === 0) { bad = 1; for (const w of words.values()) say(w); }
  count(good, bad);
}

/** One target. On a busy machine its workers may be cut off in the middle of an
 *  input when the time is over: Go then calls that a failure, with no input that
 *  failed. That alone says nothing of the target, so it has another turn. */
async function fuzzed(args) {
  for (let turn = 1; ; turn++) {
    const { code, out } = await run("go", args, { onLine: () => {} });
    if (code === 0) return count(1, 0);
    if (turn === 3 || !/context deadline exceeded/.test(out) || /Failing input|panic/.test(out)) {
      say(`FAIL go ${args.join(" ")}\n${out}`);
      return count(0, 1);
    }
  }
}

async function fuzz() {
  const files = readdirSync(join(root, "core"), { recursive: true }).filter((f) => f.endsWith("_test.go")).sort();
  let found = 0;
  for (const f of files) {
    for (const [, target] of readFileSync(join(root, "core", f), "utf8").matchAll(/^func (Fuzz\w+)\(/gm)) {
      found++;
      const dir = "./core/" + f.slice(0, f.lastIndexOf("/"));
      await fuzzed(["test", "-run=^$", `-fuzz=^${target}$`, `-fuzztime=${FUZZ_TIME}`, dir]);
    }
  }
  if (found === 0) throw new Error("no fuzz target was found");
}

/** The .test.mjs files of site/test, each in a process of its own, two at a time: a
 *  test mostly waits for its page, so that one alone leaves a core idle. Long ones
 *  come first, so that no core is left with one at the end. What a file says is
 *  kept together and said when it is through. */
async function nodeTests() {
  const dir = join(root, "site/test");
  const all = readdirSync(dir).filter((name) => name.endsWith(".test.mjs")).sort(), first = LONG.map((name) => `${name}.test.mjs`);
  const files = [...new Set([...first, ...all])]; // one that is no longer there fails
  const hand = async () => { for (let f; (f = files.shift());) await nodeTest(f); };
  await Promise.all([hand(), hand()]);
}

async function nodeTest(f) {
  let good = 0, bad = 0, telling = false; // telling: what follows is the report of a failure
  const lines = [], tell = (line) => lines.push(line), t = performance.now();
  const { code } = await run("node", ["--test", "--test-reporter=tap", join("site/test", f)], {
    onLine(l) {
      const m = /^\s*(not )?ok \d+ - (.*)$/.exec(l);
      if (!m) {
        telling &&= !/^\s*\.\.\.$/.test(l);
        if (telling && !/^\s*(---|duration_ms:|type:|location:|failureType:|node:internal)/.test(l)) tell(`  | ${l.trim()}`);
        return;
      }
      telling = Boolean(m[1]);
      if (m[2].endsWith(f)) return;
      if (/ # SKIP/.test(m[2])) { skipped++; return tell(`  skipped ${m[2].replace(" # SKIP", ":")}`); }
      if (m[1]) { bad++; tell(`FAIL ${m[2]}`); } else { good++; tell(`  ok ${m[2]}`); }
    },
  });
  if (code !== 0 && bad === 0) { bad = 1; tell(`FAIL ${f} ended with code ${code}`); }
  if (good + bad === 0) { bad = 1; tell(`FAIL ${f} ran no test`); }
  count(good, bad);
  say(`  ${f}, ${((performance.now() - t) / 1000).toFixed(1)} s`);
  for (const l of lines) say(l);
}

process.on("uncaughtException", (e) => { say(`FAIL ${e.stack}`); finish(1); });
function finish(extra = 0) {
  failed += extra;
  if (skipped) console.log(`${skipped} skipped, for the reasons given above`);
  console.log(`${passed} passed, ${failed} failed`);
  process.exit(failed === 0 && passed > 0 ? 0 : 1);
}

await step("tools", tools);
await step("build", () => check("make", ["--no-print-directory", "build"]));
await step("gofmt", () => check("gofmt", ["-l", "core", "wasm"], { quiet: true }));
await step("go vet", async () => {
  await check("go", ["vet", "./core/..."]);
  await check("go", ["vet", "./wasm"], { env: { GOOS: "js", GOARCH: "wasm" } });
});
await step("staticcheck", async () => {
  await check("go", ["run", STATICCHECK, "./core/..."]);
});
await step("go test", goTests);
await step("fuzz", fuzz);
await step("tsc", () => check("npx", ["tsc", "--noEmit"], { cwd: join(root, "site") }));
await step("node and browser tests", nodeTests);
finish();
