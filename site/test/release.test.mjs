// The Release panel in real Chromium: robustness beside the verdict, the pull
// that is looked at, the stretched view, findings that show their place, the
// nearest form taken and taken back, small changes, what the clay forgives.
import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { launch, open, planned, until, verdict } from "./browser.mjs";
import { tab } from "./onpage.mjs";

let browser;
before(async () => { browser = await launch(); });
after(async () => { await browser.close(); });

const corner = ([r, z]) => ({ r, z, corner: true });

/** A test on a pot of its own, in mold size, on the Release panel; no error may be left behind. */
function onPot(name, outer, work, { job = {}, ...options } = {}) {
  test(name, async () => {
    const p = await open(browser, options);
    try {
      if (outer) {
        const text = JSON.stringify({ format: "moldwright-job", version: 1, name: "Trial", form: { size: "mold", outer: outer.map((n) => (Array.isArray(n) ? corner(n) : n)) }, ...job });
        await p.page.locator("input[type=file]").first().setInputFiles({ name: "trial.json", mimeType: "application/json", buffer: Buffer.from(text) });
        await p.page.waitForFunction(() => document.querySelector("input.name").value === "Trial");
        await planned(p.page);
      }
      await tab(p.page, "release");
      await work(p.page);
      assert.deepEqual(p.seen.errors, []);
      assert.deepEqual(p.seen.requests, []);
    } finally {
      await p.context.close();
    }
  });
}

const text = async (locator) => (await locator.innerText()).replaceAll("\u00a0", " ");
// A wall that leans out but for a belly of 0.3 mm at half height.
const subtle = [[0, 0], [40, 0], { r: 40, z: 40 }, { r: 40.3, z: 60 }, { r: 40, z: 80 }, [44, 120]];

onPot("the verdict line says by how much radii may be wrong, and what would come then", [[0, 0], [30, 0], [60, 50]], async (page) => {
  assert.match(await text(page.locator(".robust")), /^True while every radius is right to \d+\.\d\d mm; beyond that, the wall might (rub|catch) (at|between) /);
});

onPot("parted at height 0 reads as parted at the foot", [[0, 3], [32, 3], [34, 0], [38, 0], { r: 48, z: 40 }, { r: 29, z: 110 }, { r: 25, z: 130 }, [36, 170]], async (page) => {
  assert.match(await verdict(page), /^Three parts, parted at the foot\. Clear\./);
});

onPot("the pull is chosen for a part or for the whole wall, and the drawing follows", null, async (page) => {
  const high = () => page.locator(".draft .rim").evaluate((e) => e.getBBox().height);
  const part = await high();
  await page.getByRole("button", { name: "Whole wall, down" }).click();
  await until(() => page.getByRole("button", { name: "Whole wall, down" }).getAttribute("aria-pressed"), "true");
  await until(async () => await high() > 1.5 * part, "true"); // the lower part holds about half
  await until(() => text(page.locator(".panel")), /catches by up to 25\.\d\d mm/);
  await until(async () => await page.locator(".marks .caught").count() > 0, "true");
  await page.getByRole("button", { name: "Whole wall, sideways" }).click();
  await until(() => text(page.locator(".panel")), /catches by up to 3\.43 mm/); // the recess in the foot
});

onPot("a belly of 0.3 mm is found, and shown stretched", subtle, async (page) => {
  assert.doesNotMatch(await verdict(page), /^One part\. Clear/);
  await page.getByRole("button", { name: "Whole wall, down" }).click();
  await until(() => text(page.locator(".panel")), /catches by up to 0\.3\d mm/);
  const width = () => page.locator(".stretched .draft .rim").evaluate((e) => e.getBBox().width);
  await page.getByRole("button", { name: "×5" }).click();
  await page.getByLabel("measured from").selectOption("an upright at the widest place");
  await planned(page); // drawn about the other line
  const five = await width();
  await page.getByRole("button", { name: "×25" }).click();
  await until(async () => Math.round((await width()) / five * 10) / 10, "5");
  await until(() => text(page.locator(".panel")), /0\.00 mm outside at 120\.0 mm, and 4\.\d\d mm inside/);
});

onPot("a finding shows its place on the drawing, and hides it again", null, async (page) => {
  const show = page.getByRole("button", { name: /^Show on the drawing: The seam at/ });
  await show.click();
  await page.locator(".place").waitFor();
  await show.click();
  await until(() => page.locator(".place").count(), "0");
});

onPot("the nearest form is a ghost line with its change; taking it is one step of undo", subtle, async (page) => {
  const take = page.getByRole("button", { name: "Take this form: in one part" });
  await take.waitFor();
  assert.match(await text(page.locator(".near")), /Largest change \d+\.\d\d mm, \d+\.\d mm above the foot; \d+\.\d\d mm over the whole/);
  const was = await verdict(page);
  await page.getByRole("group", { name: "Ghost line" }).getByRole("button", { name: "one part" }).click();
  await page.locator(".ghosts .ghost").waitFor();
  await take.click();
  await until(() => verdict(page), /^One part\. Clear\./);
  await until(() => text(page.locator(".near")), /In one part\s+It lets go as it is\./);
  await page.getByRole("button", { name: "Undo", exact: true }).first().click();
  await until(() => page.locator(".toast").innerText(), /nearest form taken, in one part/);
  await until(() => verdict(page), was);
});

onPot("small changes are found when asked for, and one makes the pot save a part", [[0, 0], [40, 0], [40, 40], [60, 110]], async (page) => {
  const was = await verdict(page);
  await page.getByRole("button", { name: "Look for small changes" }).click();
  await page.getByRole("button", { name: "Make this change" }).first().click();
  await until(async () => (await verdict(page)) !== was, "true");
  assert.match(await verdict(page), /^One part\. Clear\./);
});

// A groove that catches by 0.4 mm at a radius of 50: 1.5 % of shrinkage is 0.75 mm.
onPot("what the clay forgives is said in mm", [[0, 0], [50, 0], [50, 30], [49.6, 32], [52, 60]], async (page) => {
  await until(() => text(page.locator(".panel")), /catches by up to 0\.40 mm/);
  assert.match(await text(page.locator(".panel")), /The clay forgives all 0\.40 mm; only the rigid positive catches\./);
}, { job: { mold: { scheme: "one" } } });

// A shoulder that rises to 80 mm and dips to 70 before the neck. What lies under
// its roof above the dip is the triangle (45,70) (40,80) (30,70) turned about the
// axis: 75 mm2 by 2 pi 38.33 mm, 18.06 ml (theorem of Pappus).
onPot("air and slip that are held are told and drawn", [[0, 0], [40, 0], [50, 60], [40, 80], [30, 70], [28, 110]], async (page) => {
  await until(() => text(page.locator(".panel")), /Air stays under the roof when slip is poured in: 18\.1 ml, between 70\.0 and 80\.0 mm/);
  assert.match(await text(page.locator(".panel")), /Turned over, the cast keeps \d+\.\d ml of slip/);
  for (const what of ["air", "slip"]) await until(() => page.locator(`.held.${what} rect`).count(), "1");
});

onPot("the part that lets go worst is looked at first", [[0, 0], [30, 0], { r: 50, z: 40 }, { r: 30, z: 80 }, [45, 110]], async (page) => {
  await until(() => page.getByRole("group", { name: "Pull", exact: true }).getByRole("button", { name: "Upper part" }).getAttribute("aria-pressed"), "true");
  assert.match(await text(page.locator(".panel")), /catches by up to 15\.00 mm .*; the wall at 110\.0 mm is in the way\. The clay forgives some of it: \d+\.\d\d mm remain/);
}, { job: { mold: { scheme: "two" } } });
