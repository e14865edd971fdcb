// Takes a picture of every view of the page, at desk and phone width, in light
// and dark, into dist/gallery/, with one contact sheet of each kind as HTML and
// PNG, to be looked at. Each view is reached as a person reaches it.
import { mkdirSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { chromium } from "playwright-core";
import { dist } from "./core.mjs";
import { flags, open, planned } from "../test/browser.mjs";
import { tab } from "../test/onpage.mjs";
import { outlined, photo } from "../test/trace-help.mjs";

const out = join(dist, "gallery");
const press = (page, name) => page.getByRole("button", { name }).first().click();
const file = (page, name, text) => page.locator("header input[type=file]").setInputFiles({ name, mimeType: "", buffer: Buffer.from(text) });
const pot = async (page, name) => {
  await press(page, "Sample pots");
  await page.locator("dialog.samples[open] li button").filter({ hasText: name }).first().click();
  await page.waitForFunction((n) => document.querySelector("input.name")?.value === n, name);
  await planned(page);
};
const panel = (name, of) => async (page) => {
  if (of) await pot(page, of);
  await tab(page, name);
};
/** From now on the worker works at an op without end. */
const stall = (page, op) => page.workers()[0].evaluate((slow) => {
  const m = globalThis.moldwright;
  globalThis.moldwright = { ...m, call(o, ...rest) {
    if (o === slow) { globalThis.moldwrightProgress(0.4, "Making meshes"); for (;;); }
    return m.call(o, ...rest);
  } };
}, op);
const drawSet = async (page) => {
  await tab(page, "class");
  await press(page, /^Add \d question/);
  await page.getByRole("button", { name: "Try it as a student" }).waitFor();
};

/** Every view by name, and how a person comes to it. */
const views = {
  "first-visit": async () => {},
  samples: async (page) => { await press(page, "Sample pots"); },
  versions: async (page) => {
    await page.locator("input.name").fill("Harbour jar, wider");
    await page.getByLabel("Node 6, Radius, mm").fill("55");
    await page.locator("input.name").focus();
    await page.waitForFunction(() => Object.keys(localStorage).some((k) => k.startsWith("moldwright.kept.")));
    await press(page, "Versions");
  },
  "form-node": async (page) => { await page.locator(".node").nth(5).focus(); await page.keyboard.press("ArrowRight"); await planned(page); },
  "form-fault": async (page) => { await page.getByLabel("Node 4, Radius, mm").fill("-5"); await page.locator(".verdict.fault").waitFor(); },
  "form-rows-fault": async (page) => {
    await page.locator("details.rows summary").first().click();
    await page.locator("details.rows textarea").fill("0 0\n30 twelve\n60 50");
    await page.getByLabel("The rows are in").selectOption("mm");
    await press(page, "Use these rows");
    await page.locator(".faults li").first().waitFor();
  },
  damaged: async (page) => { await file(page, "kiln-shelf.json", '{"name":"Reed cup","colour":1,"form":{"outer":[{"r":0,"z":0},{"r":30,"z":0,"corner":true},{"r":45,"z":60},{"r":40,"z":9'); await page.locator("dialog.damaged").waitFor(); },
  "trace": async (page) => { await outlined(page, "vase-400.jpg", photo("vase-400.jpg")); },
  "trace-found": async (page) => {
    await outlined(page, "vase-400.jpg", photo("vase-400.jpg"));
    await page.getByLabel("mm", { exact: true }).or(page.locator(".known input")).first().fill("150");
    await page.locator(".primary.take:not(:disabled)").waitFor();
  },
  "release-clear": panel("release"), "release-catches": panel("release", "Dovetail dish"), "release-stretched": async (page) => {
    await tab(page, "release");
    await press(page, "×10").catch(() => {});
  },
  "parts-two": panel("parts"), "parts-sides": panel("parts", "Reel bottle"), "parts-faceted": panel("parts", "Trivet vase"),
  "space-mold": async (page) => { await press(page, "In space"); await page.locator(".labels span:not([hidden])").first().waitFor(); },
  "space-kit": async (page) => { await press(page, "In space"); await press(page, "Printed kit"); await page.waitForFunction(() => !document.querySelector(".said")); },
  tooling: panel("tooling"), "tooling-busy": async (page) => {
    await stall(page, "solids");
    await tab(page, "tooling");
    await press(page, /3MF/);
    await page.locator(".underway").waitFor();
  },
  casting: panel("casting"), "casting-own": async (page) => { await tab(page, "casting"); for (const d of await page.locator("#tabpanel details").all()) await d.locator("summary").first().click(); },
  sheets: async (page) => { await tab(page, "sheets"); await page.locator(".pages img").first().waitFor(); },
  "sheets-report": async (page) => { await tab(page, "sheets"); await page.locator("input[name=sheet]").nth(3).check(); await page.locator(".pages img").first().waitFor(); },
  "class-empty": panel("class"), "class-set": drawSet,
  "exercise-start": async (page) => { await drawSet(page); await press(page, "Try it as a student"); await page.locator(".exercise-start input").waitFor(); },
  "exercise-question": async (page) => { await drawSet(page); await press(page, "Try it as a student"); await page.locator(".exercise-start input").fill("Mara"); await page.keyboard.press("Enter"); await page.locator("#asked").waitFor(); },
  "no-storage": async () => {},
};

// make gallery takes all; names of views, or of kinds such as 360-dark, take only these
const only = process.argv.slice(2).filter((a) => a in views), kinds = process.argv.slice(2).filter((a) => !(a in views));
if (process.argv.length === 2) rmSync(out, { recursive: true, force: true });
mkdirSync(out, { recursive: true });
const browser = await chromium.launch({ executablePath: "/usr/bin/chromium", args: [...flags.filter((f) => f !== "--disable-gpu"), "--use-gl=swiftshader", "--enable-unsafe-swiftshader"] });
let missing = 0;
for (const width of [1280, 360]) {
  for (const colorScheme of ["light", "dark"]) {
    const kind = `${width}-${colorScheme}`, shots = [];
    if (kinds.length && !kinds.includes(kind)) continue;
    for (const [name, go] of Object.entries(views)) {
      if (only.length && !only.includes(name)) continue;
      const init = name === "no-storage" ? () => Object.defineProperty(window, "localStorage", { get() { throw new DOMException("blocked", "SecurityError"); } }) : undefined;
      const { context, page } = await open(browser, { width, height: width > 900 ? 800 : 740, colorScheme, reducedMotion: "reduce", hasTouch: width < 900, isMobile: width < 900, init });
      try {
        await go(page);
        await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
        const path = `${kind}-${name}.png`;
        await page.screenshot({ path: join(out, path), fullPage: width < 900 && !(await page.locator("dialog[open]").count()) });
        shots.push([name, path]);
      } catch (e) {
        missing++;
        console.log(`${kind} ${name}: ${String(e.message).split("\n")[0]}`);
      }
      await context.close();
    }
    const cols = width > 900 ? 4 : 8;
    const html = `<!doctype html><meta charset="utf-8"><title>Views, ${kind}</title><style>body{margin:16px;font:14px sans-serif;background:#888;display:grid;grid-template-columns:repeat(${cols},1fr);gap:16px;align-items:start}figure{margin:0}img{width:100%;display:block;max-height:${width > 900 ? "none" : "900px"};object-fit:cover;object-position:top}</style>${shots.map(([n, p]) => `<figure><a href="${p}"><img src="${p}" alt=""></a><figcaption>${n}</figcaption></figure>`).join("")}`;
    writeFileSync(join(out, `${kind}.html`), html);
    const page = await browser.newPage({ viewport: { width: 2200, height: 1000 } });
    await page.goto(pathToFileURL(join(out, `${kind}.html`)).href);
    await page.screenshot({ path: join(out, `contact-${kind}.png`), fullPage: true });
    await page.close();
    console.log(`dist/gallery/contact-${kind}.png: ${shots.length} views`);
  }
}
await browser.close();
process.exit(missing ? 1 : 0);
