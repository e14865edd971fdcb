// A person's hands in Chromium, from file://.
import { address, downloaded, launch } from "./browser.mjs";

export async function start() {
  const browser = await launch();
  return {
    name: "Chromium",
    end: () => browser.close(),
    async page({ width, height, touch = false }) {
      const context = await browser.newContext({ viewport: { width, height }, hasTouch: touch, isMobile: touch, acceptDownloads: true });
      const page = await context.newPage(), errors = [];
      page.on("pageerror", (e) => errors.push(String(e)));
      page.on("console", (m) => { if (m.type() === "error") errors.push(m.text()); });
      return {
        errors,
        open: (hash = "") => page.goto(address + hash),
        evaluate: (f, arg) => page.evaluate(f, arg),
        click: (x, y) => page.mouse.click(x, y),
        tap: (x, y) => page.touchscreen.tap(x, y),
        key: (k) => page.keyboard.press(k),
        type: (t) => page.keyboard.type(t),
        files: (selector, paths) => page.locator(selector).setInputFiles(paths),
        downloaded: async (act) => (await downloaded(page, act)).path,
        end: () => context.close(),
      };
    },
  };
}
