// Text at twice the size, colours and motion as somebody has asked for them, fingers
// in place of a mouse, and everything that is dragged done without a drag.
import assert from "node:assert/strict";
import { planned, until } from "./browser.mjs";
import { pages, tab } from "./onpage.mjs";

const onPage = pages();
const panels = ["form", "release", "parts", "tooling", "casting", "sheets", "class"];
const twice = () => addEventListener("DOMContentLoaded", () => document.head.append(Object.assign(document.createElement("style"), { textContent: "html { font-size: 200% !important }" })));

/** What lies over what, of the page's large pieces. */
const overlaps = (page) => page.evaluate(() => {
  const boxes = ["header", ".verdict", ".bench > .drawing", ".nodebar", ".panels", ".next"].flatMap((s) => [...document.querySelectorAll(s)].map((e) => ({ s, e, r: e.getBoundingClientRect(), sticky: [e, e.parentElement].some((x) => getComputedStyle(x).position === "sticky") })));
  const out = [];
  for (const a of boxes) for (const b of boxes) {
    if (boxes.indexOf(a) >= boxes.indexOf(b) || a.e.contains(b.e) || a.sticky || b.sticky || !a.r.width || !b.r.width) continue;
    const w = Math.min(a.r.right, b.r.right) - Math.max(a.r.left, b.r.left), h = Math.min(a.r.bottom, b.r.bottom) - Math.max(a.r.top, b.r.top);
    if (w > 1 && h > 1) out.push(`${a.s} and ${b.s} by ${Math.round(w)} × ${Math.round(h)}`);
  }
  const { scrollWidth, clientWidth } = document.documentElement;
  return [...out, ...(scrollWidth > clientWidth ? [`${scrollWidth - clientWidth} too wide`] : [])];
});

for (const [what, options] of [
  ["text of twice the size at 1280 px", { width: 1280, init: twice, bypassCSP: true }],
  ["text of twice the size at 640 px", { width: 640, init: twice, bypassCSP: true }],
  ["1280 px seen at 200 %", { width: 640, height: 400, deviceScaleFactor: 2 }],
  ["320 px", { width: 320, height: 640 }],
]) {
  onPage(`${what}: nothing lies over anything else, nothing is to be scrolled sideways`, async (page) => {
    for (const name of panels) {
      await tab(page, name);
      await planned(page);
      assert.deepEqual(await overlaps(page), [], name);
    }
    await tab(page, "form");
    await page.locator(".node").nth(4).focus();
    await planned(page);
    assert.deepEqual(await overlaps(page), [], "a node selected");
  }, options);
}

// What is said in passing has room of its own: every control that was to be had before still is.
const LONG = "a name of a file that is long, as names of files that people send to one another sometimes are.txt";
for (const [what, options] of [["a desk", {}], ["a phone", { width: 360, height: 740, hasTouch: true }]]) {
  onPage(`at ${what} a long toast covers no control, on any panel`, async (page) => {
    for (const name of [...panels, "guide"]) {
      if (name === "guide") {
        await page.getByRole("button", { name: "Help", exact: true }).click();
        await page.locator(".help-window").getByRole("button", { name: "Start the first job" }).click();
        await page.locator(".guide").waitFor();
      } else await tab(page, name);
      await planned(page);
      await page.locator("header input[type=file]").setInputFiles({ name: LONG, mimeType: "", buffer: Buffer.from("a list of glazes") });
      await page.locator(".toast p").waitFor();
      const covered = await page.evaluate(() => {
        const toast = document.querySelector(".toast p"), out = [];
        for (const e of document.querySelectorAll("button, a[href], select, summary, textarea, input:not([type=file], .away)")) {
          if (toast.contains(e) || !e.checkVisibility({ visibilityProperty: true }) || e.closest(".away, .skip")) continue;
          e.scrollIntoView({ block: "center" });
          const a = e.getBoundingClientRect(), b = toast.getBoundingClientRect(), panel = e.closest(".panel");
          const end = panel && getComputedStyle(panel).overflowY !== "visible" ? panel.getBoundingClientRect().bottom : Infinity; // where it is cut off itself
          if (a.width > 1 && Math.min(a.right, b.right) - Math.max(a.left, b.left) > 1 && Math.min(a.bottom, b.bottom, end) - Math.max(a.top, b.top) > 1) out.push(e.outerHTML.slice(0, 120));
        }
        const r = toast.getBoundingClientRect(); // and it is whole itself
        return r.top >= 0 && r.bottom <= innerHeight && r.left >= 0 && r.right <= innerWidth ? out : [...out, `the toast at ${[r.left, r.top, r.right, r.bottom]}`];
      });
      assert.deepEqual(covered, [], name);
      await page.locator(".toast").getByRole("button", { name: "Close" }).click();
      await page.locator(".toast p").waitFor({ state: "detached" });
    }
  }, options);
}

onPage("on a phone the head has the same three rows in every language, however long the pot's name", async (page) => {
  const rows = new Set();
  for (const language of ["en", "de", "fr", "es"]) {
    await page.locator(".language select").selectOption(language);
    for (const name of ["A", "Harbour jar", "A tall jar with two handles that holds the salt of a whole winter"]) {
      await page.locator("input.name").fill(name);
      await planned(page);
      const at = await page.evaluate(() => ["h1", ".saved", "input.name", ".language", ".tools"].map((s) => {
        const r = document.querySelector(`header ${s}`).getBoundingClientRect();
        if (r.left < 0 || r.right > innerWidth) throw new Error(`${s} runs out`);
        return Math.round((r.top + r.bottom) / 2);
      }));
      const [title, saved, pot, switched, tools] = at;
      assert.ok(Math.abs(title - saved) < 4 && Math.abs(pot - switched) < 4 && title < pot && pot < tools, `${language}, ${name}: ${at}`);
      rows.add(await page.evaluate(() => Math.round(document.querySelector("header").getBoundingClientRect().height)));
    }
  }
  assert.equal(rows.size, 1, `heights ${[...rows]}`);
}, { width: 360, height: 740 });

onPage("a page turned narrow by its text is laid out like a narrow page", async (page) => {
  const columns = () => page.evaluate(() => getComputedStyle(document.querySelector("main")).gridTemplateColumns.split(" ").length);
  assert.equal(await columns(), 2);
  const widths = await page.evaluate(() => [...document.styleSheets].flatMap((s) => [...s.cssRules]).filter((r) => r instanceof CSSMediaRule).map((r) => r.conditionText).filter((t) => /width|height/.test(t)));
  assert.ok(widths.length > 8, "there are widths to ask of");
  assert.deepEqual(widths.filter((t) => /\dpx/.test(t)), [], "widths count in letters, which a browser's own text size changes");
});

onPage("every control is 44 px for a finger, but words within a text", async (page) => {
  for (const name of panels) {
    await tab(page, name);
    await planned(page);
    if (name === "form") await page.locator(".node").nth(4).focus();
    const small = await page.evaluate(() => [...document.querySelectorAll("button, a[href], select, summary, input:not([type=file])")].filter((e) => {
      if (e.matches(".term, .skip, .away") || e.closest("[hidden], .away")) return false;
      const own = e.getBoundingClientRect(), boxes = [own, ...[...(e.labels ?? [])].map((l) => l.getBoundingClientRect())].filter((r) => r.width);
      if (!own.width || getComputedStyle(e).opacity === "0") return false;
      const grown = e.matches(".ask-mark") ? 44 - 24 : 0; // its target reaches beyond its sign
      return !boxes.some((r) => Math.round(r.height) + grown >= 44) || !boxes.some((r) => Math.round(r.width) + grown >= 44);
    }).map((e) => `${e.className} ${e.getAttribute("aria-label") ?? e.textContent}`));
    assert.deepEqual(small, [], name);
  }
}, { width: 360, height: 740, hasTouch: true, isMobile: true });

onPage("what has the keyboard is never under the bar at the foot of a phone's screen", async (page) => {
  for (const name of ["form", "parts", "casting"]) {
    await tab(page, name);
    await planned(page);
    await page.evaluate(() => document.querySelector("#tabpanel").focus());
    for (let i = 0; i < 40; i++) {
      await page.keyboard.press("Tab");
      const hidden = await page.evaluate(() => {
        const e = document.activeElement, bar = document.querySelector(".next"), r = e.getBoundingClientRect(), b = bar.getBoundingClientRect();
        return !bar.contains(e) && e !== document.body && r.height > 0 && r.top >= b.top - 1 && r.top < b.bottom ? e.outerHTML.slice(0, 120) : "";
      });
      assert.equal(hidden, "", name);
    }
  }
}, { width: 360, height: 740 });

onPage("with less motion asked for nothing moves by itself", async (page) => {
  await page.evaluate(() => {
    window.moving = [];
    const look = () => { for (const a of document.getAnimations()) window.moving.push(a.animationName ?? a.transitionProperty ?? "?"); requestAnimationFrame(look); };
    look();
  });
  await page.getByRole("button", { name: "Copy link" }).click();
  await page.locator(".toast p").first().waitFor();
  await page.locator("#tabpanel .ask-mark").first().click();
  await page.locator(".help-card:popover-open").waitFor();
  await page.keyboard.press("Escape");
  await tab(page, "parts");
  await page.locator(".slide input").focus();
  await page.keyboard.press("ArrowRight");
  await planned(page);
  assert.deepEqual(await page.evaluate(() => window.moving), []);
  assert.equal(await page.evaluate(() => [document.documentElement, ...document.querySelectorAll("*")].filter((e) => getComputedStyle(e).scrollBehavior === "smooth").length), 0);
}, { reducedMotion: "reduce" });

onPage("in colours that somebody has chosen, what is pressed or chosen still shows", async (page) => {
  const ground = (at) => at.evaluate((e) => getComputedStyle(e).backgroundColor);
  const views = page.locator(".views button");
  assert.notEqual(await ground(views.nth(0)), await ground(views.nth(1)), "the view that is open");
  const under = (name) => page.locator(`#tab-${name}`).evaluate((e) => getComputedStyle(e).borderBottomColor);
  assert.notEqual(await under("form"), await under("parts"), "the panel that is open");
  assert.notEqual(await page.locator(".verdict").evaluate((e) => getComputedStyle(e).borderTopStyle), "none", "the verdict stands apart");
  await tab(page, "parts");
  assert.notEqual(await page.locator(".schemes li.on").first().evaluate((e) => getComputedStyle(e).outlineStyle), "none", "the scheme in use");
}, { forcedColors: "active" });

onPage("without a drag: nodes, heights of seams and the slider by clicks alone", async (page) => {
  const at = () => page.locator(".nodebar input").evaluateAll((all) => all.map((e) => Number(e.value.replace(",", "."))).join(" "));
  await page.locator(".node").nth(4).click();
  const bar = page.locator(".nodebar");
  await bar.locator("input").first().waitFor();
  const [r, z] = (await at()).split(" ").map(Number);
  await bar.getByRole("button", { name: "1 mm outward" }).click();
  await bar.getByRole("button", { name: "1 mm higher" }).click();
  await bar.getByRole("button", { name: "1 mm higher" }).click();
  await until(at, `${r + 1} ${z + 2}`);
  await bar.getByRole("button", { name: "1 mm inward" }).click();
  await until(at, `${r} ${z + 2}`);
  await page.getByRole("button", { name: /^Undo/ }).click();
  await until(at, `${r + 1} ${z + 2}`); // each field's clicks are a step of undo
  await page.evaluate(() => { const [less, more] = document.querySelectorAll(".nodebar .nudge"); for (const b of [more, more, more, less]) b.click(); });
  await until(at, `${r + 3} ${z + 2}`); // faster than the page is drawn
  await page.evaluate(() => { const [less, more] = document.querySelectorAll(".nodebar .nudge"); for (const b of [less, less, less, more]) b.click(); });
  await until(at, `${r + 1} ${z + 2}`);

  await tab(page, "parts");
  const height = page.locator("#tabpanel").getByRole("textbox", { name: "Parting height" });
  const planAt = async () => Number(await height.getAttribute("placeholder"));
  const from = await planAt();
  await page.locator("#tabpanel").getByRole("button", { name: "Parting height: 1 mm lower" }).click();
  await until(async () => String(Math.abs(Number(await height.inputValue()) - (from - 1)) < 0.051), "true");

  const slider = page.locator(".slide input"), box = await slider.boundingBox();
  await page.mouse.click(box.x + box.width * 0.8, box.y + box.height / 2);
  await until(async () => String(Number(await slider.inputValue()) > 0), "true");
});
