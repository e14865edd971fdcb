// The drawing as tables, and the page on paper: the same facts, read with keys,
// at 320 px, at twice the size, and printed from a dark page.
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { mkdtempSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { planned, until, verdict } from "./browser.mjs";
import { accessible, pages, tab } from "./onpage.mjs";

const onPage = pages();

const read = async (page) => {
  const button = page.getByRole("button", { name: "Read as a table" });
  await button.focus();
  await page.keyboard.press("Enter");
  await page.locator(".reading").waitFor();
};
const table = (page, caption) => page.getByRole("table", { name: caption });
const rows = async (at) => (await at.locator("tbody tr").evaluateAll((all) => all.map((tr) => [...tr.children].map((c) => c.textContent.replaceAll("\u00a0", " ")))));

onPage("the tables hold what the drawing shows: parts, seam, trim line and wall", async (page) => {
  await read(page);
  const seam = /parted ([\d.]+) mm/.exec(await verdict(page))[1];
  const parts = await rows(table(page, "Parts of the mold"));
  assert.deepEqual(parts.map((r) => r[1]), ["down", "up"]);
  assert.equal(parts[0][3], seam);
  assert.equal(parts[1][2], seam);
  const places = await rows(table(page, "Places"));
  assert.equal(places.find((r) => r[0] === "seam")[1], seam);
  const wall = (await rows(table(page, "Wall, at mold size"))).map(([z, r]) => [Number(z), Number(r)]);
  assert.ok(wall.length >= 10);
  // Lengths fired over 0.94 × 0.93, what is left of the clay: 55 mm of belly, 124 mm of height.
  assert.ok(Math.abs(Math.max(...wall.map((p) => p[1])) - 55 / (0.94 * 0.93)) < 0.3);
  assert.ok(Math.abs(wall.at(-1)[0] - 124 / (0.94 * 0.93)) < 0.06);
});

onPage("taken apart, the table says where each part is", async (page) => {
  await tab(page, "parts");
  await read(page);
  const at = page.locator("#apart");
  await at.focus();
  await page.keyboard.press("End");
  await until(async () => (await rows(table(page, "Parts of the mold"))).map((r) => r.at(-1)).join(), "off,off");
  await page.keyboard.press("Home");
  await page.getByRole("button", { name: "Drawing", exact: true }).click();
  await page.locator(".drawing svg").first().waitFor();
});

onPage("under a pull the wall has its draft, and stretched its distance from the line", async (page) => {
  await tab(page, "release");
  await page.getByRole("button", { name: "Whole wall, down" }).click();
  await page.getByRole("button", { name: "×10" }).click();
  await read(page);
  const heads = async () => (await table(page, "Wall, at mold size").locator("thead th").allInnerTexts()).join("; ");
  await until(heads, "Height, mm; Radius, mm; Draft, pulled down; Off the line, mm");
  const wall = await rows(table(page, "Wall, at mold size"));
  assert.ok(wall.some((r) => /^−/.test(r[2])) && wall.some((r) => /^\d/.test(r[2])), "the belly turns from draft to undercut");
  assert.equal(Number(wall.at(-1)[3].replace("−", "-")), 0);
});

onPage("a figure of the class can be read as well", async (page) => {
  await tab(page, "class");
  await page.getByRole("button", { name: /^Add \d question/ }).click();
  const figure = page.locator(".class-look details", { hasText: "Read as a table" });
  await figure.locator("summary").click();
  await until(async () => (await rows(figure.getByRole("table"))).length, /^([3-9]|\d\d)$/);
});

onPage("at 320 px nothing runs off sideways", async (page) => {
  await read(page);
  assert.equal(await page.evaluate(() => document.documentElement.scrollWidth), 320);
}, { width: 320, height: 640 });

onPage("with text at twice the size nothing runs off sideways, in no panel", async (page) => {
  await page.evaluate(() => { document.documentElement.style.fontSize = "200%"; });
  for (const t of ["form", "release", "parts", "tooling", "casting", "sheets", "class"]) {
    await tab(page, t);
    assert.equal(await page.evaluate(() => document.documentElement.scrollWidth), 1280, t);
  }
});

onPage("on paper the drawing is whole and the controls are gone, from a dark page too", async (page) => {
  await tab(page, "casting");
  await page.emulateMedia({ media: "print" });
  const [svg, box, button] = await page.evaluate(() => [
    document.querySelector(".drawing svg").getBoundingClientRect().toJSON(), document.querySelector(".drawing").getBoundingClientRect().toJSON(),
    [...document.querySelectorAll("button:not(.term)")].filter((b) => b.getClientRects().length).length,
  ]);
  assert.ok(svg.height <= box.height + 1 && svg.top >= box.top - 1, "the drawing is not cut off");
  assert.equal(button, 0);
  assert.equal(await page.evaluate(() => getComputedStyle(document.documentElement).backgroundColor), "rgb(255, 255, 255)");
  const file = join(mkdtempSync(join(tmpdir(), "print-")), "page.pdf");
  await page.pdf({ path: file, preferCSSPageSize: true });
  const words = execFileSync("pdftotext", ["-layout", file, "-"], { encoding: "utf8" });
  for (const must of [/Harbour jar/, /parted [\d.]+ mm above the foot/, /trim line/, /elevation/, /Never enclose a hand/]) assert.match(words, must);
  assert.doesNotMatch(words, /Copy link|Go to|Help/);
}, { colorScheme: "dark" });

for (const colorScheme of ["light", "dark"]) {
  onPage(`axe finds nothing in the tables, ${colorScheme}`, async (page) => {
    await tab(page, "release");
    await read(page);
    await accessible(page);
  }, { colorScheme, bypassCSP: true });
}
