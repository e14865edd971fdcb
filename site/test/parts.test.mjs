// The Parts panel and the view in space in real Chromium: the parting moved by
// mouse, finger, keys and typing; why not fewer; the mold taken apart and where
// it sticks; the cut across the axis; solids drawn, turned, cut, told in a table.
import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { launch, open, PATIENCE, planned, until, verdict } from "./browser.mjs";
import { tab } from "./onpage.mjs";

let browser;
before(async () => { browser = await launch(); });
after(async () => { await browser.close(); });

function onParts(name, work, { outer, mold = {}, ...options } = {}) {
  test(name, async () => {
    const p = await open(browser, options);
    try {
      if (outer) {
        const form = { size: "mold", outer: outer.map((n) => (Array.isArray(n) ? { r: n[0], z: n[1], corner: true } : n)) };
        const job = JSON.stringify({ format: "moldwright-job", version: 1, name: "Trial", form, mold });
        await p.page.locator("input[type=file]").first().setInputFiles({ name: "trial.json", mimeType: "application/json", buffer: Buffer.from(job) });
        await p.page.waitForFunction(() => document.querySelector("input.name").value === "Trial");
        await planned(p.page);
      }
      await tab(p.page, "parts");
      await work(p.page, p);
      assert.deepEqual(p.seen.errors, []);
      assert.deepEqual(p.seen.requests, []);
    } finally {
      await p.context.close();
    }
  });
}

const slider = (page) => page.getByRole("slider", { name: "Take the mold apart" });
const seam = (page) => page.getByRole("slider", { name: "Parting height" });
const height = async (page) => Number(/parted (\d+\.\d) mm/.exec(await verdict(page))?.[1]);
const undo = (page) => page.getByRole("button", { name: "Undo", exact: true }).first().click();

onParts("the parting moves by arrow keys and by typing, one step of undo each, and can be set free", async (page) => {
  const was = await height(page);
  await seam(page).focus();
  for (let i = 0; i < 3; i++) await page.keyboard.press("Shift+ArrowUp");
  await until(async () => (await height(page)).toFixed(1), (was + 3).toFixed(1));
  await seam(page).blur();
  await page.getByLabel("Parting height", { exact: true }).last().fill("70,5");
  await until(() => height(page), "70.5");
  await page.getByRole("button", { name: "Free the seam" }).click();
  await until(() => height(page), String(was));
  await undo(page);
  await until(() => height(page), "70.5");
  await undo(page);
  await until(async () => (await height(page)).toFixed(1), (was + 3).toFixed(1));
  await undo(page);
  await until(() => height(page), String(was));
});

onParts("the parting is dragged by mouse: up the drawing is up the pot", async (page) => {
  const was = await height(page), box = await seam(page).locator(".grip").boundingBox();
  const x = box.x + box.width / 2, y = box.y + box.height / 2;
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x, y - 10, { steps: 4 });
  await page.mouse.move(x, y - 30, { steps: 4 });
  await page.mouse.up();
  await until(async () => await height(page) > was + 4, "true");
  const now = await seam(page).locator(".grip").boundingBox();
  assert.ok(Math.abs(now.y - box.y + 30) < 12, `the handle went ${box.y - now.y} px`);
  await undo(page);
  await until(() => height(page), String(was));
});

onParts("the parting is dragged by finger, on a target of 44 px", async (page, { context }) => {
  const was = await height(page), hit = await seam(page).locator(".hit").boundingBox();
  assert.ok(hit.width >= 44 && hit.height >= 44, `${hit.width} x ${hit.height}`);
  await seam(page).scrollIntoViewIfNeeded();
  const box = await seam(page).locator(".grip").boundingBox(), x = box.x + 9, y = box.y + 13;
  const cdp = await context.newCDPSession(page);
  const touch = (type, dy) => cdp.send("Input.dispatchTouchEvent", { type, touchPoints: type === "touchEnd" ? [] : [{ x, y: y + dy }] });
  await touch("touchStart", 0);
  for (const dy of [5, 12, 20]) await touch("touchMove", dy);
  await touch("touchEnd", 0);
  await until(async () => await height(page) < was - 2, "true");
}, { width: 390, height: 780, hasTouch: true });

onParts("why not fewer: the place that holds a scheme is marked on the drawing", async (page) => {
  const show = page.getByRole("button", { name: "Show why on the drawing: a lower part alone" });
  await show.click();
  await until(async () => (await page.locator(".why").textContent()).replaceAll("\u00a0", " "), "Lower part: held by 25.2 mm");
  await page.locator(".why .block").waitFor({ state: "attached" });
  await show.click();
  await until(() => page.locator(".why").count(), "0");
});

onParts("the mold comes apart in its order, each part along its pull", async (page) => {
  await page.locator(".order li").first().waitFor();
  const order = await page.locator(".order li").allInnerTexts();
  assert.match(order[0], /upper part/);
  assert.match(order[1], /lower part/);
  await slider(page).fill("0.5");
  await until(() => page.locator(".step").innerText(), "Step 1 of 2: the upper part moves away.");
  const tops = () => page.locator(".apart > g").evaluateAll((gs) => gs.map((g) => [g.querySelector("text").textContent, g.getBBox().y]));
  const first = Object.fromEntries(await tops());
  await slider(page).fill("2");
  await until(() => page.locator(".step").innerText(), "All parts are off.");
  const last = Object.fromEntries(await tops());
  assert.ok(last.U < last.L && last.L - last.U > first.L - first.U, JSON.stringify([first, last]));
  await slider(page).focus();
  await page.keyboard.press("Home");
  await until(() => page.locator(".apart").count(), "0");
});

const held = { outer: [[0, 0], [30, 0], { r: 50, z: 40 }, { r: 30, z: 80 }, [45, 110]], mold: { scheme: "two" } };
onParts("where a part is held the mold sticks, and says by how much", async (page) => {
  await slider(page).fill("1.5");
  await until(async () => (await page.locator(".step").innerText()).replaceAll("\u00a0", " "), /^The upper part sticks: it is held by 15\.00 mm behind what stands 110\.0 mm above the foot\./);
  assert.ok(await page.locator(".apart .stuck").count() > 0);
}, held);

// Held by 0.4 mm: 1.5 % of 50 mm is 0.75 mm, so the shrunken cast comes free.
onParts("the cast comes free where only the positive sticks", async (page) => {
  await slider(page).fill("1");
  await until(() => page.locator(".step").innerText(), /sticks/);
  await page.getByLabel("The parts come away from").selectOption("cast");
  await until(() => page.locator(".step").innerText(), "All parts are off.");
}, { outer: [[0, 0], [50, 0], [50, 30], [49.6, 32], [52, 60]], mold: { scheme: "one" } });

onParts("the cut across the axis: an oval stands turned to the seams, facets and dimples are judged", async (page) => {
  await page.locator(".schemes li").filter({ hasText: "two side parts and a lower part" }).first().locator("input").check();
  await page.getByLabel("The pot is").selectOption("oval");
  await page.getByLabel("Narrow over wide").fill("0,6");
  const box = () => page.locator(".cross-pot").evaluate((e) => { const b = e.getBBox(); return (Math.min(b.width, b.height) / Math.max(b.width, b.height)).toFixed(2); });
  await planned(page);
  await until(box, "0.60");
  await until(() => page.locator(".cross svg").getAttribute("aria-label"), /oval\. 2 side parts; the section stands turned \d+° to the seams/);
  await page.getByLabel("The pot is").selectOption("polygon");
  await page.getByLabel("Faces").fill("5");
  await planned(page);
  await page.getByLabel("Dimples in the wall").check();
  await page.getByLabel("Rows at heights, mm").fill("40 60,5");
  await planned(page);
  assert.equal(await page.locator(".verdict.fault").count(), 0);
  await page.getByLabel("Rows at heights, mm").fill("40 sixty");
  await page.getByText("Write heights with spaces between them").waitFor();
});

/** What the canvas shows, as the share of its pixels that are not the ground. */
const ink = (page) => page.locator(".space canvas").screenshot().then((png) => page.evaluate(async (b64) => {
  const img = await createImageBitmap(await (await (async () => new Blob([Uint8Array.from(atob(b64), (c) => c.charCodeAt(0))]))()));
  const c = new OffscreenCanvas(img.width, img.height), g = c.getContext("2d");
  g.drawImage(img, 0, 0);
  const d = g.getImageData(0, 0, img.width, img.height).data;
  let n = 0, sum = 0;
  for (let i = 0; i < d.length; i += 4) if (Math.max(d[i], d[i + 1], d[i + 2]) - Math.min(d[i], d[i + 1], d[i + 2]) > 24) { n++; sum = (sum * 31 + d[i] + (i & 0xffff)) % 1e9; }
  return { share: n / (d.length / 4), sum };
}, png.toString("base64")));

/** Waits until what the canvas shows is as wanted and changes no more. */
async function rests(page, want, otherwise) {
  await page.locator(".said").waitFor({ state: "detached" });
  for (let old = null, now, end = performance.now() + PATIENCE; performance.now() < end; old = now) {
    now = await ink(page);
    if (want(now) && old?.sum === now.sum) return now;
  }
  assert.fail(otherwise);
}

onParts("in space: the mold is drawn, turned by keys and pointer, cut and taken apart", async (page) => {
  await page.getByRole("button", { name: "In space" }).click();
  let last = await rests(page, (now) => now.share > 0.05, "only little of the canvas is drawn");
  const changed = async (what) => { last = await rests(page, (now) => now.sum !== last.sum, `${what} changed nothing`); };
  const canvas = page.locator(".space canvas");
  await canvas.focus();
  await page.keyboard.press("ArrowLeft");
  await changed("an arrow key");
  const box = await canvas.boundingBox();
  await page.mouse.move(box.x + 200, box.y + 150);
  await page.mouse.down();
  await page.mouse.move(box.x + 260, box.y + 170, { steps: 3 });
  await page.mouse.up();
  await changed("a drag");
  await page.getByRole("button", { name: "Look from higher" }).click();
  await changed("a button");
  await page.getByRole("button", { name: "Cut open" }).click();
  await changed("no cut");
  await slider(page).fill("1");
  await changed("the slider");
  await page.getByText("What stands here, as a table").click();
  const rows = () => page.locator(".space tbody tr").allInnerTexts();
  await until(async () => (await rows()).length, "3");
  assert.match((await rows()).join("|"), /lower part\s+down.*upper part\s+up.*cast/s);
});

onParts("in space: the printed kit is laid out, each piece told with its size", async (page) => {
  await page.getByRole("button", { name: "In space" }).click();
  await page.getByRole("button", { name: "Printed kit" }).click();
  await rests(page, (now) => now.share > 0.02, "the kit is not drawn");
  await page.getByText("What stands here, as a table").click();
  await until(() => page.locator(".space tbody").innerText(), /positive/);
});

test("without drawing in space the page says so, and the table stands", async () => {
  const { context, page } = await open(browser, { init: () => { HTMLCanvasElement.prototype.getContext = () => null; } });
  await page.getByRole("button", { name: "In space" }).click();
  await until(() => page.locator(".said").innerText(), /cannot draw in space/);
  await page.getByText("What stands here, as a table").click();
  await until(() => page.locator(".space tbody tr").count(), "3");
  await context.close();
});

for (const width of [320, 360]) {
  onParts(`${width} px: no sideways scroll while apart, in space, or stretched`, async (page) => {
    const fits = async (what) => {
      await planned(page);
      const [wide, room] = await page.evaluate(() => [document.documentElement.scrollWidth, document.documentElement.clientWidth]);
      assert.ok(wide <= room, `${what}: ${wide} > ${room}`);
    };
    await slider(page).fill("1.5");
    await fits("apart");
    await page.getByRole("button", { name: "In space" }).click();
    await fits("space");
    await page.getByRole("button", { name: "Drawing", exact: true }).click();
    await page.locator("#tab-release").click();
    await page.getByRole("button", { name: "×25" }).click();
    await fits("stretched");
  }, { width, height: 740, hasTouch: true });
}

onParts("on a phone, the drawing that is asked for comes into view, and the panel that comes next", async (page) => {
  const inView = (selector) => until(() => page.evaluate((s) => { const b = document.querySelector(s).getBoundingClientRect(); return b.top >= -1 && b.top < innerHeight / 2; }, selector), "true");
  await page.locator(".next .primary").tap();
  await inView(".panels");
  await tab(page, "parts");
  await page.locator(".schemes .show").first().tap();
  await inView(".drawing");
}, { width: 360, height: 740, hasTouch: true, isMobile: true });
