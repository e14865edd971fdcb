// The editor on the drawing in real Chromium: mouse, touch and keys, each the
// same named step of undo, and the table mirrors it.
import assert from "node:assert/strict";
import { planned, until } from "./browser.mjs";
import { pages } from "./onpage.mjs";

const onPage = pages();
const value = (page, node, what) => page.getByLabel(`Node ${node}, ${what}, mm`).inputValue();
const rows = (page) => page.locator(".nodes-table tbody tr").count();
const dot = async (page, i) => {
  const b = await page.locator(".node").nth(i).locator(".dot").boundingBox();
  return { x: b.x + b.width / 2, y: b.y + b.height / 2 };
};
const undo = (page) => page.getByRole("button", { name: "Undo", exact: true }).first();
const bar = (page) => page.locator(".nodebar");
/** Px a mm of form, from the way two nodes stand apart. */
const scale = async (page) => {
  const [a, b] = [await dot(page, 0), await dot(page, (await rows(page)) - 1)];
  return (a.y - b.y) / (Number(await value(page, await rows(page), "Height")) - Number(await value(page, 1, "Height")));
};

onPage("wheel, keys and buttons zoom; the drawing pans and comes back whole", async (page) => {
  const k = await scale(page), box = await page.locator(".drawing").boundingBox();
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
  await page.mouse.wheel(0, -240);
  await until(async () => (await scale(page)) > 1.3 * k, "true");
  const before = await dot(page, 5);
  await page.mouse.move(box.x + 80, box.y + box.height - 40);
  await page.mouse.down();
  await page.mouse.move(box.x + 120, box.y + box.height - 60, { steps: 4 });
  await page.mouse.up();
  await until(async () => Math.round((await dot(page, 5)).x - before.x), "40");
  await page.getByRole("button", { name: "Show what is left" }).click();
  await until(async () => (await dot(page, 5)).x > before.x + 41, "true");
  await page.getByRole("button", { name: "Whole" }).click();
  await until(async () => Math.abs((await scale(page)) - k) < 0.01, "true");
  await page.locator(".node").nth(4).focus();
  const still = await dot(page, 4);
  for (let i = 0; i < 3; i++) await page.keyboard.press("+");
  await until(async () => (await scale(page)) > 3 * k, "true");
  const now = await dot(page, 4);
  assert.ok(Math.hypot(now.x - still.x, now.y - still.y) < 3, "zooms about the selected node");
  await page.keyboard.press("0");
  await until(async () => Math.abs((await scale(page)) - k) < 0.01, "true");
  await page.getByRole("button", { name: "Nearer" }).click();
  await until(async () => (await scale(page)) > 1.4 * k, "true");
});

onPage("a drag while near is as fine as the zoom, and one step of undo", async (page) => {
  await page.locator(".node").nth(5).focus();
  const whole = await scale(page);
  for (let i = 0; i < 4; i++) await page.keyboard.press("+");
  await until(async () => (await scale(page)) > 5 * whole, "true"); // 1.5 to the fourth
  const start = await value(page, 6, "Radius"), k = await scale(page), at = await dot(page, 5);
  await page.mouse.move(at.x, at.y);
  await page.mouse.down();
  await page.mouse.move(at.x + 10, at.y, { steps: 5 });
  await page.mouse.up();
  await until(async () => Math.abs(Number(await value(page, 6, "Radius")) - Number(start) - 10 / k) < 0.11, "true");
  assert.match(await undo(page).getAttribute("title"), /node 6 moved/);
  await undo(page).click();
  await until(() => value(page, 6, "Radius"), start);
});

onPage("a dragged node snaps to its neighbour's radius, unless Snap is off", async (page) => {
  const drag = async () => {
    const [from, to] = [await dot(page, 6), await dot(page, 5)];
    await page.mouse.move(from.x, from.y);
    await page.mouse.down();
    await page.mouse.move(to.x + 4, from.y + 9, { steps: 6 });
    const guides = await page.locator(".guide").count();
    await page.mouse.up();
    return guides;
  };
  const wide = await value(page, 6, "Radius");
  assert.equal(await drag(), 1);
  await until(() => value(page, 7, "Radius"), wide);
  await undo(page).click();
  await planned(page);
  await page.getByRole("button", { name: "Snap" }).click();
  assert.equal(await drag(), 0);
  await planned(page);
  assert.notEqual(await value(page, 7, "Radius"), wide);
});

onPage("a node is added on the wall: by the plus, by pressing twice, by key; the wall stays", async (page) => {
  const n = await rows(page);
  const high = async () => page.locator(".figures dd").first().innerText();
  const size = await high();
  await page.locator(".node").nth(5).focus();
  const plus = page.locator(".adder").last();
  await plus.waitFor();
  await plus.locator(".hit").click();
  await until(() => rows(page), String(n + 1));
  assert.match(await undo(page).getAttribute("title"), /node added/);
  await undo(page).click();
  await until(() => rows(page), String(n));
  await planned(page);
  await page.locator(".node").nth(5).focus();
  await page.keyboard.press("Escape");
  await until(() => page.locator(".adder").count(), "0");
  const place = await page.locator(".wall-hit").evaluate((p) => {
    const l = p.getTotalLength(), q = p.getPointAtLength(0.72 * l).matrixTransform(p.getScreenCTM());
    return { x: q.x, y: q.y };
  });
  await page.mouse.dblclick(place.x, place.y);
  await until(() => rows(page), String(n + 1));
  await planned(page);
  const on = page.locator(".node.on .dot");
  const b = await on.boundingBox();
  assert.ok(Math.hypot(b.x + b.width / 2 - place.x, b.y + b.height / 2 - place.y) < 4, "stands where it was pressed");
  assert.equal(await high(), size);
  await page.locator(".node.on").focus();
  await page.keyboard.press("Delete");
  await until(() => rows(page), String(n));
});

onPage("straight, upright and level toward a neighbour, by keyboard, each a step with its name", async (page) => {
  await page.locator(".node").nth(5).focus();
  await bar(page).waitFor();
  const press = async (name, toward) => {
    await page.getByRole("group", { name: `to node ${toward}` }).getByRole("button", { name }).focus();
    await page.keyboard.press("Enter");
  };
  await press("upright", 5);
  await until(async () => (await value(page, 6, "Radius")) === (await value(page, 5, "Radius")), "true");
  assert.match(await undo(page).getAttribute("title"), /node 6 set upright over node 5/);
  await undo(page).click();
  await press("straight", 7);
  await until(() => page.locator(".node").nth(6).getAttribute("aria-label"), /corner$/);
  await until(() => page.locator(".node").nth(5).getAttribute("aria-label"), /corner$/);
  await undo(page).click();
  await until(() => page.locator(".node").nth(5).getAttribute("aria-label"), /smooth$/);
});

onPage("all by keyboard: select, type a radius, turn, next node", async (page) => {
  await page.getByRole("button", { name: "Select node 1" }).focus();
  await page.keyboard.press("Enter");
  await page.getByRole("button", { name: "Node after" }).focus();
  for (let i = 0; i < 4; i++) await page.keyboard.press("Enter");
  await until(() => bar(page).getAttribute("aria-label"), "Node 5");
  const r = bar(page).getByLabel("Radius, mm");
  await r.fill("41,25");
  await r.blur();
  await until(() => value(page, 5, "Radius"), "41.25");
  await page.locator(".node").nth(4).focus();
  await page.keyboard.press("Alt+ArrowLeft");
  await until(() => value(page, 5, "Radius"), "41.24");
  await page.keyboard.press("Shift+ArrowUp");
  await page.keyboard.press("ArrowDown");
  await page.keyboard.press("Escape");
  await until(() => page.locator(".node.on").count(), "0");
});

onPage("touch: a finger drags a node, two zoom", async (page, { context }) => {
  await page.locator(".drawing").scrollIntoViewIfNeeded();
  const cdp = await context.newCDPSession(page), at = await dot(page, 5), start = Number(await value(page, 6, "Radius"));
  const send = (type, points) => cdp.send("Input.dispatchTouchEvent", { type, touchPoints: points.map(([x, y], id) => ({ x, y, id })) });
  await send("touchStart", [[at.x, at.y]]);
  for (let i = 1; i <= 5; i++) await send("touchMove", [[at.x + 3 * i, at.y]]);
  await send("touchEnd", []);
  await until(async () => Number(await value(page, 6, "Radius")) > start + 3, "true");
  await planned(page);
  const k = await scale(page), b = await page.locator(".drawing").boundingBox(), [x, y] = [b.x + 70, b.y + b.height / 2];
  await send("touchStart", [[x, y], [x + 60, y]]);
  for (let i = 1; i <= 5; i++) await send("touchMove", [[x - 4 * i, y], [x + 60 + 16 * i, y]]);
  await send("touchEnd", []);
  await until(async () => (await scale(page)) > 1.5 * k, "true");
}, { width: 390, height: 780, hasTouch: true, isMobile: true });
