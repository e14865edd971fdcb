// WCAG 2.2 AA as far as axe-core can tell, on every panel and in the windows that
// keep work, in light and dark, at desktop and phone width; and what a screen
// reader is told while somebody drags.
import assert from "node:assert/strict";
import { planned, until } from "./browser.mjs";
import { accessible, pages, tab } from "./onpage.mjs";

const onPage = pages();

/** Fails with what axe finds on the page, or where it scrolls sideways. */
async function clean(page, what) {
  await accessible(page, what);
  const [wide, room] = await page.evaluate(() => [document.documentElement.scrollWidth, document.documentElement.clientWidth]);
  assert.ok(wide <= room, `${what} scrolls sideways: ${wide} > ${room}`);
}

const damaged = '{"name":"Reed cup","colour":1,"form":{"outer":[{"r":0,"z":0},{"r":30,"z":0,"corner":true},{"r":45,"z":60},{"r":40,"z":9';

for (const colorScheme of ["light", "dark"]) {
  for (const width of [1280, 360]) {
    const options = { width, colorScheme, bypassCSP: true };
    onPage(`axe finds nothing on the panels, ${colorScheme}, ${width} px`, async (page) => {
      for (const name of ["form", "release", "parts", "tooling", "casting", "sheets"]) {
        await tab(page, name);
        await planned(page);
        await clean(page, name);
      }
    }, options);

    onPage(`axe finds nothing in the versions, a damaged file, a fault and a stopped plan, ${colorScheme}, ${width} px`, async (page) => {
      await page.getByLabel("Node 6, Radius, mm").fill("52");
      await page.locator("input.name").fill("Harbour jar, wider");
      await page.locator("input.name").blur();
      await page.waitForFunction(() => Object.keys(localStorage).some((k) => k.startsWith("moldwright.kept.")));
      await page.getByRole("button", { name: "Versions" }).click();
      await page.locator("dialog.versions[open] li").first().waitFor();
      await clean(page, "versions");
      await page.locator("dialog.versions").getByRole("button", { name: "Close" }).click();
      await page.locator("header input[type=file]").setInputFiles({ name: "kiln-shelf.json", mimeType: "", buffer: Buffer.from(damaged) });
      await page.locator("dialog.damaged[open]").waitFor();
      await clean(page, "damaged file");
      await page.getByRole("button", { name: "Leave it" }).click();
      await page.locator("dialog.damaged").waitFor({ state: "detached" });
      await page.getByLabel("Node 4, Radius, mm").fill("-5");
      await page.locator(".verdict.fault").waitFor();
      await clean(page, "a fault");
      await page.workers()[0].evaluate(() => {
        const { call } = globalThis.moldwright;
        globalThis.moldwright = { ...globalThis.moldwright, call(o, ...rest) { if (o === "plan") for (;;); return call(o, ...rest); } };
      });
      await page.getByLabel("Node 4, Radius, mm").fill("44");
      await page.locator(".underway").getByRole("button", { name: "Stop" }).click();
      await page.locator(".verdict").getByRole("button", { name: "Try again" }).waitFor();
      await clean(page, "a stopped plan");
    }, options);

    onPage(`axe finds nothing where sets and exercises are kept, ${colorScheme}, ${width} px`, async (page) => {
      await tab(page, "class");
      const add = page.getByRole("button", { name: /^Add \d questions?$/ });
      await add.click();
      await page.locator(".set-list li").first().waitFor();
      await page.getByRole("button", { name: "Begin a new set" }).click();
      await page.getByText("Sets kept in this browser").click();
      await page.getByRole("button", { name: /^Take back/ }).waitFor();
      await clean(page, "kept sets");
    }, options);
  }
}

onPage("a screen reader hears the verdict once a drag or a row of keys rests, not at every step of it", async (page) => {
  const status = page.locator(".verdict [role=status]");
  const shown = () => page.locator(".verdict p").textContent();
  await until(async () => await status.textContent() === await shown(), "true");
  await page.evaluate(() => {
    window.heard = [];
    window.seen = new Set();
    const v = document.querySelector(".verdict"), p = v.querySelector("p"), s = v.querySelector("[role=status]"), all = { subtree: true, childList: true, characterData: true };
    let since = 0;
    new MutationObserver(() => { window.seen.add(p.textContent); since = performance.now(); }).observe(p, all);
    new MutationObserver(() => { window.heard.push({ words: s.textContent, shown: p.textContent, rested: performance.now() - since }); }).observe(s, all);
  });
  const heard = () => page.evaluate(() => window.heard), seen = () => page.evaluate(() => window.seen.size);
  assert.equal(await page.locator(".verdict [aria-live], .verdict [role=alert]").count(), 0, "nothing else in it speaks");
  const node = await page.locator(".node").nth(5).boundingBox();
  const x = node.x + node.width / 2, y = node.y + node.height / 2;
  await page.mouse.move(x, y);
  await page.mouse.down();
  for (let i = 1; await seen() < 5; i++) {
    assert.ok(i < 60, "the drag moves the verdict");
    await page.mouse.move(x, y - 2 * i);
    await planned(page);
  }
  // held still for longer than words have to rest; timers of a page come in their order
  await page.evaluate(() => new Promise((done) => setTimeout(done, 1000)));
  assert.deepEqual(await heard(), [], "nothing is said while the node is held");
  await page.mouse.up();
  await until(async () => (await heard()).length, "1");
  await page.locator(".node").nth(5).focus();
  const dragged = await seen();
  for (let i = 1; await seen() < dragged + 5; i++) {
    assert.ok(i < 60, "the keys move the verdict");
    await page.keyboard.press("Shift+ArrowUp");
    await planned(page);
  }
  const last = await shown();
  await until(async () => (await heard()).at(-1).words, last.replaceAll("\u00a0", " "));
  for (const h of await heard()) {
    assert.equal(h.words, h.shown, "what is said is what stands");
    assert.ok(h.rested >= 690, `it has rested, not ${h.rested} ms`);
  }
});
