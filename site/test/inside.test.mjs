// A pot with an inner surface of its own, made on the page by hand: begun as the
// inside of the drained cast, its nodes moved by pointer, keys and rows, taken back.
import assert from "node:assert/strict";
import { planned, until, verdict } from "./browser.mjs";
import { accessible, fill, pages, tab } from "./onpage.mjs";
import { samples } from "./samples-list.mjs";

const onPage = pages();
/** The nodes in a table of coordinates: of the outer surface, or of the inner one, null without. */
const nodes = async (page, table) => {
  await planned(page);
  return page.evaluate((n) => {
    const t = document.querySelectorAll(".nodes-table")[n];
    return t ? [...t.querySelectorAll("tbody tr")].map((tr) => { const [r, z] = [...tr.querySelectorAll("input")].map((e) => Number(e.value)); return { r, z }; }) : null;
  }, table);
};
const inner = (page) => nodes(page, 1);
const choice = (page) => page.getByLabel("The inside of the pot is");
const own = async (page) => {
  await choice(page).selectOption("own");
  await page.locator(".nodes.inner .node").first().waitFor();
  await planned(page);
};
const take = async (page, name) => {
  await page.getByRole("button", { name: "Sample pots" }).click();
  await page.locator(`dialog.samples[open] [data-pot="${name}"]`).click();
  await until(() => page.locator("input.name").inputValue(), name);
  await planned(page);
};

onPage("every open sample begins an inner surface that leaves clay all round; a closed one says why it has none", async (page) => {
  for (const s of samples) {
    await take(page, s.name);
    if (s.form.outer.at(-1).r === 0) {
      assert.equal(await choice(page).count(), 0, s.name);
      await until(() => page.getByText("A closed form has no opening for a core").count(), "1");
      continue;
    }
    if (s.form.inner) continue;
    await own(page);
    assert.equal(await page.locator(".verdict.fault").count(), 0, `${s.name}: ${await page.locator(".verdict").innerText()} ${JSON.stringify(await inner(page))}`);
    const wall = (await page.locator("#tabpanel .hint").filter({ hasText: "Thickest wall" }).innerText()).match(/([\d.]+)/)[1];
    assert.ok(Number(wall) >= 3.9 && Number(wall) < 50, `${s.name}: thickest wall ${wall}`);
    await page.getByRole("button", { name: "Table" }).click();
    assert.match(await page.locator(".reading tr", { hasText: "K, core" }).innerText(), /Clear|Rubs/, s.name);
    await page.getByRole("button", { name: "Drawing", exact: true }).click();
  }
});

onPage("its nodes are dragged, nudged and typed; each step is undone by its name", async (page) => {
  await take(page, "Reed beaker");
  await own(page);
  await until(() => verdict(page), /parts?/);
  const begun = await inner(page);
  assert.ok(begun.length >= 3 && begun[0].r === 0, JSON.stringify(begun));
  const at = async (i) => { const b = await page.locator(".nodes.inner .node .dot").nth(i).boundingBox(); return [b.x + b.width / 2, b.y + b.height / 2]; };
  // by pointer: the middle node inward
  const i = 2, [x, y] = await at(i);
  await page.mouse.move(x, y);
  await page.mouse.down();
  for (let k = 1; k <= 8; k++) await page.mouse.move(x - 2 * k, y);
  await page.mouse.up();
  await planned(page);
  const dragged = await inner(page);
  assert.ok(dragged[i].r < begun[i].r - 1, `${dragged[i].r} after ${begun[i].r}`);
  assert.deepEqual(dragged.filter((_, k) => k !== i), begun.filter((_, k) => k !== i));
  // by key, on the node that the drag left selected
  await page.locator(".nodes.inner .node").nth(i).focus();
  await page.keyboard.press("Shift+ArrowRight");
  await until(async () => (await inner(page))[i].r - dragged[i].r, "1");
  // typed, in its table
  await fill(page, `Node K${i + 1}, Radius, mm`, "20");
  await until(async () => (await inner(page))[i].r, "20");
  assert.match(await page.locator(".nodebar").innerText(), new RegExp(`Node K${i + 1}`));
  // added and removed
  await page.getByRole("button", { name: `Add after K${i + 1}` }).click();
  await until(async () => (await inner(page)).length, String(begun.length + 1));
  await page.getByRole("button", { name: `Remove K${i + 2}` }).click();
  await until(async () => (await inner(page)).length, String(begun.length));
  const outer = await nodes(page, 0);
  // and taken away; every step comes back
  await choice(page).selectOption("slip");
  await until(() => inner(page), "null");
  assert.deepEqual(await nodes(page, 0), outer);
  await page.keyboard.press("Control+z");
  await until(async () => (await inner(page)).length, String(begun.length));
  assert.match(await page.locator(".toast p").innerText(), /inner surface taken away/i);
  for (let k = 0; k < 6; k++) { await page.getByRole("button", { name: "Undo" }).first().click(); await planned(page); }
  assert.equal(await inner(page), null);
});

onPage("an inner surface that comes through the wall is a fault at its node; tables and colours tell it", async (page) => {
  await take(page, "Reed beaker");
  await own(page);
  await fill(page, "Node K3, Radius, mm", "90");
  await page.locator(".verdict.fault").waitFor();
  await page.getByRole("button", { name: "Undo" }).first().click();
  await planned(page);
  await tab(page, "release");
  await page.getByRole("button", { name: "Core" }).click();
  await page.locator(".draft path").first().waitFor();
  await page.getByRole("button", { name: "Table" }).click();
  await page.locator(".reading caption", { hasText: "Inner surface" }).waitFor();
  await accessible(page, "table of a pot with an inner surface");
  await tab(page, "form");
  await accessible(page, "form of it");
}, { bypassCSP: true });
