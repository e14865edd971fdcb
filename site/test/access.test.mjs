// WCAG 2.2 AA as far as axe-core can tell, on every panel, in light and dark, at
// desktop and phone width.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { after, before, test } from "node:test";
import { launch, open } from "./browser.mjs";

const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
let browser;
before(async () => { browser = await launch(); });
after(async () => { await browser.close(); });

for (const colorScheme of ["light", "dark"]) {
  for (const width of [1280, 360]) {
    test(`axe finds nothing, ${colorScheme}, ${width} px`, async () => {
      const { context, page } = await open(browser, { width, colorScheme, bypassCSP: true });
      await page.evaluate(axe);
      for (const tab of ["form", "release", "parts", "tooling", "casting", "sheets"]) {
        await page.locator(`#tab-${tab}`).click();
        await page.waitForTimeout(200);
        const found = await page.evaluate(async () => {
          const r = await window.axe.run(document, { runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"] });
          return r.violations.map((v) => `${v.id}: ${v.nodes.map((n) => n.target.join(" ") + " " + n.failureSummary).join(" | ")}`);
        });
        assert.deepEqual(found, [], tab);
      }
      await context.close();
    });
  }
}
