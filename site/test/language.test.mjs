// The language of the page: which one a first visit gets, that a change is at
// once and loses nothing, and how numbers are written and read in each.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";
import { address, downloaded, planned, until, verdict } from "./browser.mjs";
import { fill, pages, tab } from "./onpage.mjs";

const onPage = pages();
const speak = async (page, l) => { await page.locator(".language select").selectOption(l); await planned(page); };
const lang = (page) => page.locator("html").getAttribute("lang");

for (const [locale, want] of [["de-AT", "de"], ["fr-CA", "fr"], ["es-419", "es"], ["en-GB", "en"], ["nl-NL", "en"]]) {
  onPage(`a first visit from ${locale} is in ${want}`, async (page) => {
    assert.equal(await lang(page), want);
    assert.equal(await page.locator(".language select").inputValue(), want);
    assert.match(await verdict(page), want === "en" ? /\d\.\d mm/ : /\d,\d mm/);
  }, { locale });
}

onPage("the switch names each language by itself, is labelled, and its choice outlasts a visit", async (page) => {
  assert.deepEqual(await page.locator(".language option").allInnerTexts(), ["English", "Deutsch", "Français", "Español"]);
  await page.getByRole("combobox", { name: "Sprache" }).selectOption("fr");
  await until(() => lang(page), "fr");
  await page.reload();
  await planned(page);
  assert.equal(await lang(page), "fr");
  assert.match(await verdict(page), /\d,\d mm/);
}, { locale: "de-DE" });

onPage("without storage the language changes as well", async (page) => {
  await speak(page, "es");
  assert.equal(await lang(page), "es");
  assert.match(await verdict(page), /\d,\d mm/);
}, { locale: "en-US", init: () => { Object.defineProperty(window, "localStorage", { get() { throw new Error("refused"); } }); } });

onPage("a change of language keeps the job, the steps, the node and the panel", async (page) => {
  await tab(page, "casting");
  await fill(page, "Consistency", "75");
  await planned(page);
  await page.locator(".nodebar button").first().click();
  const bar = page.locator(".nodebar b");
  await bar.waitFor();
  const node = await bar.innerText();
  await speak(page, "de");
  assert.equal(await bar.innerText(), node.replace("Node", "Knoten"));
  assert.equal(await page.locator("#tab-casting").getAttribute("aria-selected"), "true");
  await speak(page, "en");
  const undo = page.locator(".tools button").first();
  assert.equal(await undo.getAttribute("title"), "Undo: consistency changed");
  await speak(page, "fr");
  await undo.click();
  await planned(page);
  await speak(page, "en");
  await until(() => page.getByLabel("Consistency", { exact: true }).inputValue(), "70");
}, { locale: "en-US" });

onPage("numbers have the sign of the language, and both signs are read in each", async (page) => {
  for (const [l, sign] of [["en", "."], ["de", ","], ["fr", ","], ["es", ","]]) {
    await speak(page, l);
    await tab(page, "release");
    const field = page.locator('#tabpanel input[inputmode="decimal"]').first();
    for (const typed of ["2,5", "2.5"]) {
      await field.fill(typed);
      await field.blur();
      await planned(page);
      await until(() => field.inputValue(), `2${sign}5`);
    }
    await tab(page, "form");
    await until(() => page.locator("#tabpanel").innerText(), new RegExp(`124\\${sign}0 mm`));
  }
}, { locale: "en-US" });

onPage("from 10 000 on a narrow space parts the thousands, in every language", async (page) => {
  // A large block needs tens of kilograms; the batches are weighed in whole grams.
  await tab(page, "tooling");
  await fill(page, "Plaster, least wall", "150");
  await fill(page, "Plaster, base", "150");
  await planned(page);
  await tab(page, "casting");
  for (const l of ["en", "de"]) {
    await speak(page, l);
    const cells = await page.locator("#tabpanel tfoot td").evaluateAll((all) => all.map((td) => td.textContent));
    assert.ok(cells.some((c) => /^\d{2,3}\u202f\d{3}\u00a0g$/.test(c)), JSON.stringify(cells));
  }
}, { locale: "en-US" });

onPage("coordinates as text keep the point, so that any program reads them", async (page) => {
  await tab(page, "form");
  const { path } = await downloaded(page, () => page.getByRole("button", { name: "Coordinates as text" }).click());
  await speak(page, "de");
  const again = await downloaded(page, () => page.locator("#tabpanel button", { hasText: /Coordinates as text|Koordinaten/ }).click());
  assert.equal(readFileSync(again.path, "utf8"), readFileSync(path, "utf8"));
}, { locale: "en-US" });

/** In every question of a size, whatever its numbers are. */
const sizeAsked = { en: /How long|What is|By how many/, de: /Wie lang|Wie groß|wie viel/ };

onPage("codes and files of the class are the same in every language; questions are not", async (page) => {
  await tab(page, "class");
  for (const kind of await page.locator(".class-kinds input").all()) await kind.uncheck();
  await page.locator(".class-kinds label", { hasText: "True size" }).locator("input").check();
  await page.getByRole("button", { name: "Add 1 question" }).click();
  const code = page.locator(".set-list .code").first(), asked = page.locator(".class-look .asked-text");
  await code.waitFor();
  const was = await code.innerText();
  assert.match(await asked.innerText(), sizeAsked.en);
  const save = async () => readFileSync((await downloaded(page, () => page.locator("#tabpanel .save-set").click())).path, "utf8");
  const text = await save();
  await speak(page, "de");
  await until(() => asked.innerText(), sizeAsked.de);
  assert.equal(await code.innerText(), was);
  assert.equal(await save(), text);
}, { locale: "en-US" });

onPage("in an exercise a change of language keeps the answer, the try and the hint, and says them anew", async (page) => {
  await tab(page, "class");
  for (const kind of await page.locator(".class-kinds input").all()) await kind.uncheck();
  await page.locator(".class-kinds label", { hasText: "True size" }).locator("input").check();
  await page.getByRole("button", { name: "Add 1 question" }).click();
  await page.getByRole("button", { name: "Try it as a student" }).click();
  await page.getByLabel("Your name").fill("Wren");
  await page.getByRole("button", { name: "Begin", exact: true }).click();
  await page.locator(".number-answer input").fill("12.5");
  await page.locator(".number-answer select").selectOption("mm");
  await page.getByRole("button", { name: "Check", exact: true }).click();
  await page.locator(".mark-line").waitFor();
  await page.getByRole("button", { name: /^Hint 1/ }).click();
  await page.locator(".hint-help").waitFor();
  const mark = await page.locator(".mark-line").first().getAttribute("class");
  await page.locator(".language select").selectOption("de");
  await until(() => page.locator(".asked-text").innerText(), sizeAsked.de);
  await until(() => page.locator(".number-answer input").inputValue(), "12.5");
  assert.equal(await page.locator(".mark-line").first().getAttribute("class"), mark);
  assert.equal(await page.locator(".hint-help").count(), 1);
  assert.equal(await lang(page), "de");
}, { locale: "en-US" });

test("the page says what it needs to those without JavaScript", () => {
  assert.match(readFileSync(new URL(address), "utf8"), /<noscript><p class="noscript" lang="en">/);
});
