// A drag on the drawing: what keeps step with the hand, what waits, and what is
// drawn when the hand is faster than the core. The core's answers are held back
// and let go one by one, so that each state can be looked at for as long as it takes.
import assert from "node:assert/strict";
import { planned, until } from "./browser.mjs";
import { pages } from "./onpage.mjs";

const onPage = pages();

/** From here on an answer to plan comes only when free() is called, which lets go the oldest. */
const holdPlans = (page) => page.evaluate(() => {
  const { core } = window.moldwrightPage, ask = core.ask.bind(core), held = [];
  core.ask = (op, ...rest) => {
    if (op !== "plan") return ask(op, ...rest);
    return new Promise((done) => held.push({ a: ask(op, ...rest, null, true), done })).then((a) => a);
  };
  window.plansHeld = () => held.length;
  window.freePlan = async () => { const { a, done } = held.shift(); done(await a); await new Promise((r) => requestAnimationFrame(() => requestAnimationFrame(r))); };
});
const free = (page) => page.evaluate(() => window.freePlan());
const held = (page) => page.evaluate(() => window.plansHeld());
const busy = (page) => page.locator(".verdict").getAttribute("aria-busy");
const middle = async (page, i) => {
  const b = await page.locator(".node .dot").nth(i).boundingBox();
  return { x: b.x + b.width / 2, y: b.y + b.height / 2 };
};
const outline = (page) => page.locator(".pot > .outline").last().getAttribute("d");
/** How far the drawn wall passes from a node, px. */
const gap = (page, i) => page.evaluate((n) => {
  const wall = [...document.querySelectorAll(".pot > .outline")].at(-1), dot = document.querySelectorAll(".node .hit")[n];
  const x = dot.cx.baseVal.value, y = dot.cy.baseVal.value, at = wall.getAttribute("d").slice(1).split("L").map((p) => p.split(" ").map(Number));
  let least = Infinity;
  for (let k = 0; k + 1 < at.length; k++) {
    const [[ax, ay], [bx, by]] = [at[k], at[k + 1]], l2 = (bx - ax) ** 2 + (by - ay) ** 2;
    const t = l2 ? Math.max(0, Math.min(1, ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / l2)) : 0;
    least = Math.min(least, Math.hypot(ax + t * (bx - ax) - x, ay + t * (by - ay) - y));
  }
  return least;
}, i);

onPage("node and wall keep step with the pointer while the plan is under way", async (page) => {
  await holdPlans(page);
  const before = await outline(page), at = await middle(page, 5);
  await page.mouse.move(at.x, at.y);
  await page.mouse.down();
  await page.mouse.move(at.x + 17, at.y);
  await until(async () => Math.round((await middle(page, 5)).x - at.x) >= 16, "true");
  assert.equal(await busy(page), "true", "no plan of this job has come");
  await until(async () => (await outline(page)) !== before, "true");
  const bent = await outline(page);
  assert.ok((await gap(page, 5)) < 0.6, "the wall runs through the node where it stands now");
  assert.ok((await gap(page, 4)) < 0.6 && (await gap(page, 6)) < 0.6, "and through its neighbours");
  const [a, b] = [before, bent].map((d) => d.split("L"));
  assert.equal(a.length, b.length);
  assert.equal(a.at(-1), b.at(-1), "what lies beyond the neighbours stays");
  await page.mouse.up();
  await free(page);
  while (await held(page)) await free(page);
  assert.equal(await busy(page), "false");
  assert.ok((await gap(page, 5)) < 0.6, "the plan's own wall runs there too");
});

onPage("a plan that the hand has overtaken is drawn, and the verdict waits for the newest", async (page) => {
  await holdPlans(page);
  const at = await middle(page, 5);
  await page.mouse.move(at.x, at.y);
  await page.mouse.down();
  await page.mouse.move(at.x + 12, at.y);
  await until(() => held(page), "1");
  await page.mouse.move(at.x + 30, at.y);
  await until(() => held(page), "2");
  const seams = () => page.locator(".mold").innerHTML(), was = await seams();
  await free(page);
  assert.notEqual(await seams(), was, "the mold of the first move stands");
  assert.equal(await busy(page), "true");
  assert.ok((await gap(page, 5)) < 0.6, "its wall is bent on to the second");
  await free(page);
  assert.equal(await busy(page), "false");
  await page.mouse.up();
});

onPage("while a hand drags the panels follow after the drawing, and at once when it lets go", async (page) => {
  await page.evaluate(() => {
    // what is drawn at once comes to the observer at once: one entry a drawing
    window.drawings = [];
    new MutationObserver((records) => {
      const places = new Set(records.map((r) => (r.target.nodeType === 1 ? r.target : r.target.parentElement)).map((e) => (e?.closest(".drawing") ? "drawing" : e?.closest(".panels") ? "panels" : "else")));
      window.drawings.push([...places]);
    }).observe(document.body, { subtree: true, childList: true, attributes: true, characterData: true });
  });
  const at = await middle(page, 5);
  await page.mouse.move(at.x, at.y);
  await page.mouse.down();
  await page.locator(".nodes-table tr.on").waitFor(); // the panels have followed the press itself
  await page.evaluate(() => { window.drawings = []; });
  for (let i = 1; i <= 6; i++) await page.mouse.move(at.x + 4 * i, at.y);
  await planned(page);
  const radius = () => page.getByLabel("Node 6, Radius, mm").inputValue();
  await until(() => page.evaluate(() => window.drawings.some((d) => d.includes("panels"))), "true"); // with the hand still down
  const drawings = await page.evaluate(() => window.drawings);
  assert.ok(drawings.findIndex((d) => d.includes("drawing")) < drawings.findIndex((d) => d.includes("panels")), "the drawing first");
  assert.ok(!drawings.some((d) => d.includes("drawing") && d.includes("panels")), "never both in one drawing");
  await page.mouse.up();
  await planned(page);
  const label = await page.locator(".node").nth(5).getAttribute("aria-label");
  await until(async () => label.includes(Number(await radius()).toFixed(2)), "true");
});

onPage("a pointer on its way to the Sheets panel has the first sheet begun, once; a drag across it has not", async (page) => {
  await page.evaluate(() => {
    const own = Worker.prototype.postMessage;
    window.sheets = 0;
    Worker.prototype.postMessage = function (m, ...rest) { if (m.op === "sheet") window.sheets++; return own.call(this, m, ...rest); };
  });
  const sheets = () => page.evaluate(() => window.sheets), over = await page.locator("#tab-sheets").boundingBox();
  const to = [over.x + over.width / 2, over.y + over.height / 2], at = await middle(page, 5);
  await page.mouse.move(at.x, at.y);
  await page.mouse.down();
  await page.mouse.move(...to);
  await page.mouse.move(at.x, at.y);
  await page.mouse.up();
  await planned(page);
  assert.equal(await sheets(), 0);
  await page.mouse.move(...to);
  await until(sheets, "1");
  await page.mouse.move(at.x, at.y);
  await page.mouse.move(...to);
  await page.evaluate(() => window.moldwrightPage.core.ask("version", {})); // all before it is answered
  assert.equal(await sheets(), 1);
  await until(() => page.locator(".underway").count(), "0");
});
