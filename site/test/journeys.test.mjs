// Whole journeys of a potter, a teacher and a student, at desk and phone width,
// in Chromium and, where it is installed, in Firefox, both from file://. The
// steps are the same in both; what is read is what stands on the screen.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { after, before, test } from "node:test";
import * as chromium from "./chromium-driver.mjs";
import * as firefox from "./firefox-driver.mjs";
import { Person } from "./person.mjs";

const MISSING = "Firefox is not installed (Debian: apt-get install firefox-esr)";
const rows = "0 0\n30 0\n45 60\n38 100";

/** Rows, verdict, a change, parts, tooling, casting, sheets, save, open again. */
async function potter(page, how) {
  const me = new Person(page, how);
  const put = async (text) => {
    if (await page.evaluate(() => document.querySelector("details.rows").open) === false) await me.press("Type or paste rows");
    await page.evaluate(() => { const t = document.querySelector("details.rows textarea"); t.focus(); t.select(); });
    await page.type(text);
    await page.evaluate(() => { const s = [...document.querySelectorAll("details.rows select")][0]; s.value = "mm"; s.dispatchEvent(new Event("change", { bubbles: true })); });
    await me.press("Use these rows");
  };
  await page.open();
  await me.verdict(/^Two parts.*Clear/);
  await put(rows);
  await me.verdict(/^Two parts, parted 6\d\.\d mm.*Clear/);
  await me.type("Name of the pot", how.touch ? "Pocket jar" : "Desk jar");
  await me.open("Release");
  await me.said(/Draft of the wall/);
  await me.open("Parts");
  await me.said(/Why not fewer/);
  await me.open("Form");
  await me.type("Node 4, Radius, mm", "52");
  await me.verdict(/^One part.*Clear/);
  await me.open("Tooling");
  const kit = await page.downloaded(() => me.press("All pieces (3MF)"));
  assert.equal(readFileSync(kit).subarray(0, 2).toString(), "PK");
  await me.open("Casting");
  await me.type("Wall of the cast, wet", "5");
  await me.said(/burns/);
  await me.open("Sheets");
  await me.until(() => document.querySelector(".pages img")?.naturalWidth > 100, true);
  const sheet = await page.downloaded(() => me.press("Download PDF"));
  assert.equal(readFileSync(sheet).subarray(0, 5).toString(), "%PDF-");
  const was = await me.verdict(/parts?/);
  const saved = await page.downloaded(() => me.press("Save"));
  await me.until(() => document.querySelector(".saved").textContent, "Saved");
  assert.match(saved, /(pocket|desk)-jar\.moldwright.*\.json$/);
  const job = JSON.parse(readFileSync(saved, "utf8"));
  assert.deepEqual([job.clay.wall, job.form.outer[3].r], [5, 52]);
  await page.open("?again");
  await page.evaluate(() => { for (const k of Object.keys(localStorage)) localStorage.removeItem(k); });
  await page.files("header input[type=file]", saved);
  await me.verdict(was);
  await me.until(() => document.querySelector("input.name").value, job.name);
  const again = await page.downloaded(() => me.press("Save"));
  assert.deepEqual(readFileSync(again), readFileSync(saved));
}

/** A photo, its length, the form taken from it, and the verdict of it. */
async function tracer(page, how) {
  const me = new Person(page, how);
  await page.open();
  await me.verdict(/parts?/);
  await page.files("header input[type=file]", fileURLToPath(new URL("../../testdata/photos/vase-400.jpg", import.meta.url)));
  await me.until(() => (document.querySelector(".overlay .found")?.getAttribute("d")?.length ?? 0) > 100, true);
  await me.type("Its length", "150");
  await me.press("Take this form");
  await me.said(/1(49|50)\.\d mm high/);
  await me.verdict(/parts?/);
}

/** A set is made and handed out by link, answered, handed in, and collected. */
async function school(page, how, student, studentHow) {
  const teacher = new Person(page, how);
  await page.open();
  await teacher.verdict(/parts?/);
  await teacher.open("Class");
  await teacher.press("Add 3 questions");
  await teacher.until(() => document.querySelectorAll(".set-list li").length, 3);
  await page.evaluate(() => { Object.defineProperty(navigator, "clipboard", { value: { writeText: (s) => { window.copied = s; return Promise.resolve(); } }, configurable: true }); });
  await teacher.press("Copy link for the class");
  const hash = (await teacher.until(() => window.copied ?? "", /#class=/)).replace(/^[^#]*/, "");
  const me = new Person(student, studentHow);
  await student.open(hash);
  await me.type("Your name", "Mara Reed");
  await me.press("Begin");
  for (let i = 0; i < 3; i++) {
    await me.said(new RegExp(`Question ${i + 1} of 3`));
    if (i === 0) await me.press("It catches nowhere", "radio");
    await me.press("Check");
    await me.press(i < 2 ? "Next question" : "To your sheet");
  }
  await me.said(/of 3 points/);
  const sheet = await student.downloaded(() => me.press("Save the sheet as file"));
  await page.files("header input[type=file]", sheet);
  await teacher.said(/Mara Reed/);
  const csv = await page.downloaded(() => teacher.press("Download as CSV"));
  assert.match(readFileSync(csv, "utf8"), /Mara Reed/);
}

/** The first steps by keyboard alone: nothing here touches a pointer. */
async function keyboard(page) {
  const me = new Person(page);
  await page.open();
  await me.verdict(/^Two parts/);
  const to = async (want) => {
    for (let i = 0; i < 90; i++) {
      await page.key("Tab");
      const at = await page.evaluate(() => { const e = document.activeElement; return `${e.getAttribute("aria-label") ?? ""}|${e.labels?.[0]?.innerText ?? ""}|${e.innerText ?? ""}`; });
      if (want.test(at)) return;
    }
    assert.fail(`Tab comes to nothing like ${want}`);
  };
  await to(/Select node 1|Node 1 of/);
  await to(/\|Form$/);
  await page.key("ArrowRight");
  await page.key("ArrowRight");
  await me.until(() => document.querySelector("[role=tab][aria-selected=true]").id, "tab-parts");
  await to(/Node|Choose for me|fewest/);
  await page.key("ArrowDown");
  await me.verdict(/^One part/);
  await page.key("Control+z");
  await me.verdict(/^Two parts/);
}

for (const [name, driver, present] of [["Chromium", chromium, true], ["Firefox", firefox, firefox.program !== null]]) {
  const skip = present ? false : MISSING;
  let browser;
  before(async () => { if (present) browser = await driver.start(); });
  after(async () => { await browser?.end(); });
  const journey = (title, size, work) => test(`${name}: ${title}`, { skip }, async () => {
    const page = await browser.page(size);
    try {
      await work(page);
      assert.deepEqual(page.errors, []);
    } finally {
      await page.end();
    }
  });
  const desk = { width: 1280, height: 800 }, phone = { width: 360, height: 740, touch: true };
  journey("a potter at a desk, from rows to sheets, saved and opened again", desk, (p) => potter(p, {}));
  journey("a potter with a phone, by touch", phone, (p) => potter(p, { touch: true }));
  journey("a potter with a photo", desk, (p) => tracer(p, {}));
  journey("a potter by keyboard alone", desk, keyboard);
  journey("a teacher at a desk and a student with a phone: set, link, answer, collect, CSV", desk, async (p) => {
    const student = await browser.page(phone);
    try {
      await school(p, {}, student, { touch: true });
      assert.deepEqual(student.errors, []);
    } finally {
      await student.end();
    }
  });
}
