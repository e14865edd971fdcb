// The Sheets panel in real Chromium: every sheet on every paper, in both kinds of
// file, measured with poppler; options and the correction of a printer's scale.
import assert from "node:assert/strict";
import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { downloaded, until } from "./browser.mjs";
import { fill, pages, tab } from "./onpage.mjs";

const onPage = pages();
/** ISO 216 and ANSI sizes in mm. */
const papers = { A4: [210, 297], A3: [297, 420], Letter: [215.9, 279.4] };
const titles = {
  "Profile, true size": "profile", "Template, true size": "template", "Section of the closed mold": "section",
  "Split report": "report", "Workshop card": "workshop",
};
const pick = async (page, title) => {
  await page.getByRole("radio", { name: title }).check();
  await shown(page);
};
const shown = async (page) => {
  await page.locator(".pages[aria-busy=false]").waitFor();
  await page.waitForFunction(() => { const all = [...document.querySelectorAll(".pages img")]; return all.length > 0 && all.every((i) => i.naturalWidth > 100); });
};
const pdf = (path) => {
  const { stdout } = spawnSync("pdfinfo", [path], { encoding: "utf8" });
  const [, w, h] = /Page size:\s+([\d.]+) x ([\d.]+) pts/.exec(stdout);
  return { pages: Number(/Pages:\s+(\d+)/.exec(stdout)[1]), size: [w, h].map((x) => (Number(x) * 25.4) / 72) };
};
const text = (path) => spawnSync("pdftotext", ["-layout", path, "-"], { encoding: "utf8" }).stdout;

for (const [title, name] of Object.entries(titles)) {
  onPage(`${name}: previewed, and downloaded on each paper as a PDF of that size`, async (page) => {
    await tab(page, "sheets");
    await pick(page, title);
    for (const [paper, size] of Object.entries(papers)) {
      await page.getByLabel("Paper").selectOption(paper);
      await shown(page);
      const n = await page.locator(".pages img").count();
      const d = await downloaded(page, () => page.getByRole("button", { name: "Download PDF" }).click());
      assert.equal(d.name, `harbour-jar-${name}.pdf`);
      const is = pdf(d.path);
      assert.equal(is.pages, n);
      const turned = is.size[0] > is.size[1] ? [...size].reverse() : size;
      is.size.forEach((x, k) => assert.ok(Math.abs(x - turned[k]) < 0.1, `${paper}: ${is.size}`));
      assert.match(text(d.path), /Harbour jar/);
    }
  });
}

onPage("SVG: one page at once, several page by page, the same bytes as previewed", async (page) => {
  await tab(page, "sheets");
  await pick(page, "Profile, true size");
  const one = await downloaded(page, () => page.getByRole("button", { name: "Download SVG" }).click());
  assert.equal(one.name, "harbour-jar-profile.svg");
  assert.match(readFileSync(one.path, "utf8"), /^(<\?xml[^>]*>\s*)?<svg[\s\S]*<\/svg>\s*$/);
  await pick(page, "Split report");
  const n = await page.locator(".pages img").count();
  assert.ok(n > 1);
  for (let i = 1; i <= n; i++) {
    const d = await downloaded(page, () => page.getByRole("button", { name: `SVG of page ${i}`, exact: true }).click());
    assert.equal(d.name, `harbour-jar-report-${i}.svg`);
    assert.match(readFileSync(d.path, "utf8"), /<svg/);
  }
  await page.getByLabel("First page only").check();
  await until(() => page.locator(".pages img").count(), "1");
});

onPage("fired, wet and both lines; half and full: each draws another sheet", async (page) => {
  await tab(page, "sheets");
  await pick(page, "Profile, true size");
  const svg = async () => { await shown(page); return readFileSync((await downloaded(page, () => page.getByRole("button", { name: "Download SVG" }).click())).path, "utf8"); };
  const seen = [await svg()];
  // 12.58 % total shrinkage: the fired 110 mm across are 110 / (1 - 0.1258) = 125.8 mm wet.
  assert.match(seen[0], /110\.0/);
  await page.getByLabel("Line").selectOption("wet");
  seen.push(await svg());
  assert.match(seen[1], /125\.8/);
  await page.getByLabel("Line").selectOption("both");
  seen.push(await svg());
  await page.getByLabel("Shape").selectOption("full");
  seen.push(await svg());
  assert.equal(new Set(seen).size, 4);
});

onPage("a printer that makes 100 mm into 97: the bars are drawn longer by as much", async (page) => {
  await tab(page, "sheets");
  await pick(page, "Profile, true size");
  const get = async () => { await shown(page); return readFileSync((await downloaded(page, () => page.getByRole("button", { name: "Download PDF" }).click())).path); };
  const plain = await get();
  await page.getByText("The bars are not 100 mm long?").click();
  const across = page.getByLabel("Bar across the page");
  await across.fill("9");
  assert.equal(await across.getAttribute("aria-invalid"), "true");
  await across.pressSequentially("7", { delay: 20 });
  await until(() => page.locator("details.rows [role=status]").innerText(), /100 mm into 97\.0 mm across and 100\.0 mm up/);
  assert.equal(await across.inputValue(), "97");
  const scaled = await get();
  assert.notDeepEqual(scaled, plain);
  await page.getByRole("button", { name: "Back to 100 mm" }).click();
  assert.deepEqual(await get(), plain);
});

onPage("the advice to print at 100 % stands with the sheets that are true to size, and only there", async (page) => {
  await tab(page, "sheets");
  await pick(page, "Template, true size");
  assert.match(await page.locator(".advice").innerText(), /100 %.*ruler/);
  await pick(page, "Workshop card");
  assert.equal(await page.locator(".advice").count(), 0);
});

onPage("the preview follows the job, and a form larger than the paper is tiled", async (page) => {
  await tab(page, "sheets");
  await pick(page, "Profile, true size");
  await tab(page, "form");
  await fill(page, "Node 8, Height, mm", "420");
  await tab(page, "sheets");
  await until(() => page.locator(".pages img").count().then((n) => n > 1), "true");
  await until(() => page.locator(".pages li").last().innerText(), /Page (\d+) of \1/);
});
