// A test on a fresh page: no error and no request may be left behind.
import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { launch, open } from "./browser.mjs";

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
