// Work is never lost: what is kept of each pot and how it is thinned, taking a
// version back, two tabs at once, the saved file and the way it opens again,
// jobs of older and newer pages, damaged files, and the question before leaving.
import assert from "node:assert/strict";
import { fileURLToPath } from "node:url";
import { before, test } from "node:test";
import { build } from "esbuild";
import { startCore } from "../tools/core.mjs";
import { address, downloaded, planned, until, verdict } from "./browser.mjs";
import { pages } from "./onpage.mjs";
import { samples } from "./samples-list.mjs";
import { outlined } from "./trace-help.mjs";

const onPage = pages();
let core, thin;
before(async () => {
  core = await startCore();
  const out = await build({ entryPoints: [fileURLToPath(new URL("../src/keep/thin.ts", import.meta.url))], bundle: true, write: false, format: "esm" });
  thin = await import(`data:text/javascript;base64,${Buffer.from(out.outputFiles[0].text).toString("base64")}`);
});

const canonical = (job) => JSON.stringify(job, null, 1) + "\n";
const opened = (text) => core.ask("read", { kind: "job", text });
const random = (seed) => () => {
  seed = (seed * 1103515245 + 12345) % 2147483648;
  return seed / 2147483648;
};

test("thinning: a version every ten seconds for two days leaves one of each age, and always the newest", () => {
  const minute = 60_000;
  let kept = [];
  for (let t = 0; t <= 2 * 1440 * minute; t += minute / 6) {
    kept.push({ at: t, tab: "a" });
    const gone = new Set(thin.surplus(kept, t));
    kept = kept.filter((v) => !gone.has(v));
    assert.equal(kept.at(-1).at, t);
    assert.ok(kept.length <= thin.ages.length + 2, `${kept.length}`);
  }
  const now = kept.at(-1).at;
  for (const [i, end] of thin.ages.slice(0, 6).entries()) {
    const from = (i ? thin.ages[i - 1] : 0) * minute;
    assert.ok(kept.some((v) => now - v.at >= from && now - v.at < end * minute), `none between ${from / minute} and ${end} min`);
  }
  assert.ok(kept.some((v) => now - v.at > 1440 * minute), "none of yesterday");
});

test("thinning: what another tab wrote last stays, also beside many of mine", () => {
  const all = [{ at: 5000, tab: "b" }, ...Array.from({ length: 50 }, (_, i) => ({ at: 1000 + i * 100, tab: "a" }))];
  assert.ok(!thin.surplus(all, 6000).some((v) => v.tab === "b"));
});

/** A job as the page may hold it: every key there, figures in their ranges. */
function someJob(rnd) {
  const pick = (...xs) => xs[Math.floor(rnd() * xs.length)], figure = (a, b) => pick(Math.round(a + rnd() * (b - a)), Math.round((a + rnd() * (b - a)) * 100) / 100, a + rnd() * (b - a));
  const job = structuredClone(opened(JSON.stringify(pick(...samples))).job);
  job.name = pick("", "Reed cup", "Schüssel „groß“ <3> & \\ \"x\"", "一輪挿し \u2028", "a\tb");
  job.form.outer = [{ r: 0, z: 0 }, ...Array.from({ length: 3 + Math.floor(rnd() * 30) }, (_, i) => ({ r: figure(1, 90), z: figure(i * 5, i * 5 + 5), ...(rnd() < 0.5 ? { corner: true } : {}) }))];
  Object.assign(job.clay, { wall: figure(1, 9), slipDensity: figure(1.5, 1.9), dryingShrinkage: figure(0, 12) });
  job.form.section = pick({ kind: "round" }, { kind: "oval", ratio: figure(0.5, 0.9) }, { kind: "flutes", count: 12, depth: figure(1, 9) });
  job.mold.partingHeights = pick(null, [figure(2, 40)]);
  job.mold.spare = pick(null, { height: figure(10, 30) });
  job.casting.testCasts = pick([], [{ wall: figure(2, 4), minutes: figure(5, 20) }]);
  if (rnd() < 0.3) job.form.traced = { rms: figure(0, 1), max: figure(1, 2), errorBand: figure(0, 2), notSeen: [], contour: Array.from({ length: 40 }, () => [figure(0, 90), rnd() * 1e-9]) };
  return job;
}

test("what is saved opens as the same bytes: every sample, three hundred jobs at random", () => {
  for (const s of samples) {
    const text = canonical(opened(JSON.stringify(s)).job);
    assert.equal(canonical(opened(text).job), text, s.name);
  }
  const rnd = random(7);
  for (let i = 0; i < 300; i++) {
    const text = canonical(someJob(rnd)), a = opened(text);
    assert.equal(a.error, undefined, `${i}: ${a.error?.message}`);
    assert.equal(canonical(a.job), text, `job ${i}`);
  }
});

/** Every path of keys in a value: clay, clay.wall, clay.testCast.minutes … */
const paths = (v, at = []) => (v && typeof v === "object" && !Array.isArray(v) ? Object.entries(v).flatMap(([k, x]) => [[...at, k], ...paths(x, [...at, k])]) : []);

test("a job of the first version reads with any key but the outline left out, which then stands at its default", () => {
  const full = opened(JSON.stringify(samples[0])).job;
  const bare = opened(JSON.stringify({ form: { outer: full.form.outer } })).job;
  const get = (o, p) => p.reduce((x, k) => x?.[k], o);
  let tried = 0;
  for (const p of paths(full)) {
    if (p.join(".") === "form" || p.join(".") === "form.outer" || p[1] === "section") continue;
    const less = structuredClone(full);
    delete get(less, p.slice(0, -1))[p.at(-1)];
    const a = opened(JSON.stringify(less));
    assert.equal(a.error, undefined, `${p.join(".")}: ${a.error?.message}`);
    assert.deepEqual(get(a.job, p), get(bare, p), p.join("."));
    tried++;
  }
  assert.ok(tried > 40, `${tried}`);
});

test("a job of a newer version is said to be one, whatever new keys it has", () => {
  const a = opened(JSON.stringify({ ...opened(JSON.stringify(samples[0])).job, version: 2, firing: { schedule: [1, 2] } }));
  assert.equal(a.error.code, "newerVersion");
  assert.match(a.error.message, /newer page.*version 2/);
});

const open = (page, name, bytes) => page.locator("header input[type=file]").setInputFiles({ name, mimeType: "", buffer: Buffer.from(bytes) });
const said = (page) => page.locator(".toast p").innerText();
const name = (page) => page.locator("input.name").inputValue();
const text = canonical({ ...samples[2], name: "Reel bottle of two" });
const utf16 = (s, bom) => Buffer.concat([bom ? Buffer.from([0xff, 0xfe]) : Buffer.alloc(0), Buffer.from(s, "utf16le")]);

onPage("files of any encoding open; what is no job is explained, and the bench stays", async (page) => {
  for (const bytes of [utf16(text, true), utf16(text, false), utf16(text, true).swap16(), Buffer.from(`\ufeff${text}`)]) {
    await page.locator("input.name").fill("Other");
    await open(page, "notes.txt", bytes);
    await until(() => name(page), "Reel bottle of two");
  }
  await page.locator("input.name").fill("Mine");
  for (const [file, bytes, want] of [
    ["empty.json", "", /empty\.json is empty/], ["blank.json", "\n\n  \n", /is empty/],
    ["page.json", "<!DOCTYPE html>\n<html lang=en><title>Moldwright</title>", /is a web page, not a job/],
    ["pack.json", Buffer.from([0x50, 0x4b, 3, 4, 0, 0, 1, 2, 3]), /packed folder/],
    ["sheet.pdf", "%PDF-1.7\n%\u00ff\u00ff", /is a PDF/],
    ["cup.stl", "solid cup\nfacet normal 0 0 1\n outer loop\n", /is a mesh/],
    ["core.bin", Buffer.from(Array.from({ length: 900 }, (_, i) => (i * 73 + 11) % 256)), /no text that can be read/],
    ["glazes.txt", "a list of glazes", /words but no numbers/],
    ["half.json", '{"format":"moldwright-job","version":1,"na', /half\.json was not opened: .*cut short/],
    ["list.json", '{"format":"moldwright-job","version":1,"form":{"outer":{"r":1}}}', /form\.outer holds an object; it takes a list/],
  ]) {
    await open(page, file, bytes);
    await until(() => said(page), want);
    assert.equal(await name(page), "Mine");
  }
});

onPage("of a damaged job what can be read is offered, never silently, and is one step of undo", async (page) => {
  const was = await name(page), box = page.locator("dialog.damaged");
  const cut = text.slice(0, text.indexOf('"section"') - 30);
  await open(page, "cut.json", cut);
  await box.waitFor();
  const whole = opened(text).job.form.outer.length;
  const rows = Number(/(\d+) rows of its outline can be read/.exec(await box.innerText())[1]);
  assert.ok(rows >= 3 && rows <= whole);
  assert.match(await box.innerText(), /ends before the job does/);
  assert.equal(await box.locator(".silhouette").count(), 1);
  assert.equal(await name(page), was);
  await box.getByRole("button", { name: "Leave it" }).click();
  await box.waitFor({ state: "detached" });
  assert.equal(await name(page), was);
  await open(page, "badkey.json", text.replace('"name"', '"colour": "red",\n "name"'));
  await box.waitFor();
  assert.match(await box.innerText(), /colour is no key of a job; it was left out/);
  await box.getByRole("button", { name: "Put it on the bench" }).click();
  await until(() => name(page), "Reel bottle of two");
  await until(() => page.locator(".saved").innerText(), "Not saved to a file");
  await page.keyboard.press("Control+z");
  await until(() => name(page), was);
});

const versions = async (page) => {
  await page.getByRole("button", { name: "Versions" }).click();
  await page.locator("dialog.versions[open] .head").waitFor();
  const list = await page.locator("dialog.versions li").allInnerTexts();
  return list;
};
const shut = (page) => page.locator("dialog.versions").getByRole("button", { name: "Close" }).click();
const keptNow = (page) => page.evaluate(() => Object.keys(localStorage).filter((k) => k.startsWith("moldwright.kept.")).map((k) => JSON.parse(localStorage.getItem(k)).name));
/** Edits, and waits until the change is kept. */
const rename = async (page, to) => {
  await page.locator("input.name").fill(to);
  await page.locator("input.name").blur();
  await until(async () => (await keptNow(page)).includes(to), "true");
};

onPage("versions are kept, shown with outline, time and verdict, and one is taken back in one step", async (page) => {
  assert.deepEqual(await keptNow(page), [], "a first visit leaves nothing behind");
  await rename(page, "First");
  await page.getByLabel("Node 8, Height, mm").fill("150");
  await rename(page, "Second");
  const list = await versions(page);
  assert.ok(list.length >= 2, list.join("\n"));
  await until(() => page.locator("dialog.versions li").first().innerText(), /\d\d.\d\d[\s\S]*parts?[\s\S]*kg\.[\s\S]*as it stands on the bench/);
  assert.ok(await page.locator("dialog.versions li .silhouette path").count() >= 2 * list.length);
  await page.getByRole("button", { name: /^Take back First/ }).click();
  await until(() => name(page), "First");
  await until(() => said(page), /^Opened First, /);
  await page.keyboard.press("Control+z");
  await until(() => name(page), "Second");
});

onPage("a pot that was only looked at leaves nothing among the versions; one that was changed stays", async (page) => {
  const take = async (pot) => {
    await page.locator(`.shelf button[title="${pot}"]`).click();
    await until(() => name(page), pot);
  };
  await take("Quay dish");
  await until(async () => (await keptNow(page)).join(), "Quay dish");
  await take("Heron vase");
  await until(async () => (await keptNow(page)).join(), "Heron vase");
  await rename(page, "Heron vase, mine");
  await take("Skep pot");
  await until(async () => (await keptNow(page)).includes("Skep pot"), "true");
  assert.ok((await keptNow(page)).includes("Heron vase, mine"));
});

onPage("the mark: saved, only kept, nowhere; and it holds over a reload", async (page) => {
  const mark = () => page.locator(".saved").innerText();
  await rename(page, "Marked");
  await until(mark, "Not saved to a file");
  await downloaded(page, () => page.getByRole("button", { name: "Save" }).click());
  await until(mark, "Saved");
  await page.reload();
  await planned(page);
  await until(() => name(page), "Marked");
  await until(mark, "Saved");
});

onPage("no room: older versions make way, and the newest is kept", async (page) => {
  await page.evaluate(() => {
    const filler = "x".repeat(1024);
    for (let pot = 0; pot < 6; pot++) for (let i = 0; i < 3; i++) localStorage.setItem(`moldwright.kept.old${pot}.${(1000 + pot * 10 + i).toString(36)}.tab${pot}`, JSON.stringify({ text: "{}", name: `old ${pot} ${i}`, verdict: "", words: filler.repeat(200), saved: false, given: false }));
    let n = 0;
    for (let size = 1 << 20; size >= 64; size >>= 1) { try { for (;;) localStorage.setItem(`other.${n++}`, "y".repeat(size)); } catch { /* full at this size */ } }
  });
  await page.locator("input.name").fill("Last of all");
  await until(async () => (await keptNow(page)).includes("Last of all"), "true");
  const left = await keptNow(page);
  assert.ok(left.length < 19 && left.includes("old 5 2"), left.join());
  await until(() => page.locator(".saved").innerText(), "Not saved to a file");
});

onPage("two tabs: each keeps its own job over a reload, and each sees the other's versions", async (page, { context, seen }) => {
  await rename(page, "Of the first tab");
  const two = await context.newPage();
  await two.goto(address);
  await planned(two);
  await until(() => name(two), "Of the first tab");
  await rename(two, "Of the second tab");
  await rename(page, "Of the first tab, later");
  await rename(two, "Of the second tab, later");
  for (const [p, own] of [[page, "Of the first tab, later"], [two, "Of the second tab, later"]]) {
    await p.reload();
    await planned(p);
    await until(() => name(p), own);
  }
  await versions(page);
  for (const want of [/Of the second tab, later/, /from another tab or visit/]) await until(() => page.locator("dialog.versions").innerText(), want);
  await rename(two, "Seen at once");
  await until(async () => (await page.locator("dialog.versions").innerText()).includes("Seen at once"), "true");
  seen.requests.length = 0; // the page itself, again
});

onPage("a copy of a tab takes a name of its own, so that neither loses its job", async (page, { context, seen }) => {
  await rename(page, "Copied");
  const session = await page.evaluate(() => sessionStorage.getItem("moldwright.tab"));
  const two = await context.newPage();
  await two.addInitScript((s) => { sessionStorage.setItem("moldwright.tab", sessionStorage.getItem("moldwright.tab") ?? s); }, session);
  await two.goto(address);
  await planned(two);
  await rename(two, "The copy");
  await until(() => page.evaluate((s) => sessionStorage.getItem("moldwright.tab") !== s, session), "true");
  await rename(page, "The original");
  await two.reload();
  await planned(two);
  await until(() => name(two), "The copy");
  await page.reload();
  await planned(page);
  await until(() => name(page), "The original");
  seen.requests.length = 0;
});

/** Whether the browser asks before the page is left; it is not left. */
async function asks(page) {
  await page.locator("h1").click(); // a browser asks only where somebody has touched the page
  return page.evaluate(() => !dispatchEvent(new Event("beforeunload", { cancelable: true })));
}

const blocked = () => {
  for (const which of ["localStorage", "sessionStorage"]) Object.defineProperty(window, which, { get() { throw new DOMException("blocked", "SecurityError"); } });
};

onPage("leaving asks nothing while the browser keeps the job, and asks while a picture is traced", async (page) => {
  assert.equal(await asks(page), false);
  await rename(page, "Kept here");
  assert.equal(await asks(page), false);
  await outlined(page, "vase-400.jpg");
  assert.equal(await asks(page), true);
});

onPage("storage blocked: the page works, says so, marks the job, and asks before work is lost", async (page) => {
  await until(() => said(page), /keeps nothing between visits/);
  assert.equal(await asks(page), false, "an untouched sample can be had again");
  await page.locator("input.name").fill("Mine alone");
  await until(() => page.locator(".saved").innerText(), "Not saved anywhere");
  assert.equal(await asks(page), true);
  await versions(page);
  await shut(page);
  await downloaded(page, () => page.getByRole("button", { name: "Save" }).click());
  await until(() => page.locator(".saved").innerText(), "Saved");
  assert.equal(await asks(page), false);
  await page.locator("#tab-parts").click();
  await until(() => verdict(page), /parts?/);
}, { init: blocked });

/** A set of one question with choices, as its file. */
const oneCount = () => ({ name: "set.json", mimeType: "", buffer: Buffer.from(JSON.stringify({ format: "moldwright-class", version: 1, title: "Monday bench", questions: [core.ask("exercise", { do: "pose", kind: "count", difficulty: 1, seed: 7 }).ref] })) });
const another = async (context) => {
  const two = await context.newPage();
  await two.goto(address);
  await planned(two);
  return two;
};
const panel = async (page) => {
  await page.locator("#tab-class").click();
  await page.locator(".class-kinds").waitFor();
};

onPage("a set that an earlier page kept under one key for all is taken up, once", async (page, { seen }) => {
  await page.evaluate((text) => localStorage.setItem("moldwright.class", text), oneCount().buffer.toString());
  await page.reload();
  await planned(page);
  const stored = () => page.evaluate(() => [localStorage.getItem("moldwright.class"), Object.keys(localStorage).filter((k) => k.startsWith("moldwright.class.")).length]);
  assert.deepEqual(await stored(), [null, 1]);
  await panel(page);
  await page.getByText("Sets kept in this browser").click();
  await page.getByRole("button", { name: /^Take back Monday bench/ }).click();
  await until(() => page.getByLabel("Title", { exact: true }).inputValue(), "Monday bench");
  await page.reload();
  await planned(page);
  assert.equal((await stored())[0], null);
  seen.requests.length = 0; // the page itself, again
});

onPage("two tabs: two students at the same exercise keep their answers apart, over a reload and a closed tab", async (page, { context, seen }) => {
  const begin = async (p, student) => {
    await p.locator("header input[type=file]").setInputFiles(oneCount());
    await p.getByLabel("Your name").fill(student);
    await p.getByRole("button", { name: "Begin", exact: true }).click();
    await p.locator(".choice-answer input").first().waitFor();
  };
  const answer = (p, i) => p.locator(".choice-answer").first().locator("input").nth(i).check();
  const given = (p) => p.locator(".choice-answer").first().locator("input").evaluateAll((all) => all.findIndex((o) => o.checked));
  const two = await another(context);
  await begin(page, "Ada Reed");
  await begin(two, "Bo Fen");
  await answer(page, 0);
  await answer(two, 1);
  await answer(page, 2);
  for (const [p, own] of [[page, 2], [two, 1]]) {
    await p.reload();
    await p.locator(".choice-answer input").first().waitFor();
    await until(() => given(p), String(own));
  }
  await two.close();
  await page.getByRole("button", { name: "Leave the exercise" }).click();
  await panel(page);
  await page.getByText("Other exercises kept in this browser").click();
  await page.getByRole("button", { name: "Go on with “Monday bench”" }).and(page.locator(":has(+ .hint:text('Bo Fen'))")).click();
  await page.locator(".choice-answer input").first().waitFor();
  await until(() => given(page), "1");
  seen.requests.length = 0; // the page itself, again
});

onPage("two tabs: each teacher's tab keeps its own set; a reload of the teacher's tab stays out of the student's exercise", async (page, { context, seen }) => {
  const draw = async (p, n) => {
    const was = await p.locator(".set-list li").count();
    for (let i = 1; i <= n; i++) {
      await p.getByRole("button", { name: /^Add \d questions?$/ }).click();
      await until(() => p.locator(".set-list li").count(), String(was + 3 * i));
    }
  };
  const two = await another(context);
  await panel(page);
  await panel(two);
  await draw(page, 1);
  await draw(two, 2);
  await page.getByLabel("Title", { exact: true }).fill("Of the first tab");
  await two.getByLabel("Title", { exact: true }).fill("Of the second tab");
  await draw(page, 2);
  for (const [p, title, n] of [[page, "Of the first tab", 9], [two, "Of the second tab", 6]]) {
    await p.reload();
    await planned(p);
    await panel(p);
    await until(() => p.locator(".set-list li").count(), String(n));
    await until(() => p.getByLabel("Title", { exact: true }).inputValue(), title);
  }
  const student = await another(context);
  await student.locator("header input[type=file]").setInputFiles(oneCount());
  await student.getByLabel("Your name").fill("Ada Reed");
  await student.getByRole("button", { name: "Begin", exact: true }).click();
  await student.locator(".choice-answer input").first().waitFor();
  await page.reload();
  await planned(page);
  assert.equal(await page.locator("main.exercise").count(), 0);
  seen.requests.length = 0;
});

onPage("a set that is left for a new one can be taken back, after a reload too, and loses neither", async (page, { seen }) => {
  const title = page.getByLabel("Title", { exact: true });
  await panel(page);
  await page.getByRole("button", { name: /^Add \d questions?$/ }).click();
  await page.locator(".set-list li").first().waitFor();
  await title.fill("First of all");
  await page.getByRole("button", { name: "Begin a new set" }).click();
  await until(() => page.locator(".set-list li").count(), "0");
  await page.reload();
  await planned(page);
  await panel(page);
  assert.equal(await page.locator(".set-list li").count(), 0, "the new set is the one that is gone on with");
  await page.getByRole("button", { name: /^Add \d questions?$/ }).click();
  await page.locator(".set-list li").first().waitFor();
  await title.fill("Another");
  await page.getByText("Sets kept in this browser").click();
  await page.getByRole("button", { name: /^Take back First of all/ }).click();
  await until(() => title.inputValue(), "First of all");
  await page.reload();
  await planned(page);
  await panel(page);
  await until(() => title.inputValue(), "First of all");
  await page.getByText("Sets kept in this browser").click();
  await page.getByRole("button", { name: /^Take back Another/ }).waitFor();
  seen.requests.length = 0;
});

onPage("a copy of a teacher's tab takes a name of its own, so that neither loses its set", async (page, { context, seen }) => {
  const title = (p) => p.getByLabel("Title", { exact: true });
  await panel(page);
  await page.getByRole("button", { name: /^Add \d questions?$/ }).click();
  await page.locator(".set-list li").first().waitFor();
  await title(page).fill("Copied");
  const session = await page.evaluate(() => sessionStorage.getItem("moldwright.tab"));
  const two = await context.newPage();
  await two.addInitScript((s) => { sessionStorage.setItem("moldwright.tab", sessionStorage.getItem("moldwright.tab") ?? s); }, session);
  await two.goto(address);
  await planned(two);
  await panel(two);
  await title(two).fill("The copy");
  await until(() => page.evaluate((s) => sessionStorage.getItem("moldwright.tab") !== s, session), "true");
  await title(page).fill("The original");
  for (const [p, own] of [[page, "The original"], [two, "The copy"]]) {
    await p.reload();
    await planned(p);
    await panel(p);
    await until(() => title(p).inputValue(), own);
  }
  seen.requests.length = 0;
});
