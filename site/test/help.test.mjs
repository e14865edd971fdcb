// Help in place in real Chromium: a word asked by mouse, keyboard and touch, its
// card and its picture, where it stands in the job, and the list of all words.
import assert from "node:assert/strict";
import { idle, planned, until, verdict } from "./browser.mjs";
import { accessible, fill, pages, tab } from "./onpage.mjs";

const onPage = pages();

const card = (page) => page.locator(".help-card");
/** The card, once it stands still. */
async function stands(page) {
  await card(page).waitFor();
  await card(page).evaluate((el) => Promise.all(el.getAnimations().map((a) => a.finished)));
}
const shut = (page) => card(page).waitFor({ state: "hidden" });
const focused = (page) => page.evaluate(() => document.activeElement.dataset.term ?? document.activeElement.className);
const text = async (at) => (await at.innerText()).replaceAll("\u00a0", " ");

onPage("a word is asked with the mouse; its card stands near and closes by a press elsewhere or on the word", async (page) => {
  await tab(page, "parts");
  const word = page.locator("#tabpanel [data-term=seam]").first();
  await page.getByRole("button", { name: /^What is “Parting height”|^What is “seam”/i }).first().waitFor();
  await word.click();
  await card(page).waitFor();
  assert.match(await text(card(page)), /^Seam/i);
  await stands(page);
  const at = /parted ([\d.]+ mm above the foot)/.exec(await verdict(page))[1];
  assert.ok((await text(card(page).locator(".here"))).includes(at), "where it stands is what the verdict says");
  const a = await card(page).boundingBox(), b = await word.boundingBox();
  assert.ok(Math.abs(a.y - (b.y + b.height)) < 20 || Math.abs(b.y - (a.y + a.height)) < 20, "beside the word");
  assert.ok(a.x >= 0 && a.x + a.width <= 1280 && a.y >= 0 && a.y + a.height <= 800, "within the window");
  await word.click();
  await shut(page);
  await word.click();
  await card(page).waitFor();
  await page.mouse.click(300, 60);
  await shut(page);
});

onPage("a slow press on the word of an open card closes it for good; a word asked in the moment another closes is shown", async (page) => {
  await tab(page, "parts");
  const word = page.locator("#tabpanel [data-term=seam]").first();
  await word.click();
  await stands(page);
  await word.hover();
  await page.mouse.down();
  await page.evaluate(() => { // the page is drawn anew while the button is down
    const name = document.querySelector("input.name");
    name.value = "Slow hand";
    name.dispatchEvent(new InputEvent("input", { bubbles: true }));
  });
  await idle(page);
  await page.mouse.up();
  await shut(page);
  await idle(page);
  assert.equal(await card(page).isVisible(), false);
  await word.click();
  await stands(page);
  const name = await page.evaluate(() => {
    const other = [...document.querySelectorAll("#tabpanel [data-term]")].find((e) => e.dataset.term !== "seam");
    document.querySelector(".help-card").hidePopover();
    other.click(); // before the event of the closing
    return other.dataset.term;
  });
  await until(() => card(page).locator("svg.sketch").innerHTML(), new RegExp(`sketch-${name}`));
  await idle(page);
  assert.equal(await card(page).isVisible(), true);
});

onPage("by keyboard: Enter asks, the focus goes into the card, Escape gives it back", async (page) => {
  await tab(page, "release");
  const word = page.locator("#tabpanel [data-term=draft]").first();
  await word.focus();
  await page.keyboard.press("Enter");
  await card(page).waitFor();
  await until(() => focused(page), "help-card");
  assert.equal(await card(page).getAttribute("role"), "dialog");
  assert.equal(await card(page).evaluate((el) => document.getElementById(el.getAttribute("aria-labelledby")).textContent), "draft");
  await page.keyboard.press("Escape");
  await shut(page);
  await until(() => focused(page), "draft");
  await page.keyboard.press("Enter");
  await card(page).getByRole("button", { name: "Close" }).press("Enter");
  await shut(page);
  await until(() => focused(page), "draft");
});

onPage("on a phone the card is a sheet at the foot and leaves the word in sight", async (page) => {
  await tab(page, "tooling");
  const word = page.locator("#tabpanel [data-term=spare]");
  await word.scrollIntoViewIfNeeded();
  await word.tap();
  await stands(page);
  const a = await card(page).boundingBox(), b = await word.boundingBox();
  assert.equal(Math.round(a.y + a.height), 700);
  assert.equal(Math.round(a.width), 320);
  assert.ok(b.y + b.height <= a.y && b.y >= 0, `the word at ${b.y} stands above the sheet at ${a.y}`);
  assert.equal(await page.evaluate(() => document.documentElement.scrollWidth), 320);
  await page.touchscreen.tap(160, 30);
  await shut(page);
}, { width: 320, height: 700, hasTouch: true });

onPage("where a word stands follows the job", async (page) => {
  await tab(page, "tooling");
  await page.locator("#tabpanel [data-term=clearance]").click();
  assert.equal(await text(card(page).locator(".here")), "On the bench: 0.30 mm");
  await page.keyboard.press("Escape");
  await fill(page, "Clearance", "0.45");
  await planned(page);
  await page.locator("#tabpanel [data-term=clearance]").click();
  await until(() => text(card(page).locator(".here")), "On the bench: 0.45 mm");
});

onPage("a label still belongs to its field, and a heading keeps its name", async (page) => {
  await tab(page, "casting");
  await page.getByText("Consistency", { exact: true }).click();
  assert.equal(await page.evaluate(() => document.activeElement.tagName), "INPUT");
  await page.getByRole("heading", { name: "Slip and the time it stays in", exact: true }).waitFor();
  await tab(page, "tooling");
  const natches = page.getByRole("checkbox", { name: /^Natches/ });
  assert.equal(await natches.isChecked(), true);
  await page.locator("#tabpanel [data-term=natch]").click();
  await card(page).waitFor();
  await page.keyboard.press("Escape");
  assert.equal(await natches.isChecked(), true, "asking turns nothing");
});

onPage("all words stand in one window with their pictures, and can be sought", async (page) => {
  await tab(page, "tooling");
  await page.locator("#tabpanel [data-term=collar]").click();
  await card(page).getByRole("button", { name: "All words" }).click();
  const list = page.getByRole("dialog", { name: "Help" });
  await until(() => page.evaluate(() => document.activeElement.id), "word-collar");
  const n = await list.locator(".words li").count();
  assert.ok(n >= 35, `${n} words`);
  assert.equal(await list.locator(".words svg.sketch").count(), n);
  const same = await list.locator("svg.sketch").evaluateAll((all) => all.length - new Set(all.map((s) => s.innerHTML)).size);
  assert.equal(same, 0, "no two words share a picture");
  await list.getByLabel("Find a word").fill("undercut");
  await until(() => list.locator("#word-catch").count(), "1");
  assert.ok(await list.locator(".words li").count() < n);
  await list.getByLabel("Find a word").fill("xyzzy");
  await until(() => list.getByRole("status").innerText(), /No word/);
  await page.keyboard.press("Escape");
  await list.waitFor({ state: "hidden" });
});

onPage("a printed page leaves the help out", async (page) => {
  await tab(page, "tooling");
  await page.locator("#tabpanel [data-term=collar]").click();
  await card(page).waitFor();
  await page.emulateMedia({ media: "print" });
  await shut(page);
  assert.equal(await page.locator("#tabpanel .ask-mark").first().isVisible(), false);
});

for (const colorScheme of ["light", "dark"]) {
  onPage(`axe finds nothing in the card and the window of words, ${colorScheme}`, async (page) => {
    await tab(page, "release");
    await page.locator("#tabpanel [data-term=catch]").first().click();
    await stands(page);
    await accessible(page, "card");
    await card(page).getByRole("button", { name: "All words" }).click();
    await page.locator(".help-window .words").first().waitFor();
    await accessible(page, "window");
  }, { colorScheme, bypassCSP: true });
}
