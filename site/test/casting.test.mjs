// The Casting panel in real Chromium: what a maker types, and the figures that
// follow, against published rules; cautions in their places; everything editable.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { downloaded, until } from "./browser.mjs";
import { figure, fill, pages, tab } from "./onpage.mjs";

const onPage = pages();
const number = (text) => Number(/-?[\d.]+/.exec(text.replace("\u2212", "-"))[0]);
const savedJob = async (page) => JSON.parse(readFileSync((await downloaded(page, () => page.getByRole("button", { name: "Save", exact: true }).click())).path, "utf8"));
const own = async (page) => { const d = page.locator("details.own"); if ((await d.getAttribute("open")) === null) await d.locator("summary").click(); };

onPage("batches stand in mixing order and add up to the plaster at a glance", async (page) => {
  await tab(page, "casting");
  const rows = page.locator("#tabpanel table").first();
  await until(() => rows.locator("tbody tr").count(), "2");
  const cells = async (at) => (await rows.locator(at).locator("td").allInnerTexts()).map(number);
  const [low, up, sum] = [await cells("tbody tr:nth-child(1)"), await cells("tbody tr:nth-child(2)"), await cells("tfoot tr")];
  for (const i of [0, 1, 2]) assert.ok(Math.abs(low[i] + up[i] - sum[i]) <= 1, `${low} + ${up} = ${sum}`);
  // Consistency 70 is 70 of water to 100 of plaster by weight (US Gypsum, consistency).
  assert.ok(Math.abs(low[1] / low[2] - 0.7) < 0.001);
  await fill(page, "Consistency", "80");
  await until(async () => (await cells("tbody tr:nth-child(1)")).slice(1).reduce((w, p) => w / p).toFixed(2), "0.80");
});

onPage("a bucket that holds less makes more batches", async (page) => {
  await tab(page, "casting");
  await own(page);
  await fill(page, "Bucket holds", "2000");
  // 75 % of 2000 ml is 1500 ml; the lower part's mix is over two, the upper over one of them.
  await until(async () => (await page.locator("#tabpanel table").first().locator("tbody td:nth-child(2)").allInnerTexts()).map(Number).every((n) => n >= 2), "true");
  await until(() => page.locator("#tabpanel table").first().locator("thead").innerText(), /each/);
});

onPage("the wall follows the square root of time; a wall of 3 mm in 10 min is 6 mm in 40", async (page) => {
  // L squared is proportional to time: Adcock & McDowall, J. Am. Ceram. Soc. 40 (1957), from memory.
  await tab(page, "casting");
  await fill(page, "What wall after", "40");
  await until(() => figure(page, "Wall after that time"), "6.0 mm");
  await fill(page, "Wall of the cast, wet", "6");
  await until(() => figure(page, "Time for the wanted wall"), "40.0 min");
  await until(() => page.locator(".walls tr.on").innerText(), /40 min\s+wanted 6\.0 mm/);
});

onPage("several trials: the fit lies between them, its spread is told, and one can be removed", async (page) => {
  await tab(page, "casting");
  await page.getByRole("button", { name: "Add a trial" }).click();
  await fill(page, "Trial 2, Wall, mm", "3.6");
  await until(async () => {
    const [mid, low, high] = [number(await figure(page, "Time for the wanted wall")), number(await figure(page, "The same, by the fastest test")), number(await figure(page, "The same, by the slowest test"))];
    return low < mid && mid < high && Math.abs(high - 17.8) < 0.1;
  }, "true");
  assert.deepEqual((await savedJob(page)).casting.testCasts, [{ wall: 3.6, minutes: 10 }]);
  await page.getByRole("button", { name: "Remove trial 2" }).click();
  await until(() => figure(page, "Time for the wanted wall"), "17.8 min");
});

onPage("slip is weighed as a litre, an imperial pint or as density: 35 oz a pint is 1.75", async (page) => {
  // Cardew, Pioneer Pottery: a pint of water weighs 20 oz, so that 35 oz a pint is a specific gravity of 1.75.
  await tab(page, "casting");
  assert.equal(await page.getByLabel("Slip weighs", { exact: true }).inputValue(), "1750");
  await page.getByLabel("Weighed as").selectOption("pint");
  await until(() => page.getByLabel("Slip weighs", { exact: true }).inputValue(), "35");
  await fill(page, "Slip weighs", "36");
  await page.getByLabel("Weighed as").selectOption("ml");
  await until(() => page.getByLabel("Slip weighs", { exact: true }).inputValue(), "1.8");
  assert.equal((await savedJob(page)).clay.slipDensity, 1.8);
});

onPage("test bars: published worked example, then into the job", async (page) => {
  // Digitalfire's worked example of ASTM C326: 6.25 % drying and 6.66 % firing are 12.5 % in all, not their sum.
  await tab(page, "casting");
  for (const [mark, mm] of [["Wet", "100"], ["Dry", "93,75"], ["Fired", "87.506"]]) await fill(page, `Bar 1, ${mark}`, mm);
  await until(() => page.locator(".bars [role=status]").innerText(), /Drying 6\.25 %, firing 6\.66 %, total 12\.49 %\./);
  await page.getByRole("button", { name: "Add a bar" }).click();
  await fill(page, "Bar 2, Dry", "94");
  await fill(page, "Bar 2, Fired", "95");
  await until(() => page.locator(".bars [role=status]").innerText(), /^Bar 2: The fired length must be/);
  await until(() => page.getByLabel("Bar 2, Fired").getAttribute("aria-invalid"), "true");
  await fill(page, "Bar 2, Fired", "87.5");
  await until(() => page.locator(".bars [role=status]").innerText(), /2 bars spread by 0\.00 %/);
  await page.getByRole("button", { name: "Remove bar 2" }).click();
  await page.getByRole("button", { name: "Use these percentages" }).click();
  await until(() => page.locator(".bars [role=status]").innerText(), /percentages in use/);
  const { clay } = await savedJob(page);
  assert.deepEqual([clay.dryingShrinkage, clay.firingShrinkage], [6.25, 6.66]);
  await tab(page, "form");
  await tab(page, "casting");
  await until(() => page.getByLabel("Bar 1, Dry").inputValue(), "93,75");
});

onPage("how: each figure opens its formula, source and standing, by keyboard too", async (page) => {
  await tab(page, "casting");
  const how = page.getByRole("button", { name: "How Time for the wanted wall comes about" });
  await how.focus();
  await page.keyboard.press("Enter");
  await until(() => how.getAttribute("aria-expanded"), "true");
  const text = await page.locator(`[id="${await how.getAttribute("aria-controls")}"]`).innerText();
  assert.match(text, /Source: .*Adcock/s);
  for (const d of await page.locator("details.more").all()) await d.locator("summary").click();
  const lines = page.locator("#tabpanel .figures:not(.glance) > div");
  assert.ok(await lines.count() > 60, `${await lines.count()} figures`);
  for (const t of await lines.locator(".how-text").evaluateAll((all) => all.map((x) => x.textContent))) assert.match(t, /Source: .+/);
});

onPage("every setting of casting is in the panel, with a unit and what stands in its place", async (page) => {
  await tab(page, "casting");
  await own(page);
  const was = (await savedJob(page)).casting;
  const fields = page.locator("details.own .field");
  await until(async () => (await fields.allInnerTexts()).every((t) => /unless measured: \S/.test(t)), "true");
  for (let i = 0; i < await fields.count(); i++) {
    const input = fields.nth(i).locator("input");
    const x = Number(await input.inputValue());
    await input.fill(String(x === 0 ? 2 : Math.round(x * 1.1 * 1e4) / 1e4));
    await input.blur();
  }
  const is = (await savedJob(page)).casting;
  const same = Object.keys(was).filter((k) => JSON.stringify(was[k]) === JSON.stringify(is[k]));
  assert.deepEqual(same.sort(), ["minutes", "testCasts"], "the two that stand elsewhere in the panel");
});

onPage("a fill line, a glaze and a published density add their figures", async (page) => {
  await tab(page, "casting");
  await own(page);
  const before = number(await figure(page, "Fired pot holds, to the brim"));
  await fill(page, "Fill line under the brim", "10");
  await until(async () => number(await figure(page, "Fired pot holds, to the fill line")) < before, "true");
  await fill(page, "Fired glaze, thickness", "0.3");
  await until(async () => number(await figure(page, "Cast, fired and glazed")) > number(await figure(page, "Cast, fired")), "true");
});

onPage("nonsense is named under its field with the remedy, and the plan before it stays", async (page) => {
  await tab(page, "casting");
  await page.getByLabel("Weighed as").selectOption("ml");
  const field = page.getByLabel("Slip weighs", { exact: true });
  await field.fill("0.9");
  await until(() => field.getAttribute("aria-invalid"), "true");
  assert.match(await page.locator(`[id="${await field.getAttribute("aria-describedby")}"]`).innerText(), /slip/i);
  await until(() => page.locator(".verdict p").innerText(), /^No plan yet/);
});

onPage("cautions stand where the hazard is, and none is missing", async (page) => {
  await tab(page, "casting");
  const of = (title) => page.locator("#tabpanel section.group").filter({ has: page.getByRole("heading", { name: title, exact: true }) }).locator(".cautions").innerText();
  assert.match(await of("Plaster, in the order of mixing"), /burns[\s\S]*drains/);
  assert.match(await of("The cast and the pot"), /silica[\s\S]*food/);
  assert.match(await of("Bands and lifting"), /Band the mold[\s\S]*NIOSH/);
  assert.match(await of("Casts of one day"), /Drying times/);
  const { cautions } = await page.evaluate(async () => {
    const core = window.moldwrightPage.core;
    const { job } = JSON.parse((await core.ask("read", { kind: "coordinates", text: "0 0\n30 0\n60 50", units: "mm" })).reply);
    return JSON.parse((await core.ask("plan", { job })).reply);
  });
  assert.ok(cautions.length > 8);
  await own(page);
  await fill(page, "Hands from the ankles", "63");
  await fill(page, "Turn of the body", "90");
  await until(() => page.locator(".cautions .called").allInnerTexts(), /above the .* kg that the NIOSH equation/);
});

onPage("all of it at 320 px, without sideways scroll, touch targets of 44 px", async (page) => {
  await tab(page, "casting");
  await own(page);
  for (const d of await page.locator("details.more").all()) await d.locator("summary").click();
  const [wide, room] = await page.evaluate(() => [document.documentElement.scrollWidth, document.documentElement.clientWidth]);
  assert.ok(wide <= room, `${wide} > ${room}`);
  const small = await page.locator("#tabpanel :is(button, summary, select, input[type=text])").evaluateAll((all) => all.filter((x) => x.checkVisibility()).map((x) => [x.textContent || x.getAttribute("aria-label") || x.id, x.getBoundingClientRect().height]).filter(([, h]) => h < 43.5));
  assert.deepEqual(small, []);
}, { width: 320, height: 740, hasTouch: true, isMobile: true });
