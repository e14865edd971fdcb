// Makes dist/hosted/: the page for any static host or path, which can be installed
// and then opens without network. The single file cannot register a worker of its
// own: its policy allows no script beside its own, and from file:// there is
// nothing to register. So the hosted page is made from the single file by adding
// a link to the manifest, the icons and the one line that registers sw.js, and by
// letting the policy have just these; everything else is the same to the byte.
import { createHash } from "node:crypto";
import { mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { chromium } from "playwright-core";
import { dist } from "./core.mjs";
import { flags } from "../test/browser.mjs";

const from = (name) => readFileSync(new URL(`../hosted/${name}`, import.meta.url), "utf8");
const icon = readFileSync(new URL("../src/icon.svg", import.meta.url), "utf8");
const sha = (kind, ...texts) => texts.reduce((h, t) => h.update(t), createHash("sha256")).digest(kind);

/** The single file with what hosting needs. Each change must find its place. */
export function hostedPage(single) {
  const register = from("register.js").trim();
  const change = (text, what, to) => {
    const at = text.indexOf(what);
    if (at < 0 || text.indexOf(what, at + 1) >= 0 && what.length > 60) throw new Error(`the page has no one place ${what}`);
    return text.slice(0, at) + to + text.slice(at + what.length);
  };
  let page = change(single, "worker-src blob:", "worker-src blob: 'self'; manifest-src 'self'");
  page = change(page, "script-src ", `script-src 'sha256-${sha("base64", register)}' `);
  page = change(page, "img-src data: blob:", "img-src 'self' data: blob:");
  page = change(page, "<link rel=\"icon\"", `<link rel="manifest" href="manifest.webmanifest">\n<link rel="apple-touch-icon" href="icon-192.png">\n<meta name="theme-color" content="#e9ecea" media="(prefers-color-scheme: light)">\n<meta name="theme-color" content="#121716" media="(prefers-color-scheme: dark)">\n<link rel="icon"`);
  const end = page.lastIndexOf("</body>");
  return `${page.slice(0, end)}<script>${register}</script>\n${page.slice(end)}`;
}

/** The icon as PNG, so many px wide, with a rim of the bench around it where a mask may cut. */
async function png(browser, size, rim) {
  const page = await browser.newPage({ viewport: { width: size, height: size } });
  const inner = Math.round(size * (1 - 2 * rim)), at = (size - inner) / 2;
  await page.setContent(`<body style="margin:0;background:${rim ? "#e9ecea" : "transparent"}"><div style="position:absolute;left:${at}px;top:${at}px;width:${inner}px;height:${inner}px">${icon.replace("<svg ", `<svg width="${inner}" height="${inner}" `)}</div>`);
  const bytes = await page.screenshot({ omitBackground: rim === 0 });
  await page.close();
  return bytes;
}

/** Writes the hosted build of a single file into a folder; gives the names of its files. */
export async function host(single, folder, browser) {
  const files = new Map([
    ["index.html", hostedPage(single)],
    ["manifest.webmanifest", from("manifest.webmanifest")],
    ["icon.svg", icon],
    ["icon-192.png", await png(browser, 192, 0)],
    ["icon-512.png", await png(browser, 512, 0)],
    ["icon-maskable-512.png", await png(browser, 512, 0.14)],
  ]);
  const kept = [...files.keys()].map((f) => (f === "index.html" ? "./" : f)), sw = from("sw.js");
  files.set("sw.js", sw.replace("{{files}}", kept.join(" ")).replace("{{hash}}", sha("hex", sw, ...files.values()).slice(0, 16)));
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(folder, { recursive: true });
  for (const [name, bytes] of files) writeFileSync(join(folder, name), bytes);
  return [...files.keys()];
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? "").href) {
  const browser = await chromium.launch({ executablePath: "/usr/bin/chromium", args: flags });
  const names = await host(readFileSync(join(dist, "moldwright.html"), "utf8"), join(dist, "hosted"), browser);
  await browser.close();
  console.log(`dist/hosted/: ${names.join(", ")}`);
}
