// The whole job of a potter, a teacher and a student by keyboard alone: every
// step goes by Tab, arrows, letters, Enter, Space and Escape from where the
// keyboard stands, and the page must have seen no pointer at the end. What is
// typed as an answer comes from the core's key.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { planned, until, verdict } from "./browser.mjs";
import { pages } from "./onpage.mjs";

const onPage = pages();
const watch = () => { for (const e of ["pointerdown", "mousedown", "touchstart"]) addEventListener(e, () => { window.pointed = true; }, true); };

/** Two hands on the keys of a page. */
function hands(page) {
  const key = (k) => page.keyboard.press(k);
  const at = () => page.evaluate(() => {
    const e = document.activeElement, clean = (t) => (t ?? "").replace(/\s+/g, " ").trim();
    return [e.getAttribute("aria-label"), [...(e.labels ?? [])].map((l) => l.textContent).join(" "), e.labels?.length ? "" : e.textContent].map(clean).filter(Boolean).join(" | ");
  });
  /** Goes on by a key until the thing of that name has the keyboard. */
  const to = async (want, by = "Tab", most = 160) => {
    for (let i = 0; i < most; i++) {
      await key(by);
      if (want.test(await at())) return;
    }
    assert.fail(`no way by ${by} to ${want}, now at ${await at()}`);
  };
  return {
    key, at, to,
    type: (t) => page.keyboard.type(t),
    /** Goes to a field and puts a text in place of what stands there. */
    async fill(want, text, by) { await to(want, by); await key("Control+a"); await page.keyboard.type(text); },
    async press(want, by) { await to(want, by); await key("Enter"); },
    async panel(name, from) {
      if (await at() !== from) await to(new RegExp(`^${from}$`), "Shift+Tab");
      for (let i = 0; i < 7 && await at() !== name; i++) await key("ArrowRight");
      assert.equal(await at(), name);
      await until(() => page.locator("[role=tab][aria-selected=true]").innerText(), name);
    },
    async downloaded(want, by) {
      await to(want, by);
      const [d] = await Promise.all([page.waitForEvent("download"), key("Enter")]);
      return { name: d.suggestedFilename(), bytes: readFileSync(await d.path()) };
    },
    /** Comes to a field for files, for which the browser itself has a window, and gives it one. */
    async choose(want, file, by) {
      await to(want, by);
      await page.locator("input[type=file]:focus").setInputFiles(file);
    },
    unpointed: async () => assert.equal(await page.evaluate(() => window.pointed), undefined, "no pointer was used"),
  };
}
const file = (name, bytes) => ({ name, mimeType: "application/json", buffer: Buffer.from(bytes) });

onPage("a potter by keyboard alone: rows, a node, a seam, prints, casting, sheets, saved and opened again, a version taken back", async (page) => {
  const h = hands(page);
  await h.fill(/^Name of the pot/, "Key jar");
  await h.press(/^Type or paste rows/);
  await h.to(/^Type or paste rows/);
  await h.type("0 0\n30 0\n45 60\n38 100");
  await h.to(/^The rows are in/);
  await h.type("m");
  await until(() => page.getByLabel("The rows are in").inputValue(), "mm");
  await h.press(/^Use these rows/);
  await until(() => verdict(page), /^Two parts, parted 6\d\.\d mm.*Clear/);
  await h.to(/^Node 3 of 4|^Select node 3/, "Shift+Tab");
  const r = () => page.getByLabel("Node 3, Radius, mm").inputValue().then(Number);
  const was = await r();
  await h.key("ArrowRight");
  await until(async () => await r() > was, "true");
  await h.key("Control+z");
  await until(r, String(was));
  await planned(page);
  await h.to(/^Form$/);
  await h.panel("Parts", "Form");
  await h.to(/^Parting height/);
  await h.key("Control+a");
  await h.type("50");
  await h.key("Tab");
  await until(() => verdict(page), /parted 50\.0 mm/);
  await h.key("Control+z");
  await until(() => verdict(page), /parted 6\d\.\d mm.*Clear/);
  await h.panel("Release", "Parts");
  await h.press(/Whole wall, down/);
  await h.panel("Tooling", "Release");
  const kit = await h.downloaded(/^All pieces \(3MF\)/);
  assert.equal(kit.bytes.subarray(0, 2).toString(), "PK");
  await h.panel("Casting", "Tooling");
  await h.fill(/^Wall of the cast, wet/, "5");
  await h.key("Tab");
  await h.panel("Sheets", "Casting");
  await page.locator(".pages img").first().waitFor();
  const sheet = await h.downloaded(/^Download PDF/);
  assert.equal(sheet.bytes.subarray(0, 5).toString(), "%PDF-");
  const saved = await h.downloaded(/^Save$/, "Shift+Tab");
  const job = JSON.parse(saved.bytes);
  assert.deepEqual([job.name, job.clay.wall, job.form.outer.length], ["Key jar", 5, 4]);
  await h.fill(/^Name of the pot/, "Spoiled", "Shift+Tab");
  await h.choose(/^Open/, file(saved.name, saved.bytes));
  await until(() => page.locator("input.name").inputValue(), "Key jar");
  await h.press(/^Versions/, "Shift+Tab");
  await page.locator("dialog.versions[open]").waitFor();
  await h.press(/^Take back Spoiled/);
  await until(() => page.locator("input.name").inputValue(), "Spoiled");
  await h.press(/^Versions/, "Shift+Tab");
  await page.locator("dialog.versions[open]").waitFor();
  await h.key("Escape");
  await page.locator("dialog.versions[open]").waitFor({ state: "detached" });
  assert.match(await h.at(), /^Versions/, "the keyboard is where it was");
  await h.unpointed();
}, { init: watch });

/** Answers the open question with what the key says, in its own controls. */
async function answer(page, h, key, pose) {
  for (const field of pose.answer) {
    if (field.type === "choice") {
      const id = key.choices[field.id], words = (f) => field.options.find((o) => o.id === f).words;
      const group = page.locator(".choice-answer").filter({ has: page.locator("legend", { hasText: field.words }) });
      await until(async () => { await h.key("Tab"); return group.evaluate((g) => g.contains(document.activeElement)); }, "true");
      await h.key("Space");
      for (let i = 0; i < field.options.length && await group.getByLabel(words(id), { exact: true }).isChecked() === false; i++) await h.key("ArrowDown");
      assert.ok(await group.getByLabel(words(id), { exact: true }).isChecked(), words(id));
    } else if (field.type === "number") {
      await until(async () => { await h.key("Tab"); return page.evaluate(() => document.activeElement.closest(".number-answer") !== null && document.activeElement.tagName === "INPUT"); }, "true");
      await h.key("Control+a");
      await h.type(`${key.value}${key.unit ? ` ${key.unit}` : ""}`);
    } else if (field.type === "job") {
      for (const [i, n] of key.job.form.outer.entries()) {
        if (Math.abs(n.r - pose.job.form.outer[i].r) < 0.001) continue;
        await h.to(/^Node to change/);
        await h.key("Home");
        for (let k = 0; k < i; k++) await h.key("ArrowDown");
        await until(() => page.getByLabel("Node to change").inputValue(), String(i));
        await h.fill(/^Radius/, String(n.r));
        await h.to(/^Node to change/, "Shift+Tab");
        await h.key("Shift+Tab");
      }
    }
  }
}

onPage("a teacher and a student by keyboard alone: six more kinds of question set, answered, handed in and collected", async (page, { context, seen }) => {
  const h = hands(page), kinds = ["count", "pull", "draft", "size", "drain", "save"];
  const ask = async (request) => JSON.parse(await page.evaluate(async (r) => (await window.moldwrightPage.core.ask("exercise", r)).reply, request));
  const posed = [];
  for (const kind of kinds) {
    for (let seed = 1; ; seed++) { // of those that change the form, one whose nearest form has the same nodes
      const pose = await ask({ do: "pose", kind, difficulty: 1, seed }), { answer: key } = await ask({ do: "solve", ...pose.ref, key: true });
      if (key.job && key.job.form.outer.length !== pose.job.form.outer.length) continue;
      posed.push({ pose, key });
      break;
    }
  }
  await h.to(/^Form$/);
  await h.panel("Class", "Form");
  await h.press(/^Add by code/);
  for (const [i, { pose }] of posed.entries()) {
    await h.to(/^Code of a question/, i ? "Shift+Tab" : "Tab");
    await h.type(pose.ref.code);
    await h.key("Enter");
    await until(() => page.locator(".set-list li").count(), String(i + 1));
    await until(() => page.getByLabel("Code of a question").inputValue(), "");
    await h.to(/^Add by code/, "Shift+Tab");
    await h.key("Tab");
    await h.key("Tab");
  }
  await h.press(/^Question 2: earlier/);
  await until(async () => (await page.locator(".set-list .code").allInnerTexts())[0], posed[1].pose.code);
  await h.press(/^Question 1: later/, "Shift+Tab");
  await until(async () => (await page.locator(".set-list .code").allInnerTexts())[0], posed[0].pose.code);
  await h.fill(/^Title/, "Keys");
  const set = await h.downloaded(/^Save as file/);
  assert.match(set.name, /^keys\.moldwright-class\.json$/);

  const desk = await context.newPage();
  await desk.goto(page.url());
  await planned(desk);
  const s = hands(desk);
  await s.choose(/^Open/, file(set.name, set.bytes));
  await desk.getByLabel("Your name").waitFor();
  await s.to(/^Your name/);
  await s.type("Ada Reed");
  await s.key("Enter");
  for (const [i, { pose, key }] of posed.entries()) {
    await desk.getByText(`Question ${i + 1} of 6`).waitFor();
    await desk.locator("main.exercise .plane svg").waitFor();
    await answer(desk, s, key, pose);
    await s.press(/^Check/);
    await until(() => desk.locator(".feedback [role=status]").innerText(), /^Right/);
    await s.press(i < 5 ? /^Next question/ : /^To your sheet/);
  }
  await until(() => desk.locator(".score").innerText(), "6 of 6 points");
  const sheet = await s.downloaded(/^Save the sheet as file/);
  await s.press(/^Leave the exercise/, "Shift+Tab");
  await until(() => verdict(desk), /parts?/);
  await s.unpointed();

  await h.choose(/^Open result files/, file(sheet.name, sheet.bytes));
  await until(() => page.locator(".results [role=status]").innerText(), /^1 sheet/);
  const csv = await h.downloaded(/^Download as CSV/);
  assert.match(csv.bytes.toString(), /\r\nAda Reed,Keys,.*,6\.0,6,6,0,/);
  await h.unpointed();
  seen.requests.length = 0; // the page itself, again
}, { init: watch });
