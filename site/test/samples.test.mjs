// The sample pots: invented, each planned by the core as its line says, among
// them every way to part a mold; and how the page offers them.
import assert from "node:assert/strict";
import { readdirSync, readFileSync } from "node:fs";
import { test } from "node:test";
import { startCore } from "../tools/core.mjs";
import { until, verdict } from "./browser.mjs";
import { pages, tab } from "./onpage.mjs";

const onPage = pages();
const core = await startCore();
const dir = new URL("../samples/", import.meta.url);
const pots = readdirSync(dir).map((f) => JSON.parse(readFileSync(new URL(f, dir), "utf8")));

/** What each is there to show: scheme, verdict, and more. */
const shows = {
  "Harbour jar": ["two", "clear"],
  "Reed beaker": ["one", "clear"],
  "Quay dish": ["core", "clear", (p, j) => j.form.inner.length > 2 && p.order[0] === "core" && p.flow.drains === null],
  "Skep pot": ["two", "clear", (p, j) => j.form.outer.at(-1).r === 0 && p.drawing.opening.length > 0],
  "Reed-cut cup": ["one", "clear", (p, j) => j.form.section.kind === "flutes"],
  "Slate lid": ["one", "clear", (p) => p.cautions.some((c) => /opens downward/.test(c))],
  "Sand amphora": ["sides2", "clear"],
  "Heron vase": ["sides2+lower", "clear"],
  "Skiff vase": ["sides2+lower", "clear", (p, j) => j.form.section.kind === "oval"],
  "Cone buoy": ["sides2+upper", "clear"],
  "Trivet vase": ["sides3+lower", "clear"],
  "Hail beaker": ["sides3+lower", "clear", (p, j) => j.form.section.dimples.around > 0],
  "Reel bottle": ["sides2+lower+upper", "clear"],
  "Dovetail dish": ["one", "catches", (p) => p.traps.length === 1],
};

test("a sample for each way to part a mold, and no other", () => {
  assert.deepEqual(pots.map((p) => p.name).sort(), Object.keys(shows).sort());
});

for (const pot of pots) {
  test(`${pot.name} is planned as it says, drains, and its figures are finite`, () => {
    const { job } = core.ask("read", { kind: "job", text: JSON.stringify(pot) });
    const plan = core.ask("plan", { job });
    assert.equal(plan.error, undefined);
    const [scheme, verdictWord, more] = shows[pot.name];
    const chosen = plan.schemes.find((s) => s.id === plan.chosen);
    assert.deepEqual([plan.chosen, chosen.verdict], [scheme, verdictWord]);
    assert.ok(!more || more(plan, job));
    assert.ok((plan.flow.drains ?? job.form.inner) && plan.flow.air.length === 0, "drains fully and fills without air");
    for (const r of core.ask("figures", { job }).rows) assert.ok(Number.isFinite(r.value), r.key);
  });
}

onPage("a first visit shows the shelf; one touch puts a pot on the bench, undo brings the first back", async (page) => {
  const shelf = page.locator(".shelf");
  assert.equal(await shelf.getByRole("button", { name: /:/ }).count(), pots.length);
  assert.match(await shelf.innerText(), /Harbour jar/);
  await shelf.getByRole("button", { name: /^Heron vase/ }).click();
  await until(() => page.locator("input.name").inputValue(), "Heron vase");
  await until(() => verdict(page), /^Three parts/);
  await until(() => shelf.locator("[aria-pressed=true]").count(), "1");
  await until(() => shelf.innerText(), /A waist/);
  await page.keyboard.press("Control+z");
  await until(() => page.locator("input.name").inputValue(), "Harbour jar");
});

onPage("the shelf is put away for good, and does not come back on the next visit", async (page) => {
  await page.getByRole("button", { name: "Put the shelf away" }).click();
  await until(() => page.locator(".shelf").count(), "0");
  await tab(page, "parts");
  await tab(page, "form");
  assert.equal(await page.locator(".shelf").count(), 0);
  await page.locator("input.name").fill("Mine");
  await page.reload();
  await until(() => verdict(page), /parts?/);
  assert.equal(await page.locator(".shelf").count(), 0);
});

onPage("the window of samples opens and closes by keyboard, and says what each shows", async (page) => {
  const button = page.getByRole("button", { name: "Sample pots" });
  await button.focus();
  await page.keyboard.press("Enter");
  const box = page.locator("dialog[open]");
  await box.waitFor();
  assert.equal(await box.locator("li").count(), pots.length);
  for (const t of await box.locator("li").allInnerTexts()) assert.match(t.trim(), /\n.+\.$/);
  await page.keyboard.press("Escape");
  await until(() => page.locator("dialog[open]").count(), "0");
  await until(() => page.evaluate(() => document.activeElement.textContent), "Sample pots");
  await page.keyboard.press("Enter");
  await box.getByRole("button", { name: /^Reel bottle/ }).focus();
  await page.keyboard.press("Enter");
  await until(() => verdict(page), /^Four parts/);
});

onPage("a window that is opened again in the moment it closes keeps what it shows", async (page) => {
  await page.getByRole("button", { name: "Sample pots" }).click();
  await page.locator("dialog[open]").waitFor();
  // the event of the closing comes after the second opening
  await page.evaluate(() => new Promise((done) => {
    const box = document.querySelector("dialog[open]");
    box.addEventListener("close", () => setTimeout(done), { once: true });
    box.close();
    document.querySelector("[data-point=samples]").click();
  }));
  assert.equal(await page.locator("dialog[open] li").count(), pots.length);
});

onPage("320 px: the shelf stands in rows, its pots are 44 px wide", async (page) => {
  const [wide, room] = await page.evaluate(() => [document.documentElement.scrollWidth, document.documentElement.clientWidth]);
  assert.ok(wide <= room, `${wide} > ${room}`);
  for (const b of await page.locator(".shelf li button").all()) assert.ok((await b.boundingBox()).width >= 44);
}, { width: 320, height: 740, hasTouch: true, isMobile: true });
