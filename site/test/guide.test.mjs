// The guided first job in real Chromium: offered once, done with the real
// controls and noticed by itself, left at any step with the pot given back.
import assert from "node:assert/strict";
import { downloaded, planned, until, verdict } from "./browser.mjs";
import { accessible, fill, pages, tab } from "./onpage.mjs";

const onPage = pages();
const bar = (page) => page.getByRole("region", { name: "A first job" });
const status = async (page) => (await bar(page).getByRole("status").innerText()).replaceAll("\u00a0", " ");
const press = (page, name) => bar(page).getByRole("button", { name }).click();
const begin = (page) => page.getByRole("button", { name: "Start the first job" }).click();
const done = (page, n) => until(() => status(page), new RegExp(`Step ${n} of 8[\\s\\S]*Done`));

/** Takes the beaker from the sample pots. */
async function beaker(page) {
  await page.locator("[data-point=samples]").click();
  await page.locator("dialog.samples[open] button", { hasText: "Reed beaker" }).click();
  await planned(page);
}

/** Draws the rim in by so many mm with the keys. */
async function inward(page, mm) {
  await page.locator(".drawing .node.rim").focus();
  for (let i = 0; i < mm; i++) await page.keyboard.press("Shift+ArrowLeft");
  await planned(page);
}

async function clearOf(page) {
  const a = await bar(page).boundingBox(), b = await page.locator("[data-pointed]").boundingBox();
  assert.ok(b, "something is pointed at");
  assert.ok(b.y + b.height <= a.y + 1 || b.y >= a.y + a.height - 1, `the bar at ${a.y} covers what it points at, ${b.y} to ${b.y + b.height}`);
}

onPage("from the offer to the end, each step done with the real control", async (page) => {
  await begin(page);
  await until(() => status(page), /Step 1 of 8/);
  await beaker(page);
  await done(page, 1);
  await press(page, "Next step");
  await inward(page, 9);
  await done(page, 2);
  assert.doesNotMatch(await verdict(page), /^One part/);
  await press(page, "Next step");
  await page.locator("#tab-release[data-pointed]").waitFor();
  await tab(page, "release");
  await page.locator("[data-point=near-one][data-pointed]").click();
  await done(page, 3);
  assert.match(await verdict(page), /^One part\. Clear\./);
  await press(page, "Next step");
  await tab(page, "parts");
  await page.locator("#apart").focus();
  await page.keyboard.press("End");
  await done(page, 4);
  await press(page, "Next step");
  await tab(page, "tooling");
  await done(page, 5);
  await press(page, "Next step");
  await tab(page, "casting");
  await fill(page, "Wall of the cast, wet", "5");
  await done(page, 6);
  await press(page, "Next step");
  await tab(page, "sheets");
  const pdf = page.getByRole("button", { name: "Download PDF" });
  await until(() => pdf.isEnabled(), "true");
  assert.match((await downloaded(page, () => pdf.click())).name, /\.pdf$/);
  await done(page, 7);
  await press(page, "Next step");
  assert.match((await downloaded(page, () => page.locator("[data-point=save][data-pointed]").click())).name, /\.moldwright\.json$/);
  await done(page, 8);
  await press(page, "Finish");
  await until(() => status(page), /whole job/);
  await press(page, "Bring back Harbour jar");
  await bar(page).waitFor({ state: "detached" });
  await until(() => page.locator("input.name").inputValue(), "Harbour jar");
  await page.getByRole("button", { name: /^Undo/ }).first().click();
  await until(() => page.locator("input.name").inputValue(), "Reed beaker");
});

onPage("the offer is refused once, and the first job is found again in Help", async (page) => {
  await page.getByRole("button", { name: "Not now" }).click();
  await page.locator(".offer").waitFor({ state: "detached" });
  await page.getByRole("button", { name: "Help", exact: true }).click();
  await begin(page);
  await until(() => status(page), /Step 1 of 8/);
  await press(page, "Leave");
  await bar(page).waitFor({ state: "detached" });
  assert.equal(await page.locator(".next").count(), 1);
  assert.equal(await page.locator("input.name").inputValue(), "Harbour jar");
});

onPage("left half way: the pot that stood there comes back, or what is there stays", async (page) => {
  await fill(page, "When it leaves the mold", "2");
  await planned(page);
  await begin(page);
  await beaker(page);
  await press(page, "Next step");
  await inward(page, 2);
  await press(page, "Leave");
  await press(page, "Bring back Harbour jar");
  await planned(page);
  assert.equal(await page.getByLabel("When it leaves the mold").inputValue(), "2");
});

onPage("the second step also takes a drag, and the third an undo", async (page) => {
  await begin(page);
  await beaker(page);
  await done(page, 1);
  await press(page, "Next step");
  const b = await page.locator(".drawing .node.rim .hit").boundingBox(), x = b.x + b.width / 2, y = b.y + b.height / 2;
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x - 40, y, { steps: 5 });
  await page.mouse.up();
  await done(page, 2);
  await press(page, "Next step");
  await page.keyboard.press("Control+z");
  await done(page, 3);
});

onPage("at 320 px the bar covers nothing that it points at, and every step can be skipped", async (page) => {
  await begin(page);
  await beaker(page);
  await done(page, 1);
  await press(page, "Next step");
  for (const n of [2, 4, 5, 6, 7, 8]) { // once the second is skipped there is nothing to free
    await until(() => status(page), new RegExp(`Step ${n} of 8`));
    await press(page, "Show me where");
    await clearOf(page);
    assert.equal(await page.evaluate(() => document.documentElement.scrollWidth), 320);
    await press(page, "Skip this step");
  }
  await until(() => status(page), /whole job/);
  await press(page, "Keep what is on the bench");
  await bar(page).waitFor({ state: "detached" });
}, { width: 320, height: 640, hasTouch: true, reducedMotion: "reduce" });

for (const colorScheme of ["light", "dark"]) {
  onPage(`axe finds nothing with the first job under way, ${colorScheme}`, async (page) => {
    await begin(page);
    await beaker(page);
    await done(page, 1);
    await accessible(page);
  }, { colorScheme, bypassCSP: true });
}
