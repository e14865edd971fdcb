// A test on a fresh page: no error and no request may be left behind.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { after, before, test } from "node:test";
import { idle, launch, open } from "./browser.mjs";

const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
const rules = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"];

/** Gives onPage(name, work, options) for one file of tests, with one browser. */
export function pages() {
  let browser;
  before(async () => { browser = await launch(); });
  after(async () => { await browser.close(); });
  return (name, work, options) => test(name, async () => {
    const p = await open(browser, options);
    try {
      await work(p.page, p);
      assert.deepEqual(p.seen.errors, []);
      assert.deepEqual(p.seen.requests, []);
    } finally {
      await p.context.close();
    }
  });
}

/** Opens a panel and waits until it stands. */
export async function tab(page, name) {
  await page.locator(`#tab-${name}`).click();
  await page.locator(`#tabpanel[aria-labelledby="tab-${name}"] > *`).first().waitFor();
}

/** The value beside a figure's label, in the panel: "17.8 min". */
export async function figure(page, label) {
  const line = page.locator("#tabpanel .figures:not(.glance) > div").filter({ has: page.locator("dt", { hasText: new RegExp(`^${label}$`) }) }).first();
  const text = await line.locator("dd").first().evaluate((dd) => dd.firstChild.textContent);
  return text.replaceAll("\u00a0", " ");
}

/** A number field of the panel, filled and left. */
export async function fill(page, label, text) {
  const field = page.getByLabel(label, { exact: true });
  await field.fill(text);
  await field.blur();
}

/** Fails with what axe finds on the page as it stands, once nothing is under way and
 *  nothing moves; the page must have been opened with bypassCSP. */
export async function accessible(page, what) {
  await idle(page);
  await page.evaluate(() => Promise.all(document.getAnimations().filter((a) => a.effect?.getTiming().iterations !== Infinity).map((a) => a.finished.catch(() => {}))));
  if (!await page.evaluate(() => "axe" in window)) await page.evaluate(axe);
  // a button that the bar at the foot of a narrow page covers where the page happens to stand scrolls clear of it
  const still = await page.addStyleTag({ content: ".below { position: static !important }" });
  const found = await page.evaluate(async (runOnly) => (await window.axe.run(document, { runOnly })).violations
    .map((v) => `${v.id}: ${v.nodes.map((n) => n.target.join(" ") + " " + n.failureSummary).join(" | ")}`), rules);
  await still.evaluate((e) => e.remove());
  assert.deepEqual(found, [], what);
}
