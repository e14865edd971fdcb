// Takes a picture of every view of the page, at desk and phone width, in light
// and dark, into dist/gallery/, with one contact sheet of each kind as HTML and
// PNG, to be looked at.
import { mkdirSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { chromium } from "playwright-core";
import { dist } from "./core.mjs";
import { screens, together } from "./screens.mjs";
import { before, views } from "./views.mjs";
import { flags, open } from "../test/browser.mjs";

const out = join(dist, "gallery");
// make gallery takes all; names of views, or of kinds such as 360-dark, take only these
const only = process.argv.slice(2).filter((a) => a in views), kinds = process.argv.slice(2).filter((a) => !(a in views));
if (process.argv.length === 2) rmSync(out, { recursive: true, force: true });
mkdirSync(out, { recursive: true });
const browser = await chromium.launch({ executablePath: "/usr/bin/chromium", args: [...flags.filter((f) => f !== "--disable-gpu"), "--use-gl=swiftshader", "--enable-unsafe-swiftshader"] });
const sheet = await browser.newPage({ viewport: { width: 2200, height: 1000 } });
// the same questions are drawn at every turn
const always = () => { let n = 1; Math.random = () => (n = (n * 16807) % 2147483647) / 2147483647; };
let missing = 0;
for (const width of [1280, 360]) {
  for (const colorScheme of ["light", "dark"]) {
    const kind = `${width}-${colorScheme}`, desk = width > 900, shots = [];
    if (kinds.length && !kinds.includes(kind)) continue;
    for (const [name, go] of Object.entries(views)) {
      if (only.length && !only.includes(name)) continue;
      const { context, page } = await open(browser, { width, height: desk ? 800 : 740, colorScheme, reducedMotion: "reduce", hasTouch: !desk, isMobile: !desk, init: before[name] ?? always });
      try {
        await go(page);
        await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
        const path = `${kind}-${name}.png`;
        await together(sheet, await screens(page, desk), join(out, path), desk ? 1360 : 1480);
        shots.push([name, path]);
      } catch (e) {
        missing++;
        console.log(`${kind} ${name}: ${String(e.message).split("\n")[0]}`);
      }
      await context.close();
    }
    const html = `<!doctype html><meta charset="utf-8"><title>Views, ${kind}</title><style>body{margin:16px;font:14px sans-serif;background:#888;display:grid;grid-template-columns:repeat(5,1fr);gap:16px;align-items:start}figure{margin:0}img{width:100%;display:block;max-height:700px;object-fit:cover;object-position:top left}</style>${shots.map(([n, p]) => `<figure><a href="${p}"><img src="${p}" alt=""></a><figcaption>${n}</figcaption></figure>`).join("")}`;
    writeFileSync(join(out, `${kind}.html`), html);
    await sheet.goto(pathToFileURL(join(out, `${kind}.html`)).href);
    await sheet.screenshot({ path: join(out, `contact-${kind}.png`), fullPage: true });
    console.log(`dist/gallery/contact-${kind}.png: ${shots.length} views`);
  }
}
await browser.close();
process.exit(missing ? 1 : 0);
