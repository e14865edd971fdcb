// The page in real Chromium, from file://, as a person uses it: look at the
// sample, type, drag, read the verdict, download, reload, save and reopen, and
// go on after the worker dies.
import assert from "node:assert/strict";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { after, before, test } from "node:test";
import { address, downloaded, launch, open, planned, until, verdict } from "./browser.mjs";
import { pages, tab } from "./onpage.mjs";

let browser;
before(async () => { browser = await launch(); });
after(async () => { await browser.close(); });

const onPage = pages();

const rows = async (page, text, units = "mm") => {
  await tab(page, "form");
  const box = page.locator("details.rows");
  if ((await box.getAttribute("open")) === null) await box.locator("summary").click();
  await page.locator("details.rows textarea").fill(text);
  await page.getByLabel("The rows are in").selectOption(units);
  await page.getByRole("button", { name: "Use these rows" }).click();
};

test("the page carries a strict policy and nothing to fetch", () => {
  const html = readFileSync(new URL(address), "utf8");
  const csp = /http-equiv="Content-Security-Policy" content="([^"]*)"/.exec(html)[1];
  for (const rule of ["default-src 'none'", "connect-src 'none'", "worker-src blob:", "form-action 'none'"]) assert.ok(csp.includes(rule), rule);
  assert.ok(!csp.includes("unsafe-inline") && !csp.includes("'unsafe-eval'"), csp);
  assert.doesNotMatch(html.slice(0, html.indexOf('class="core"')), /<(script|link|img)[^>]+(src|href)="(?!data:)/);
});

onPage("a first visit opens on a sample pot, already planned", async (page) => {
  assert.equal(await page.locator("input.name").inputValue(), "Harbour jar");
  await until(() => verdict(page), /^(One|Two|Three|Four|Five) parts?.*(Clear|Rubs|Catches)\..* kg\.$/);
  assert.ok(await page.locator(".drawing .mold path").count() > 0);
  assert.equal(await page.locator(".next").count(), 1);
});

onPage("typed coordinates: an open bowl is one part, a sphere-like jar two at its equator", async (page) => {
  await rows(page, "0 0\n30 0\n60 50");
  await until(() => verdict(page), /^One part\. Clear\./);
  await rows(page, "r;z\n0;0\n20;0\n50,0;40,0\n20;80");
  await until(() => verdict(page), /^Two parts, parted 4\d\.\d mm above the foot\. Clear\./);
});

onPage("rows typed over a sample are a pot of one's own, not under the sample's name; they are told, and undo brings the sample back", async (page) => {
  await rows(page, "0 0\n30 0\n60 50");
  await planned(page);
  await until(() => page.locator("input.name").inputValue(), "My pot");
  await page.locator(".toast").getByRole("button", { name: "Undo" }).click();
  await until(() => page.locator("input.name").inputValue(), "Harbour jar");
  await page.locator("input.name").fill("Salt bowl");
  await rows(page, "0 0\n30 0\n61 50");
  await planned(page);
  assert.equal(await page.locator("input.name").inputValue(), "Salt bowl");
});

onPage("a panel begins at its top, wherever the one before was scrolled to", async (page) => {
  await page.locator("#tabpanel").evaluate((p) => { p.scrollTop = p.scrollHeight; });
  assert.ok(await page.locator("#tabpanel").evaluate((p) => p.scrollTop) > 200);
  await tab(page, "tooling");
  assert.equal(await page.locator("#tabpanel").evaluate((p) => p.scrollTop), 0);
});

onPage("at a desk only panels scroll, never the page itself", async (page) => {
  for (const name of ["form", "release", "parts", "tooling", "casting", "sheets", "class"]) {
    await tab(page, name);
    if (name === "class") await page.getByRole("button", { name: /Add \d questions/ }).click();
    await planned(page);
    assert.deepEqual(await page.evaluate(() => [document.documentElement.scrollHeight, document.querySelector(".panel").scrollHeight > document.querySelector(".panel").clientHeight]), [800, true], name);
  }
});

onPage("bad rows name their line and remedy, and lose nothing", async (page) => {
  const was = await verdict(page);
  const text = "0 0\n30 twelve\n60 50\nx y z";
  await rows(page, text);
  const faults = page.locator(".faults li");
  await faults.first().waitFor();
  assert.match(await faults.first().innerText(), /^Line 2: (?!Line)/, "the line is named once");
  assert.equal(await page.locator("details.rows textarea").inputValue(), text);
  await until(() => verdict(page), was);
});

onPage("the unit of rows is asked for, never guessed", async (page) => {
  const was = await verdict(page);
  await rows(page, "0 0\n3 0\n6 5", "");
  await until(() => page.locator(".faults").innerText(), /mm, cm or in/);
  await until(() => verdict(page), was);
  await page.getByLabel("The rows are in").selectOption("cm");
  await page.getByRole("button", { name: "Use these rows" }).click();
  await planned(page);
  await page.waitForFunction(() => document.querySelector('[aria-label="Node 3, Height, mm"]')?.value === "50");
});

onPage("rows are taken in the unit just chosen, though the page has not drawn it yet", async (page) => {
  await page.locator("details.rows summary").first().click();
  await page.locator("details.rows textarea").fill("0 0\n30 0\n45 60\n38 100");
  const use = page.getByRole("button", { name: "Use these rows" });
  await until(() => use.isEnabled(), "true");
  await page.getByLabel("The rows are in").evaluate((units) => {
    units.value = "mm";
    units.dispatchEvent(new Event("change", { bubbles: true }));
    [...document.querySelectorAll("details.rows button.primary")].at(-1).click(); // within the same frame
  });
  await until(() => page.locator(".node").count(), "4");
  assert.match(await verdict(page), /^Two parts, parted 6\d\.\d mm.*Clear/);
});

onPage("12,5 and 12.5 are the same number; a word is named under its field and kept", async (page) => {
  await page.locator("#tab-casting").click();
  const field = page.getByLabel("Wall of the cast, wet");
  const figures = async (text) => {
    await field.fill(text);
    await planned(page);
    return page.locator("#tabpanel .figures").first().innerText();
  };
  const comma = await figures("3,5");
  assert.notEqual(await figures("4"), comma);
  assert.equal(await figures("3.5"), comma);
  assert.equal(await figures("thick"), comma);
  assert.equal(await field.getAttribute("aria-invalid"), "true");
  await field.blur();
  assert.equal(await field.inputValue(), "thick");
});

onPage("a fault of the form is said in the verdict line, under its field, and undo heals it", async (page) => {
  const was = await verdict(page);
  const field = page.getByLabel("Node 4, Radius, mm");
  await field.fill("-5");
  await until(() => page.locator(".verdict.fault p").innerText(), /^No plan yet\./);
  await until(() => field.getAttribute("aria-describedby"), /./);
  const said = page.locator(`[id="${await field.getAttribute("aria-describedby")}"]`);
  assert.match(await page.locator(".verdict p").innerText(), new RegExp((await said.innerText()).slice(0, 20)));
  assert.equal(await page.locator(".drawing .mold").count(), 1);
  await field.blur();
  await page.getByRole("button", { name: "Undo", exact: true }).first().click();
  await until(() => verdict(page), was);
});

onPage("a node moves by pointer and by arrow keys, one step of undo each", async (page) => {
  const node = page.locator(".node").nth(5);
  const r = page.getByLabel("Node 6, Radius, mm");
  const start = Number(await r.inputValue());
  const box = await node.locator(".dot").boundingBox();
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
  await page.mouse.down();
  for (let i = 1; i <= 10; i++) await page.mouse.move(box.x + box.width / 2 + 2 * i, box.y + box.height / 2);
  await page.mouse.up();
  await until(async () => Number(await r.inputValue()) > start + 2, "true");
  await planned(page);
  const dragged = Number(await r.inputValue());
  await node.focus();
  for (let i = 0; i < 3; i++) await page.keyboard.press("ArrowRight");
  await page.keyboard.press("Shift+ArrowRight");
  await page.keyboard.press("Alt+ArrowRight");
  await until(() => r.inputValue(), String(Math.round((dragged + 1.31) * 100) / 100));
  await page.keyboard.press("Control+z");
  await until(() => r.inputValue(), String(dragged));
  await page.keyboard.press("Control+z");
  await until(() => r.inputValue(), String(start));
  await page.keyboard.press("Control+y");
  await until(() => r.inputValue(), String(dragged));
});

onPage("nodes are added, turned and removed by keyboard, and the table follows", async (page) => {
  const count = () => page.locator(".nodes-table tbody tr").count();
  const before = await count();
  await page.locator(".node").nth(4).focus();
  await page.keyboard.press("Insert");
  await until(count, String(before + 1));
  await page.locator(".node").nth(5).focus();
  await page.keyboard.press("Enter");
  await until(() => page.locator(".node").nth(5).getAttribute("aria-label"), /corner$/);
  await page.keyboard.press("Delete");
  await until(count, String(before));
});

onPage("schemes are listed with verdicts, and one can be taken", async (page) => {
  await page.locator("#tab-parts").click();
  const list = page.locator(".schemes li");
  await until(async () => await list.count() >= 3, "true");
  await list.filter({ hasText: "One part" }).locator("input").check();
  await until(() => verdict(page), /^One part\./);
});

onPage("sheets show a preview and download as PDF", async (page) => {
  await page.locator("#tab-sheets").click();
  await page.locator(".pages img").first().waitFor();
  await page.waitForFunction(() => document.querySelector(".pages img").naturalWidth > 100);
  const d = await downloaded(page, () => page.getByRole("button", { name: "Download PDF" }).click());
  assert.equal(readFileSync(d.path).subarray(0, 4).toString(), "%PDF");
  assert.match(d.name, /^harbour-jar-profile\.pdf$/);
});

onPage("a reload brings the job back", async (page) => {
  await rows(page, "0 0\n30 0\n60 50");
  await page.locator("input.name").fill("Reed cup");
  const was = await verdict(page);
  await page.reload();
  await until(() => verdict(page), was);
  await until(() => page.locator("input.name").inputValue(), "Reed cup");
});

/** Puts a text among the kept versions, as another visit would have left it. */
const leave = (page, text) => page.evaluate((t) => localStorage.setItem("moldwright.kept.pot1.zz.tab1", JSON.stringify({ text: t, name: "Left", verdict: "", words: "", saved: false, given: false })), text);

onPage("a kept job that no longer reads is told and stays among the versions, and a sample stands on the bench", async (page) => {
  const broken = '{"format":"moldwright-job","version":1,"form":{"outer":[]}}';
  await leave(page, broken);
  await page.reload();
  await until(() => page.locator(".toast p").innerText(), /\(Left\) does not read: .*stays among the versions/);
  await until(() => verdict(page), /parts?/);
  assert.equal(await page.evaluate(() => JSON.parse(localStorage.getItem("moldwright.kept.pot1.zz.tab1")).text), broken);
});

onPage("a kept job of an older page, with keys left out, is completed", async (page) => {
  const old = { format: "moldwright-job", version: 1, name: "Old bowl", form: { outer: [[0, 0], [30, 0], [60, 50]].map(([r, z]) => ({ r, z, corner: true })) } };
  await leave(page, JSON.stringify(old));
  await page.reload();
  await until(() => page.locator("input.name").inputValue(), "Old bowl");
  const d = await downloaded(page, () => page.getByRole("button", { name: "Save" }).click());
  const saved = JSON.parse(readFileSync(d.path, "utf8"));
  assert.ok(saved.clay.wall > 0 && saved.mold.scheme === "auto");
});

onPage("a saved job reopens, and saves again to the same bytes", async (page) => {
  await rows(page, "0 0\n30,25 0\n60 50");
  await planned(page);
  await page.locator("input.name").fill("Reed cup \u00fc");
  const save = () => downloaded(page, () => page.getByRole("button", { name: "Save" }).click());
  const one = await save();
  await until(() => page.locator(".saved").innerText(), "Saved");
  await page.locator("input.name").fill("Other");
  await until(() => page.locator(".saved").innerText(), "Not saved to a file");
  await page.locator("input[type=file]").setInputFiles(one.path);
  await page.waitForFunction(() => document.querySelector("input.name").value.startsWith("Reed cup"));
  await until(() => page.locator(".saved").innerText(), "Saved");
  const two = await save();
  assert.deepEqual(readFileSync(two.path), readFileSync(one.path));
});

onPage("a damaged file is explained and the bench stays as it is", async (page) => {
  const was = await verdict(page);
  await page.locator("input[type=file]").setInputFiles({ name: "half.json", mimeType: "application/json", buffer: Buffer.from('{"format":"moldwright-job","version":1,"na') });
  await until(() => page.locator(".toast p").innerText(), /half\.json was not opened/);
  await until(() => verdict(page), was);
});

onPage("a link carries the whole job", async (page, { context, seen }) => {
  await rows(page, "0 0\n30 0\n60 50");
  await page.locator("input.name").fill("Linked bowl");
  const was = await verdict(page);
  await page.evaluate(() => { navigator.clipboard.writeText = () => Promise.reject(new Error("no clipboard")); });
  await page.getByRole("button", { name: "Copy link" }).click();
  await page.waitForFunction(() => location.hash.startsWith("#job="));
  const there = await context.newPage();
  seen.requests.length = 0;
  await there.goto(page.url());
  await there.waitForFunction(() => document.querySelector("input.name").value === "Linked bowl");
  assert.equal(await verdict(there), was);
  seen.requests.length = 0; // the page itself, with its #
});

onPage("the worker dies: the page starts another and goes on", async (page) => {
  const was = await verdict(page);
  await page.evaluate(() => window.moldwrightPage.core.kill());
  await page.getByLabel("Node 8, Height, mm").fill("130");
  await until(() => page.locator(".figures").first().innerText(), /130\.0 mm high/);
  await page.getByRole("button", { name: "Undo", exact: true }).first().click();
  await until(() => verdict(page), was);
});

for (const width of [320, 360, 640]) {
  onPage(`${width} px: no sideways scroll on any panel`, async (page) => {
    for (const name of ["form", "release", "parts", "tooling", "casting", "sheets"]) {
      await tab(page, name);
      await planned(page);
      const [wide, room] = await page.evaluate(() => [document.documentElement.scrollWidth, document.documentElement.clientWidth]);
      assert.ok(wide <= room, `${name}: ${wide} > ${room}`);
    }
  }, { width, height: 740, hasTouch: true });
}

test("storage blocked: the page works and says what that means", async () => {
  const { context, page } = await open(browser);
  await page.addInitScript(() => {
    Object.defineProperty(window, "localStorage", { get() { throw new DOMException("blocked", "SecurityError"); } });
  });
  await page.reload();
  await until(() => page.locator(".toast p").innerText(), /keeps nothing between visits/);
  await until(() => verdict(page), /parts?/);
  await context.close();
});

test("the core goes to the worker piece by piece while the page is still read, and whole to another worker", async () => {
  const p = await open(browser, { init: () => {
    const Own = window.Worker;
    window.sent = [];
    window.Worker = class extends Own {
      constructor(...a) { super(...a); window.sent.push([]); }
      postMessage(m, ...rest) {
        if ("core" in m) window.sent.at(-1).push({ piece: m.core, state: document.readyState });
        return super.postMessage(m, ...rest);
      }
    };
  } });
  try {
    await p.page.evaluate(() => window.moldwrightPage.core.kill());
    await p.page.evaluate(() => window.moldwrightPage.core.ask("version", {})); // the new one answers
    const [first, second, ...none] = await p.page.evaluate(() => {
      const whole = [...document.querySelectorAll("script.core")].map((s) => s.textContent).join("");
      return window.sent.map((s) => ({ whole: s.map((m) => m.piece ?? "").join("") === whole, ends: s.map((m) => m.piece).lastIndexOf(null) === s.length - 1 && s.filter((m) => m.piece === null).length, pieces: s.length, began: s[0].state }));
    });
    assert.deepEqual(none, []);
    for (const s of [first, second]) assert.ok(s.whole && s.ends === 1 && s.pieces > 10, JSON.stringify(s));
    assert.equal(first.began, "loading");
  } finally {
    await p.context.close();
  }
});

test("a page whose packed core is damaged says that the core does not start", async () => {
  const html = readFileSync(fileURLToPath(address), "latin1"), at = html.lastIndexOf('class="core">') - 1000;
  const folder = mkdtempSync(join(tmpdir(), "moldwright-"));
  const context = await browser.newContext();
  try {
    // a sign that is never written, and one that stands for other bits
    for (const [sign, want] of [["&", /packed text is damaged/], [html[at] === "!" ? "#" : "!", /does not start/]]) {
      const file = join(folder, "damaged.html");
      writeFileSync(file, html.slice(0, at) + sign + html.slice(at + 1), "latin1");
      const page = await context.newPage();
      await page.goto(pathToFileURL(file).href);
      await until(() => page.locator("body").innerText(), want);
    }
  } finally {
    await context.close();
    rmSync(folder, { recursive: true });
  }
});
