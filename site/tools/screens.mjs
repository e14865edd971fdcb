// Pictures of a view as it is seen, screen after screen: the page is scrolled, or
// at a desk what scrolls within it, and the screens stand side by side in one
// picture. (A picture of a whole page at once changes the screen's size, and with
// it what the page takes for a touch screen.)
import { writeFileSync } from "node:fs";

const rows = { desk: ["dialog[open]", ".help-card:popover-open", ".exercise-work", ".results", ".class-look", ".reading", "#tabpanel"], phone: ["dialog[open]"] };

const drawn = (page) => page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));

/** The screens of a view, as PNG. */
export async function screens(page, desk) {
  const shots = [];
  if (!desk && !(await page.locator("dialog[open]").count())) {
    await page.evaluate(() => scrollTo(0, 0));
    await drawn(page);
  }
  shots.push(await page.screenshot());
  for (const selector of desk ? rows.desk : rows.phone) {
    const at = page.locator(selector).first();
    if (!(await at.count())) continue;
    const { high, seen } = await at.evaluate((el) => ({ high: el.scrollHeight, seen: el.clientHeight }));
    if (high <= seen + 8) continue;
    for (let y = seen; y < high - 24 && shots.length < 8; y += seen - 24) {
      await at.evaluate((el, to) => { el.scrollTop = to; }, y - 24);
      await drawn(page);
      shots.push(await (desk ? at : page).screenshot());
    }
    return shots;
  }
  if (await page.locator("dialog[open]").count()) return shots;
  const { high, seen } = await page.evaluate(() => ({ high: document.documentElement.scrollHeight, seen: innerHeight }));
  const step = seen - 80;
  for (let y = step; y + 80 < high && shots.length < 12; y += step) {
    await page.evaluate((to) => scrollTo(0, to), y);
    await drawn(page);
    shots.push(await page.screenshot());
  }
  return shots;
}

/** Several screens as one picture. */
export async function together(sheet, shots, path, wide) {
  if (shots.length === 1) return writeFileSync(path, shots[0]);
  await sheet.setContent(`<style>body{margin:0;background:#888;display:flex;flex-wrap:wrap;gap:12px;width:${wide}px;align-items:start}img{display:block}</style>${shots.map((b) => `<img src="data:image/png;base64,${b.toString("base64")}">`).join("")}`);
  await sheet.locator("body").screenshot({ path });
}
