// Every view of the page by name, each reached as a person reaches it: the work
// of a potter, a teacher and a student, with what is empty, busy, wrong or long.
import { readFileSync } from "node:fs";
import { downloaded, planned, until } from "../test/browser.mjs";
import { tab } from "../test/onpage.mjs";
import { choose, outlined, photo, settled } from "../test/trace-help.mjs";

const button = (page, name) => page.getByRole("button", { name });
const press = (page, name) => button(page, name).first().click();
const file = (page, name, text) => page.locator("header input[type=file]").setInputFiles({ name, mimeType: "", buffer: Buffer.from(text) });
const pick = async (page, name) => {
  await page.locator("dialog.samples[open] li button").filter({ hasText: name }).first().click();
  await page.waitForFunction((n) => document.querySelector("input.name")?.value === n, name);
  await planned(page);
};
const pot = async (page, name) => {
  await press(page, "Sample pots");
  await pick(page, name);
};
const panel = (name, of) => async (page) => {
  if (of) await pot(page, of);
  await tab(page, name);
};
/** A range field set to a value, as a drag of its thumb sets it. */
const slide = (at, value) => at.evaluate((el, v) => {
  Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, "value").set.call(el, v);
  el.dispatchEvent(new Event("input", { bubbles: true }));
}, String(value));
/** From now on the worker works at an op without end. */
const stall = (page, op) => page.workers()[0].evaluate((slow) => {
  const m = globalThis.moldwright;
  globalThis.moldwright = { ...m, call(o, ...rest) {
    if (o === slow) { globalThis.moldwrightProgress(0.4, "Making meshes"); for (;;); }
    return m.call(o, ...rest);
  } };
}, op);

const known = async (page, mm) => {
  await page.getByLabel("Its length", { exact: true }).fill(mm);
  await page.locator(".primary.take:not(:disabled)").waitFor();
};
const vase = (page) => outlined(page, "vase-400.jpg", photo("vase-400.jpg"));
const sketch = async (page) => {
  await choose(page, "sketch-both.png", photo("sketch-both.png"), "Choose a picture", "image/png");
  await page.locator(".drawing.picture").waitFor();
  await page.getByLabel("The picture is").selectOption("sketch");
  await settled(page);
  await known(page, "170");
};
/** The view in space once its solids stand; its labels are out of sight in the kit of some pots. */
const space = async (page, kit) => {
  await press(page, "In space");
  await page.locator(".labels span").first().waitFor({ state: "attached" });
  if (!kit) return page.locator(".said").waitFor({ state: "detached" });
  await press(page, "Printed kit");
  await page.locator(".said").waitFor(); // until then the mold stands there
  await page.locator(".said").waitFor({ state: "detached" });
};

const drawSet = async (page) => {
  await tab(page, "class");
  await press(page, /^Add \d question/);
  await button(page, "Try it as a student").waitFor();
};
/** The questions of some kinds, opened as a student opens them. */
const exercise = async (page, kinds, name = "Mara Finch") => {
  await tab(page, "class");
  const all = ["catch", "count", "where", "pull", "draft", "size", "drain", "save"];
  for (const [i, k] of all.entries()) await page.locator(".class-kinds input").nth(i).setChecked(kinds.includes(k));
  await press(page, /^Add \d question/);
  await until(() => page.locator(".set-list li").count(), String(kinds.length));
  const codes = await page.locator(".set-list .code").allInnerTexts();
  await file(page, "monday.json", JSON.stringify({ format: "moldwright-class", version: 1, title: "Monday bench", note: "Take one pot at a time. Ask your neighbour before you take a hint.", questions: codes.map((code) => ({ code })) }));
  await page.locator(".exercise-start input").waitFor();
  if (name) await begin(page, name);
};
const begin = async (page, name) => {
  await page.locator(".exercise-start input").fill(name);
  await press(page, /^(Begin|Or begin)/);
  await page.locator("#asked").waitFor();
};
const tried = (page) => page.locator(".feedback .mark-line").first().waitFor();
/** Says of the first question that nothing catches, and has it checked. */
const nowhere = async (page) => {
  await page.getByLabel("It catches nowhere").check();
  await press(page, "Check");
  await tried(page);
};
const toSheet = async (page) => {
  await page.locator(".exercise-progress li button").last().click();
  await page.locator(".score").waitFor();
};
const results = async (page) => {
  await exercise(page, ["catch", "count", "where"], "Mara Finch");
  await nowhere(page);
  await toSheet(page);
  const one = await downloaded(page, () => press(page, "Save the sheet as file"));
  await press(page, "Leave the exercise");
  await tab(page, "class");
  const two = JSON.parse(readFileSync(one.path, "utf8"));
  const sheet = (name) => ({ name: `${name}.json`, mimeType: "application/json", buffer: Buffer.from(JSON.stringify({ ...two, student: name })) });
  await page.locator("#tabpanel input[type=file][multiple]").setInputFiles(["Mara Finch", "Jonas Tern-Habicht", "Inés Alondra de la Ribera"].map(sheet).concat({ name: "notes.json", mimeType: "application/json", buffer: Buffer.from("{\"format\":\"moldwright-result\",\"ver") }));
  await page.locator(".results .cell").first().waitFor();
};

/** A view, then in another language. */
const spoken = (code, go) => async (page) => {
  await go(page);
  await page.locator(".language select").first().selectOption(code);
  await page.waitForFunction((c) => document.documentElement.lang === c, code);
  if (await page.locator(".verdict").count()) await planned(page);
  await page.waitForFunction(() => !document.querySelector(".tracing-busy, .stale, .underway"));
  await page.waitForTimeout(500); // what the core says is asked for anew, and shows no sign of it
};
/** A view as print takes it. */
const printed = (go) => async (page) => {
  await go(page);
  await page.emulateMedia({ media: "print" });
};
const asked = (kinds, then) => async (page) => {
  await exercise(page, kinds);
  if (then) await then(page);
};

export const views = {
  "first-visit": async () => {},
  samples: async (page) => { await press(page, "Sample pots"); },
  versions: async (page) => {
    await page.locator("input.name").fill("Harbour jar, wider");
    await page.getByLabel("Node 6, Radius, mm").fill("55");
    await page.locator("input.name").focus();
    await page.waitForFunction(() => Object.keys(localStorage).some((k) => k.startsWith("moldwright.kept.")));
    await press(page, "Versions");
  },
  "no-storage": async () => {},
  damaged: async (page) => {
    await file(page, "kiln-shelf.json", '{"name":"Reed cup","colour":1,"form":{"outer":[{"r":0,"z":0},{"r":30,"z":0,"corner":true},{"r":45,"z":60},{"r":40,"z":9');
    await page.locator("dialog.damaged").waitFor();
  },
  "toast-error": async (page) => { await file(page, "notes.txt", "a list of glazes"); await page.locator(".toast p").waitFor(); },
  "guide-start": async (page) => { await press(page, "Start the first job"); },
  "guide-step": async (page) => {
    await press(page, "Start the first job");
    await page.locator("[data-point=samples]").click();
    await pick(page, "Reed beaker");
    await page.locator(".guide .primary").click();
  },
  "help-card": async (page) => { await tab(page, "release"); await page.locator("#tabpanel [data-term=draft]").first().click(); await page.locator(".help-card").waitFor(); },
  "help-words": async (page) => { await press(page, /^Help$/); await page.locator("dialog.help-window[open]").waitFor(); },
  table: async (page) => { await page.locator(".views button").nth(1).click(); await page.locator(".reading table").first().waitFor(); },
  shelf: async (page) => { await press(page, "Put the shelf away"); },

  "form-node": async (page) => { await page.locator(".node").nth(5).focus(); await page.keyboard.press("ArrowRight"); await planned(page); },
  "form-fault": async (page) => { await page.getByLabel("Node 4, Radius, mm").fill("-5"); await page.locator(".verdict.fault").waitFor(); },
  "form-rows-fault": async (page) => {
    await page.locator("details.rows summary").first().click();
    await page.locator("details.rows textarea").fill("0 0\n30 twelve\n60 50");
    await page.getByLabel("The rows are in").selectOption("mm");
    await press(page, "Use these rows");
    await page.locator(".faults li").first().waitFor();
  },
  "form-closed": panel("form", "Skep pot"),
  "form-inner": async (page) => { await pot(page, "Quay dish"); await page.locator(".nodes.inner .node").nth(2).focus(); await planned(page); },
  trace: vase,
  "trace-found": async (page) => { await vase(page); await known(page, "150"); },
  "trace-sketch": sketch,
  "trace-taken": async (page) => { await vase(page); await known(page, "150"); await press(page, "Take this form"); await planned(page); },
  "trace-drawing": async (page) => {
    await choose(page, "shelf.svg", Buffer.from('<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 200 120"><path d="M0 100H30L48 60 40 4"/><path d="M60 100H90Q120 60 92 4"/><path d="M130 100H150L160 40"/></svg>'), "Open a drawing (SVG)", "image/svg+xml");
    await page.locator(".svg-lines .silhouette").first().waitFor();
  },
  "trace-none": async (page) => {
    await choose(page, "grey.bmp", Buffer.concat([Buffer.from("424d8a0000000000000036000000280000000500000005000000010018000000000054000000130b0000130b00000000000000000000", "hex"), Buffer.alloc(84, 0x90)]), "Choose a picture", "image/bmp");
    await page.locator(".said-fault, .toast p").first().waitFor();
  },

  "release-clear": panel("release"), "release-catches": panel("release", "Dovetail dish"),
  "release-core": async (page) => { await panel("release", "Quay dish")(page); await press(page, "Core"); },
  "release-stretched": async (page) => { await tab(page, "release"); await press(page, "×10"); },
  "parts-two": panel("parts"), "parts-sides": panel("parts", "Reel bottle"), "parts-faceted": panel("parts", "Trivet vase"),
  "parts-apart": async (page) => { await panel("parts", "Heron vase")(page); await slide(page.locator("#apart"), 60); },
  "parts-sticks": async (page) => { await panel("parts", "Dovetail dish")(page); await slide(page.locator("#apart"), 60); },
  "parts-why": async (page) => { await tab(page, "parts"); await press(page, "Show why on the drawing"); },

  "space-mold": space,
  "space-closed": async (page) => { await space(page); await press(page, "Cut open"); },
  "space-apart": async (page) => { await pot(page, "Reel bottle"); await space(page); await slide(page.locator("#apart"), 100); },
  "space-core": async (page) => { await pot(page, "Quay dish"); await space(page); await tab(page, "parts"); await slide(page.locator("#apart"), 100); },
  "space-kit": async (page) => { await space(page, true); },
  "space-kit-many": async (page) => { await pot(page, "Reel bottle"); await space(page, true); },

  tooling: panel("tooling"), "tooling-trays": panel("tooling", "Reel bottle"),
  "tooling-busy": async (page) => {
    await stall(page, "solids");
    await tab(page, "tooling");
    await press(page, /3MF/);
    await page.locator(".underway").waitFor();
  },
  casting: panel("casting"),
  "casting-own": async (page) => { await tab(page, "casting"); for (const d of await page.locator("#tabpanel details").all()) await d.locator("summary").first().click(); },
  sheets: async (page) => { await tab(page, "sheets"); await page.locator(".pages img").first().waitFor(); },
  "sheets-report": async (page) => { await tab(page, "sheets"); await page.locator("input[name=sheet]").nth(3).check(); await page.locator(".pages img").first().waitFor(); },

  "class-empty": panel("class"), "class-set": drawSet,
  "class-answer": async (page) => { await drawSet(page); await press(page, "Show the answer"); await page.locator(".class-key p").waitFor(); },
  "class-results": results,
  "exercise-start": (page) => exercise(page, ["catch", "count", "where"], ""),
  "exercise-catch": asked(["catch"]), "exercise-count": asked(["count"]), "exercise-where": asked(["where"]), "exercise-pull": asked(["pull"]),
  "exercise-draft": asked(["draft"]), "exercise-size": asked(["size"]), "exercise-drain": asked(["drain"]), "exercise-save": asked(["save"]),
  "exercise-wrong": asked(["catch"], nowhere),
  "exercise-hints": asked(["catch"], async (page) => { await press(page, "Hint 1 of 3"); await press(page, "Hint 2 of 3"); await page.getByText("Hint 2", { exact: true }).waitFor(); }),
  "exercise-solved": asked(["size"], async (page) => {
    for (const guess of ["1 mm", "2 mm"]) {
      await page.locator(".number-answer input").fill(guess);
      await press(page, "Check");
      await tried(page);
    }
    await press(page, "Solution");
    await page.locator(".solution").waitFor();
  }),
  "exercise-sheet": asked(["catch", "count"], async (page) => { await nowhere(page); await toSheet(page); }),

  "de-trace": spoken("de", async (page) => { await vase(page); await known(page, "150"); }),
  "fr-trace": spoken("fr", sketch), "es-trace": spoken("es", vase),
  "de-parts": spoken("de", panel("parts", "Reel bottle")), "fr-release": spoken("fr", panel("release", "Dovetail dish")),
  "es-casting": spoken("es", panel("casting")), "de-tooling": spoken("de", panel("tooling", "Reel bottle")),
  "de-class": spoken("de", drawSet), "fr-results": spoken("fr", results),
  "de-exercise": spoken("de", asked(["count"])), "fr-exercise": spoken("fr", asked(["catch"], nowhere)), "es-exercise": spoken("es", asked(["save"])),
  "es-sheet": spoken("es", asked(["catch", "count"], async (page) => { await nowhere(page); await toSheet(page); })),

  "print-form": printed(async () => {}), "print-parts": printed(panel("parts", "Reel bottle")), "print-casting": printed(panel("casting")),
  "print-exercise": printed(asked(["catch", "count"], async (page) => { await nowhere(page); await toSheet(page); })),
};

/** What stands in the page before it begins. */
export const before = {
  "no-storage": () => Object.defineProperty(window, "localStorage", { get() { throw new DOMException("blocked", "SecurityError"); } }),
};
