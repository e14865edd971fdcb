// Makes dist/moldwright.html: the page with its script, style, fonts, worker and
// core inside. The core must stand in dist/ already, with its wasm_exec.js. It is
// packed; so are the plan of the sample, with which a first visit begins, and the
// view in space, which is unpacked when it is first opened.
// Nothing in the page is fetched, and its Content-Security-Policy says so: the
// scripts and the one style are named by their hashes.
import { createHash } from "node:crypto";
import { readFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { gzipSync } from "node:zlib";
import { build, transform } from "esbuild";
import { startCore } from "./tools/core.mjs";
import { firstPlan } from "./tools/first-plan.mjs";
import { words } from "./tools/words.mjs";

const here = dirname(fileURLToPath(import.meta.url));
const dist = join(here, "../dist");
const read = (...p) => readFileSync(join(here, ...p), "utf8");
const base64 = (...p) => readFileSync(join(here, ...p)).toString("base64");

/** The sample of a first visit goes into the page as the core completes it, so
 *  that the page need not ask before it asks for the plan; and with it that plan. */
const wasm = await startCore();
const sample = wasm.ask("read", { kind: "job", text: read("samples/harbour-jar.json") });
if (!sample.job) throw new Error(`the sample does not read: ${sample.error.message}`);
const completed = {
  name: "completed",
  setup(b) {
    b.onLoad({ filter: /harbour-jar\.json$/ }, () => ({ contents: JSON.stringify(sample.job), loader: "json" }));
  },
};

async function bundle(entry) {
  const out = await build({
    plugins: [completed],
    entryPoints: [join(here, "src", entry)], bundle: true, write: false, format: "iife", target: "es2022",
    minify: true, legalComments: "none", jsx: "automatic", jsxImportSource: "preact", loader: { ".css": "css" },
    logLevel: "warning", charset: "utf8",
  });
  return out.outputFiles[0].text.trim().replaceAll("</script", "<\\/script");
}

const ts = await transform(read("src/pairs.ts"), { loader: "ts" });
const { encode, WHOLE } = await import(`data:text/javascript,${encodeURIComponent(ts.code)}`);
// with less memory zlib's blocks are shorter and their codes follow the bytes closer
const pack = (bytes) => encode(gzipSync(bytes, { level: 9, memLevel: 7 }));

const hash = (text) => `'sha256-${createHash("sha256").update(text).digest("base64")}'`;
const face = (weight, file) =>
  `@font-face{font-family:"Moldwright Sans";font-weight:${weight};src:url(data:font/woff2;base64,${base64("../core/sheet/fonts", file)}) format("woff2")}`;

const first = await bundle("first.ts");
const js = await bundle("main.tsx");
const css = face(400, "MoldwrightSans-Regular.woff2") + face(700, "MoldwrightSans-Bold.woff2") + await bundle("style.css");
const worker = read("../dist/wasm_exec.js").replaceAll("</script", "<\\/script") + "\n" + await bundle("worker.ts");
// in pieces each of which is decoded by itself
const core = pack(readFileSync(join(dist, "core.wasm"))).match(new RegExp(`.{1,${15_625 * WHOLE}}`, "g"))
  .map((piece) => `<script type="text/plain" class="core">${piece}</script>`).join("\n");
const spaceJs = await bundle("space/scene.ts");
const space = pack(spaceJs);
const { tables, languages } = await words();
const plan = pack(JSON.stringify(firstPlan(wasm, sample.job, Object.keys(languages), (l) => tables[l].samples[sample.job.name][0])));
const icon = `data:image/svg+xml;base64,${base64("src/icon.svg")}`;
const csp = [
  "default-src 'none'", `script-src ${hash(first)} ${hash(js)} ${hash(spaceJs)} 'wasm-unsafe-eval'`, `style-src ${hash(css)}`, "font-src data:",
  "img-src data: blob:", "worker-src blob:", "connect-src 'none'", "base-uri 'none'", "form-action 'none'",
].join("; ");

// each language once: one that is not written yet says it in English
const noscript = Object.entries(tables).filter(([l, t]) => l === "en" || t.noScript !== tables.en.noScript)
  .map(([l, t]) => `<p class="noscript" lang="${l}">${t.noScript}</p>`).join("");
const parts = { csp, noscript, icon, css, js, worker, first, plan, space, core };
const page = read("index.html").replace(/\{\{(\w+)\}\}/g, (_, k) => parts[k]);
writeFileSync(join(dist, "moldwright.html"), page);
console.log(`dist/moldwright.html ${(page.length / 1e6).toFixed(2)} MB`);
