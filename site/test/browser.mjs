// Starts a real Chromium on the built page, opened from a file as a person
// would. Every request that the page attempts beyond its own file is noted.
import { mkdtempSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { chromium } from "playwright-core";

export const address = pathToFileURL(fileURLToPath(new URL("../../dist/moldwright.html", import.meta.url))).href;
export const flags = [
  "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
  "--disable-component-update", "--disable-sync",
];

/** Chromium; with SLOW=5 in the environment its pages run at a fifth of the speed. */
export async function launch() {
  const browser = await chromium.launch({ executablePath: "/usr/bin/chromium", args: flags }), rate = Number(process.env.SLOW ?? 1);
  if (rate > 1) {
    const context = browser.newContext.bind(browser);
    browser.newContext = async (options) => {
      const c = await context(options), page = c.newPage.bind(c);
      c.newPage = async () => {
        const p = await page();
        await (await c.newCDPSession(p)).send("Emulation.setCPUThrottlingRate", { rate });
        return p;
      };
      return c;
    };
  }
  return browser;
}

/** How long a state is waited for, ms: only a test that fails takes as long, so a slow machine has room. */
export const PATIENCE = 30_000;

/** A page opened and planned, in storage of its own; errors and requests are collected.
 *  first is awaited between the making of its window and its opening. */
export async function open(browser, { width = 1280, height = 800, init, first, ...options } = {}) {
  const context = await browser.newContext({ viewport: { width, height }, acceptDownloads: true, ...options });
  context.setDefaultTimeout(PATIENCE);
  const page = await context.newPage();
  const seen = { errors: [], requests: [] };
  page.on("pageerror", (e) => seen.errors.push(String(e)));
  page.on("console", (m) => { if (m.type() === "error") seen.errors.push(m.text()); });
  context.on("request", (r) => { if (!/^(data|blob):/.test(r.url()) && r.url() !== address) seen.requests.push(r.url()); });
  if (init) await page.addInitScript(init);
  await first?.();
  await page.goto(address);
  await planned(page);
  return { context, page, seen };
}

/** Waits until what was done has been drawn and all that was asked of the core has
 *  been answered and drawn too. What comes from a file or a link is asked only once
 *  that is read: for such a thing its own state must be waited for. */
export const idle = (page) => page.evaluate(async (most) => {
  // two frames: an effect after the first may ask for more
  const drawn = () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(done))));
  const end = performance.now() + most;
  for (let still = 0; still < 2;) {
    await drawn();
    const { active, queue } = window.moldwrightPage.core;
    still = active || queue.length ? 0 : still + 1;
    if (performance.now() > end) throw new Error("the core does not come to rest");
  }
}, PATIENCE);

/** Waits until nothing is under way, and the verdict is of the job on the bench. */
export async function planned(page) {
  await idle(page);
  await page.locator(".verdict[aria-busy=false]").waitFor();
}

/** Polls until the page's answer is the wanted one; fails with both. */
export async function until(get, want) {
  const end = performance.now() + PATIENCE;
  let got;
  do {
    got = String(await get()).replaceAll("\u00a0", " ");
    if (want instanceof RegExp ? want.test(got) : got === want) return;
    await new Promise((r) => setTimeout(r, 50));
  } while (performance.now() < end);
  throw new Error(`wanted ${want}, got ${got}`);
}

export const verdict = async (page) => {
  await planned(page);
  return (await page.locator(".verdict p").innerText()).replaceAll("\u00a0", " ");
};

/** What a click downloads: its name and bytes. */
export async function downloaded(page, click) {
  const [d] = await Promise.all([page.waitForEvent("download"), click()]);
  const path = join(mkdtempSync(join(tmpdir(), "page-test-")), d.suggestedFilename());
  await d.saveAs(path);
  return { name: d.suggestedFilename(), path };
}
