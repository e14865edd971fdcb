// One person at the page, in any browser: finds things as a reader of the screen
// does, by their words, and works with a real pointer, finger or keyboard. What
// differs between browsers is in the driver: evaluate, click, tap, key,
// type, files, downloaded.
import assert from "node:assert/strict";
import { PATIENCE } from "./browser.mjs";

/** Runs in the page: the middle of the first visible thing of that name, scrolled into view. */
function find([kind, name, exact]) {
  const selectors = {
    button: "button, [role=button], summary, label.button, a[href]", tab: "[role=tab]", radio: "label:has(input[type=radio]), label:has(input[type=checkbox])",
    field: "input, select, textarea", css: name,
  };
  const words = (e) => e.getAttribute("aria-label") ?? (kind === "field" ? [...(e.labels ?? [])].map((l) => l.textContent).join(" ") : e.textContent) ?? "";
  const clean = (t) => t.replace(/\s+/g, " ").trim();
  const dialog = document.querySelector("dialog[open]");
  const all = [...(dialog ?? document).querySelectorAll(selectors[kind])].filter((e) => e.checkVisibility({ visibilityProperty: true }) && !e.disabled);
  const e = kind === "css" ? all[0] : all.find((x) => clean(words(x)) === name) ?? (exact ? undefined : all.find((x) => clean(words(x)).startsWith(name)));
  if (!e) return null;
  e.scrollIntoView({ block: "center", inline: "center" });
  const b = e.getBoundingClientRect();
  return { x: b.x + b.width / 2, y: b.y + b.height / 2, tag: e.tagName };
}

/** Runs in the page: puts the keyboard on a field and marks what is in it, as Tab does. */
function enter(name) {
  const clean = (t) => t.replace(/\s+/g, " ").trim();
  const all = [...document.querySelectorAll("input:not([type=file]), select, textarea")].filter((e) => e.checkVisibility());
  const e = all.find((x) => [x.getAttribute("aria-label") ?? "", ...[...(x.labels ?? [])].map((l) => l.textContent)].some((t) => clean(t) === name || clean(t).startsWith(`${name} `)));
  if (!e) return false;
  e.focus();
  e.select?.();
  return true;
}

export class Person {
  constructor(driver, { touch = false } = {}) { this.d = driver; this.touch = touch; }

  /** Waits until a value read in the page is as wanted. */
  async until(get, want, ...args) {
    const end = performance.now() + PATIENCE;
    let got;
    do {
      got = await this.d.evaluate(get, ...args);
      const text = String(got).replaceAll("\u00a0", " ");
      if (want instanceof RegExp ? want.test(text) : text === String(want)) return text;
      await new Promise((r) => setTimeout(r, 60));
    } while (performance.now() < end);
    assert.fail(`wanted ${want}, got ${got}`);
  }

  async press(name, kind = "button", exact = false) {
    // a hand comes down on what stands still, and a finger not twice at once
    const end = performance.now() + PATIENCE;
    let p = null, old = null;
    while (!(p && old && p.x === old.x && p.y === old.y) && performance.now() < end) {
      old = p;
      p = await this.d.evaluate(find, [kind, name, exact]);
      await new Promise((r) => setTimeout(r, this.touch ? 150 : 40));
    }
    assert.ok(p, `there is no ${kind} ${name}`);
    await (this.touch ? this.d.tap(p.x, p.y) : this.d.click(p.x, p.y));
  }
  async type(field, text) {
    await this.until(enter, true, field);
    await this.d.type(text);
    await this.d.key("Tab");
  }
  verdict(want) { return this.until(() => (document.querySelector(".verdict")?.getAttribute("aria-busy") === "false" ? document.querySelector(".verdict p").textContent : "busy"), want); }
  said(want) { return this.until(() => document.body.innerText, want); }
  open(name) { return this.press(name, "tab", true); }
}
