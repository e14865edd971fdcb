// The words of the page in every language: nothing left in English, no value lost
// from a sentence, and, in Chromium, no text that its place cannot hold.
import assert from "node:assert/strict";
import { readdirSync } from "node:fs";
import { after, before, test } from "node:test";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";
import { words } from "../tools/words.mjs";
import { launch, open, planned } from "./browser.mjs";
import { tab } from "./onpage.mjs";

/** Languages of which every string is written; a translator adds the one that is done. */
const complete = ["de", "fr", "es"];

/** Rightly the same as in English in some language: names, signs, formats. */
const same = new Set([
  "Moldwright", "STL", "SVG", "Zoom", "oval", "Radius", "Radius, mm",
  "Faces", "Source", "Versions", "Questions", "Solution", "Table", "Verdict",
]);
const unit = /^(mm|cm|ml|g\/ml|g\/cm² min)$/;

const { tables, languages } = await words();
const others = Object.keys(languages).filter((l) => l !== "en");

/** Every string and function of a table with its path. */
function* leaves(table, path = "") {
  for (const [key, value] of Object.entries(table)) {
    if (typeof value === "object") yield* leaves(value, `${path}${key}.`);
    else yield [`${path}${key}`, value];
  }
}
const flat = Object.fromEntries(Object.entries(tables).map(([l, t]) => [l, new Map(leaves(t))]));

// A word has as many forms as its language inflects it into.
const inflected = (path) => path.replace(/^(help\.terms\.\w+\.forms)\.\d+$/, "$1");
const keys = (l) => [...new Set([...flat[l].keys()].map(inflected))].sort();

test("every language has the keys of English, and lists of the same length", () => {
  for (const l of others) assert.deepEqual(keys(l), keys("en"), l);
});

test("no key of one file of words hides that of another", async () => {
  const dir = fileURLToPath(new URL("../src/words/en/", import.meta.url));
  const files = readdirSync(dir).filter((f) => f !== "index.ts");
  const contents = files.map((f, i) => `export * as m${i} from "./${f.replace(".ts", "")}";`).join("\n");
  const out = await build({ stdin: { contents, resolveDir: dir }, bundle: true, write: false, format: "esm" });
  const modules = await import(`data:text/javascript;base64,${Buffer.from(out.outputFiles[0].text).toString("base64")}`);
  const own = new Set(["trace", "keep", "classroom", "help", "guide", "reading"]); // these stand under a key of their own
  const keys = Object.values(modules).flatMap((m) => Object.entries(m)).filter(([name, v]) => typeof v === "object" && !own.has(name)).flatMap(([, v]) => Object.keys(v));
  assert.deepEqual(keys.filter((k, i) => keys.indexOf(k) !== i), []);
  assert.ok(keys.length > 300, String(keys.length));
});

test("no table holds an empty string or a sentence that breaks", () => {
  for (const [l, table] of Object.entries(flat)) {
    for (const [path, value] of table) {
      if (typeof value === "string") assert.ok(value !== "" || flat.en.get(path) === "", `${l} ${path} is empty`);
    }
  }
});

/** Values to try a function with: words, numbers from one on, parts, sources. */
const mark = (i) => `⟦${i}⟧`;
const tries = [
  { of: mark, marks: true }, { of: (i) => 701 + i, marks: true }, { of: (i) => ({ file: mark(i) }), marks: true, shown: mark },
  { of: () => 0 }, { of: () => 1 }, { of: () => 2 }, { of: () => true }, { of: () => false },
  ...["lower", "upper", "core", "A", "link", "drop", "paste", "upright", "level", "one"].map((name) => ({ of: (i) => (i === 0 ? name : mark(i)), marks: true, shown: (i) => (i === 0 ? "" : mark(i)) })), // a name chooses the words
];

const result = (f, args) => { try { return f(...args); } catch { return null; } };

test("no sentence loses a value that the English one shows", () => {
  for (const [path, english] of flat.en) {
    if (typeof english !== "function") continue;
    for (const l of others) {
      const f = flat[l].get(path);
      assert.ok(f.length >= english.length, `${l} ${path} takes ${f.length} values, English ${english.length}`);
      for (const { of, marks, shown = of } of tries) {
        const args = Array.from({ length: english.length }, (_, i) => of(i)), en = result(english, args);
        if (typeof en !== "string" || en.includes("undefined")) continue; // not meant for such values
        const said = result(f, args);
        assert.equal(typeof said, "string", `${l} ${path} with ${JSON.stringify(args)}`);
        assert.ok(!/undefined|NaN|\[object/.test(said) || /undefined|NaN|\[object/.test(en), `${l} ${path}: ${said}`);
        if (en !== "") assert.notEqual(said, "", `${l} ${path} with ${JSON.stringify(args)}`);
        if (!marks) continue;
        args.forEach((_, i) => {
          const v = String(shown(i));
          if (v.length > 2 && en.includes(v)) assert.ok(said.includes(v), `${l} ${path} loses value ${i + 1}: ${said}`);
        });
      }
    }
  }
});

test("the functions of English show what they are given", () => {
  const silent = [...flat.en].filter(([, f]) => typeof f === "function" && f.length > 0
    && !tries.some(({ of, shown = of }) => { const en = result(f, Array.from({ length: f.length }, (_, i) => of(i))); return typeof en === "string" && (en.includes(String(shown(0))) || en.includes(String(shown(1)))); }));
  // these choose between sentences
  assert.deepEqual(silent.map(([path]) => path).filter((p) => !["class.helps"].includes(p)), []);
});

for (const l of complete) {
  test(`nothing of ${languages[l]} is still English`, () => {
    const letters = (s) => /\p{L}{2,}/u.test(s);
    const left = [...flat.en].filter(([path, en]) => typeof en === "string" && letters(en) && !same.has(en) && !unit.test(en) && flat[l].get(path) === en);
    assert.deepEqual(left.map(([path, en]) => `${path}: ${en}`), []);
  });
}

let browser;
before(async () => { browser = await launch(); });
after(async () => { await browser.close(); });

const tabs = ["form", "release", "parts", "tooling", "casting", "sheets", "class"];

for (const l of ["en", ...complete]) {
  for (const width of [1280, 320]) {
    test(`${languages[l]}, ${width} px: every text has its room, every target its size`, async () => {
      const { context, page } = await open(browser, { width, locale: l, ...(width === 320 ? { hasTouch: true, isMobile: true, height: 700 } : {}) });
      assert.equal(await page.locator("html").getAttribute("lang"), l);
      const bad = [];
      for (const t of tabs) {
        await tab(page, t);
        await page.evaluate(() => { for (const d of document.querySelectorAll("#tabpanel details")) d.open = true; });
        await planned(page);
        if (t === "sheets") await page.locator(".pages[aria-busy=false] img").first().waitFor();
        await page.waitForFunction(() => [...document.images].every((i) => i.complete && i.naturalWidth > 0));
        bad.push(...(await page.evaluate(cramped, width === 320)).map((x) => `${t}: ${x}`));
      }
      assert.deepEqual([...new Set(bad)], []);
      await context.close();
    });
  }
}

/** In the page: what is cut off, sticks out of its box or is too small to touch. */
function cramped(touch) {
  const out = [], name = (e) => `${e.tagName.toLowerCase()}.${String(e.getAttribute("class") ?? "").replaceAll(" ", ".")} “${(e.innerText || e.value || e.getAttribute("aria-label") || "").trim().slice(0, 40)}”`;
  const seen = (e) => e.checkVisibility({ visibilityProperty: true, opacityProperty: true }) && !e.closest(".away, .skip, svg, .labels");
  if (document.documentElement.scrollWidth > innerWidth) out.push(`the page scrolls sideways: ${document.documentElement.scrollWidth}`);
  for (const e of document.querySelectorAll("#page *")) {
    if (!seen(e)) continue;
    const style = getComputedStyle(e), box = e.getBoundingClientRect();
    // what a user has named may scroll in its field
    if (e.matches("input[type=text], input:not([type]), select") && !e.matches(".name, .line input") && e.clientWidth > 0 && e.scrollWidth > e.clientWidth + 1) out.push(`${name(e)} is cut: ${e.scrollWidth} in ${e.clientWidth}`);
    const text = [...e.childNodes].filter((n) => n.nodeType === 3 && n.textContent.trim());
    if (text.length && !e.matches("option, textarea, title, style, script")) {
      if (style.overflowX !== "visible" && style.overflowX !== "auto" && e.scrollWidth > e.clientWidth + 1) out.push(`${name(e)} is cut: ${e.scrollWidth} in ${e.clientWidth}`);
      for (const n of text) {
        const r = document.createRange();
        r.selectNodeContents(n);
        for (const b of r.getClientRects()) {
          if (style.display !== "inline" && (b.right > box.right + 1 || b.left < box.left - 1)) { out.push(`${name(e)} sticks out by ${Math.max(b.right - box.right, box.left - b.left).toFixed(0)}`); break; }
          const held = e.closest(".panel, .verdict, header, .next, .nodebar")?.getBoundingClientRect();
          if (held && !e.closest(".wide") && (b.right > held.right + 1 || b.left < held.left - 1)) { out.push(`${name(e)} leaves its panel`); break; }
        }
      }
    }
    if (!touch || !e.matches("button, select, summary, a[href], label.button, input:not([type=range]), textarea")) continue;
    if (e.matches("[disabled], .term, .ask-mark, .away, .skip")) continue; // words in a sentence are exempt (WCAG 2.2, 2.5.8)
    const of = e.matches("input[type=checkbox], input[type=radio]") ? e.closest("label") ?? e.closest(".field") ?? e : e;
    const b = of.getBoundingClientRect();
    if (b.height < 43.5 || b.width < 43.5) out.push(`${name(e)} is ${b.width.toFixed(0)} × ${b.height.toFixed(0)} px`);
  }
  return out;
}
