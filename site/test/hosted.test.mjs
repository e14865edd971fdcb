// The hosted build on a plain static server under a path of its own: it can be
// installed, opens again with the server gone, takes up a new version without
// touching the open job, leaves the caches of others alone, and is the single
// file but for what hosting needs.
import assert from "node:assert/strict";
import { mkdtempSync, readFileSync } from "node:fs";
import { createServer } from "node:http";
import { tmpdir } from "node:os";
import { extname, join } from "node:path";
import { after, before, test } from "node:test";
import { host, hostedPage } from "../tools/hosted.mjs";
import { address, launch, planned, until, verdict } from "./browser.mjs";

const PATH = "/kiln/pots/";
const single = readFileSync(new URL(address), "utf8");
const types = { ".html": "text/html", ".js": "text/javascript", ".svg": "image/svg+xml", ".png": "image/png", ".webmanifest": "application/manifest+json" };
let browser, folder, server, port = 0;

const serve = () => new Promise((resolve) => {
  server = createServer((q, a) => {
    const name = new URL(q.url, "http://x").pathname;
    try {
      if (!name.startsWith(PATH)) throw new Error("not here");
      const file = name.slice(PATH.length) || "index.html", bytes = readFileSync(join(folder, file));
      a.writeHead(200, { "Content-Type": types[extname(file)], "Cache-Control": "max-age=600" }).end(bytes);
    } catch {
      a.writeHead(404).end();
    }
  }).listen(port, "127.0.0.1", () => resolve(port = server.address().port));
});
const gone = () => new Promise((done) => { server.closeAllConnections(); server.close(done); });

before(async () => {
  browser = await launch();
  folder = mkdtempSync(join(tmpdir(), "hosted-"));
  await host(single, folder, browser);
  await serve();
});
after(async () => { await browser.close(); if (server.listening) await gone(); });

test("the hosted page is the single file with a manifest, icons and one more script", () => {
  const page = hostedPage(single), register = /<script>([^<]*register\("sw\.js"\)[^<]*)<\/script>\n/.exec(page);
  const back = page.replace(register[0], "").replace(/<link rel="manifest"[\s\S]*?(?=<link rel="icon")/, "")
    .replace("worker-src blob: 'self'; manifest-src 'self'", "worker-src blob:").replace(/script-src '[^']*' /, "script-src ").replace("img-src 'self' ", "img-src ");
  assert.equal(back, single);
  for (const rule of ["default-src 'none'", "connect-src 'none'"]) assert.ok(page.includes(rule));
  assert.ok(!single.includes("sw.js") && !single.includes("webmanifest"));
});

test("installs, takes up a new version beside an open job, and works with the server gone", async () => {
  const context = await browser.newContext({ viewport: { width: 1280, height: 800 } });
  const page = await context.newPage(), errors = [];
  page.on("pageerror", (e) => errors.push(String(e)));
  page.on("console", (m) => { if (m.type() === "error") errors.push(m.text()); });
  const home = `http://127.0.0.1:${port}${PATH}`;
  await page.goto(home);
  await planned(page);
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => {}));
  await page.evaluate(() => caches.open("of another page on this host"));

  const cdp = await context.newCDPSession(page);
  const manifest = JSON.parse((await cdp.send("Page.getAppManifest")).data);
  for (const key of ["name", "short_name", "start_url", "display", "icons", "theme_color"]) assert.ok(manifest[key], key);
  const { installabilityErrors } = await cdp.send("Page.getInstallabilityErrors");
  assert.deepEqual(installabilityErrors.filter((e) => e.errorId !== "in-incognito"), []);
  for (const i of manifest.icons.filter((i) => i.type === "image/png")) {
    const png = readFileSync(join(folder, i.src));
    assert.equal(`${png.readUInt32BE(16)}x${png.readUInt32BE(20)}`, i.sizes, i.src);
  }

  const names = () => page.evaluate(() => caches.keys().then((k) => k.sort()));
  const mine = async () => (await names()).filter((n) => n.startsWith("moldwright "));
  const [first] = await mine();
  await host(single.replace("<title>Moldwright</title>", "<title>Moldwright, later</title>"), folder, browser);
  await page.locator("input.name").fill("Open while it came");
  await page.evaluate(() => navigator.serviceWorker.ready.then((r) => r.update()).then(() => {}));
  await until(async () => { const n = await mine(); return n.length === 1 && n[0] !== first && n[0].startsWith(`moldwright ${home} `); }, "true");
  assert.ok((await names()).includes("of another page on this host"));
  assert.equal(await page.locator("input.name").inputValue(), "Open while it came");
  assert.equal(await page.title(), "Moldwright");
  await page.reload();
  await planned(page);
  assert.equal(await page.title(), "Moldwright, later");
  await until(() => page.locator("input.name").inputValue(), "Open while it came");

  await gone();
  await page.locator("input.name").fill("Offline jar");
  await page.reload();
  await planned(page);
  await until(() => page.locator("input.name").inputValue(), "Offline jar");
  await until(() => verdict(page), /parts?/);
  const deep = await context.newPage();
  await deep.goto(`${home}index.html?from=home`);
  await planned(deep);
  await deep.close();
  assert.deepEqual(errors, []);
  await context.close();
});
