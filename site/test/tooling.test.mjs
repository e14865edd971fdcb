// The Tooling panel in real Chromium: pieces by part with their fit, each file
// checked by its bytes, settings that reach the job.
import assert from "node:assert/strict";
import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { downloaded, until } from "./browser.mjs";
import { fill, pages, tab } from "./onpage.mjs";

const onPage = pages();
const savedJob = async (page) => JSON.parse(readFileSync((await downloaded(page, () => page.getByRole("button", { name: "Save", exact: true }).click())).path, "utf8"));

/** Checks that bytes are one binary STL, and gives its triangles and extents. */
function stl(bytes, name) {
  const n = bytes.readUInt32LE(80);
  assert.equal(bytes.length, 84 + 50 * n, name);
  const lo = [Infinity, Infinity, Infinity], hi = [-Infinity, -Infinity, -Infinity];
  for (let t = 0; t < n; t++) {
    for (let k = 0; k < 9; k++) {
      const x = bytes.readFloatLE(84 + 50 * t + 12 + 4 * k);
      lo[k % 3] = Math.min(lo[k % 3], x);
      hi[k % 3] = Math.max(hi[k % 3], x);
    }
  }
  return { n, size: hi.map((x, k) => x - lo[k]), floor: lo[2] };
}

onPage("each piece downloads as STL, on the bed, as large as the panel says", async (page) => {
  await tab(page, "tooling");
  const pieces = page.locator(".kit").filter({ has: page.locator("h4") }).locator("li");
  assert.ok(await pieces.count() >= 2);
  const names = new Set();
  for (let i = 0; i < await pieces.count(); i++) {
    const said = (await pieces.nth(i).innerText()).replaceAll("\u00a0", " ");
    const d = await downloaded(page, () => pieces.nth(i).getByRole("button").click());
    const { n, size, floor } = stl(readFileSync(d.path), d.name);
    assert.ok(n > 10 && Math.abs(floor) < 1e-3, `${d.name}: ${n} triangles from ${floor} mm`);
    const dims = /(\d+) × (\d+) × (\d+) mm/.exec(said).slice(1).map(Number);
    dims.forEach((x, k) => assert.ok(Math.abs(x - size[k]) <= 1, `${d.name}: says ${dims}, is ${size}`));
    assert.match(d.name, /^harbour-jar-print-.*\.stl$/);
    names.add(d.name);
  }
  assert.equal(names.size, await pieces.count());
});

onPage("pieces are grouped by the part they serve", async (page) => {
  await tab(page, "tooling");
  assert.deepEqual(await page.locator(".kit h4").allInnerTexts().then((t) => t.map((x) => x.replace(/^[A-Z]\s*/, ""))), ["For the lower part", "For the upper part"]);
});

onPage("all pieces come as one 3MF, everything as one zip", async (page) => {
  await tab(page, "tooling");
  const list = (path) => spawnSync("python3", ["-c", "import sys,zipfile; z=zipfile.ZipFile(sys.argv[1]); assert z.testzip() is None; print('\\n'.join(z.namelist()))", path], { encoding: "utf8" }).stdout.trim().split("\n");
  const three = await downloaded(page, () => page.getByRole("button", { name: "All pieces (3MF)" }).click());
  assert.equal(three.name, "harbour-jar-prints.3mf");
  assert.deepEqual(readFileSync(three.path).subarray(0, 4), Buffer.from("PK\x03\x04"));
  assert.ok(list(three.path).includes("3D/3dmodel.model"));
  const zip = await downloaded(page, () => page.getByRole("button", { name: "Everything (zip)" }).click());
  const names = list(zip.path);
  assert.equal(zip.name, "harbour-jar.zip");
  for (const kind of [/print-lower/, /print-upper/, /plaster-lower/, /plaster-upper/, /cast/]) assert.ok(names.some((n) => kind.test(n)), `${kind} in ${names}`);
});

onPage("plaster parts and the cast download where they stand in the mold", async (page) => {
  await tab(page, "tooling");
  for (const [button, name] of [["Download lower part as STL", "harbour-jar-plaster-lower.stl"], ["Download cast as STL", "harbour-jar-cast.stl"]]) {
    const d = await downloaded(page, () => page.getByRole("button", { name: button }).click());
    assert.equal(d.name, name);
    stl(readFileSync(d.path), name);
  }
});

onPage("a small bed is told in words and at the piece", async (page) => {
  await tab(page, "tooling");
  await fill(page, "Bed x", "120");
  await fill(page, "Bed y", "120");
  await until(async () => await page.locator(".kit .warn").count() > 0 || await page.locator(".kit li").count() > 8, "true");
});

onPage("settings reach the job: spare on and off, staves, holes, grooves, outside, nozzle, full positives", async (page) => {
  await tab(page, "tooling");
  await page.getByLabel("Spare above the trim line").uncheck();
  await until(() => page.getByLabel("Height of the spare").count(), "0");
  assert.equal((await savedJob(page)).mold.spare, null);
  await page.getByLabel("Spare above the trim line").check();
  await fill(page, "Height of the spare", "35");
  await page.getByLabel("Cottle staves").selectOption("3");
  await fill(page, "Drain hole, across", "12");
  await fill(page, "Nozzle", "0.6");
  await page.getByLabel("Outside of the block").selectOption("straight");
  for (const [label, on] of [["Natches", false], ["Strap grooves", false], ["Positives printed full", true]]) await page.getByLabel(label, { exact: false }).first().setChecked(on);
  const { mold, printer, plaster } = await savedJob(page);
  assert.deepEqual([mold.spare.height, mold.staves, mold.drainHole, mold.natches, mold.strapGrooves, printer.nozzle, printer.solid, plaster.outside], [35, 3, 12, false, false, 0.6, true, "straight"]);
});

onPage("cautions of printing stand beside the pieces", async (page) => {
  await tab(page, "tooling");
  assert.match(await page.locator("#tabpanel .cautions").first().innerText(), /fumes[\s\S]*resin/);
});

onPage("320 px: no sideways scroll, touch targets of 44 px", async (page) => {
  await tab(page, "tooling");
  const [wide, room] = await page.evaluate(() => [document.documentElement.scrollWidth, document.documentElement.clientWidth]);
  assert.ok(wide <= room, `${wide} > ${room}`);
  const small = await page.locator("#tabpanel :is(button, select, input[type=text])").evaluateAll((all) => all.map((x) => [x.textContent || x.id, x.getBoundingClientRect().height]).filter(([, h]) => h < 43.5));
  assert.deepEqual(small, []);
}, { width: 320, height: 740, hasTouch: true, isMobile: true });
