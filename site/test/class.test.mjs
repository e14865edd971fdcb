// The class in real Chromium: a teacher sets an exercise, one student answers by
// touch on a phone and another by keyboard alone, the results are collected.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { after, before, test } from "node:test";
import { address, downloaded, idle, launch, open, PATIENCE, until, verdict } from "./browser.mjs";
import { accessible, pages, tab } from "./onpage.mjs";

const onPage = pages();
let browser;
before(async () => { browser = await launch(); });
after(async () => { await browser.close(); });

const button = (page, name, exact = true) => page.getByRole("button", { name, exact });
const core = async (page, request) => JSON.parse(await page.evaluate(async (r) => (await window.moldwrightPage.core.ask("exercise", r)).reply, request));
const key = (page, ref) => core(page, { do: "solve", ...ref, key: true });
const said = (page) => page.locator(".feedback [role=status]").innerText();
const fileOf = (name, text) => ({ name, mimeType: "application/json", buffer: Buffer.from(text) });
const setOf = (questions, more = {}) => JSON.stringify({ format: "moldwright-class", version: 1, title: "Monday bench", ...more, questions });

/** Opens a set by its text, as dropping its file does, and begins under a name. */
async function begin(page, text, name = "Ada Reed") {
  await page.locator("header input[type=file]").setInputFiles(fileOf("set.json", text));
  await page.getByLabel("Your name").fill(name);
  await button(page, "Begin").click();
  await page.locator("main.exercise .plane svg").waitFor();
}

async function draw(page, kinds, each = "1") {
  await tab(page, "class");
  const all = ["catch", "count", "where", "pull", "draft", "size", "drain", "save"];
  for (const [i, k] of all.entries()) await page.locator(".class-kinds input").nth(i).setChecked(kinds.includes(k));
  await page.getByLabel("Of each kind").selectOption(each);
  const had = await page.locator(".set-list li").count();
  await button(page, /^Add \d+ questions?$/).click();
  await until(() => page.locator(".set-list li").count(), String(had + kinds.length * Number(each)));
}

async function addCode(page, code) {
  await tab(page, "class");
  await page.getByText("Add by code").click();
  await page.getByLabel("Code of a question").fill(code);
  await button(page, "Add").click();
}

/** Where on the screen a place of the half-plane is drawn, read off the ruler. */
async function onScreen(page, r, z) {
  return page.evaluate(([r, z]) => {
    const svg = document.querySelector(".plane svg"), box = svg.getBoundingClientRect();
    const x0 = Number(svg.querySelector(".axis").getAttribute("x1"));
    const ticks = [...svg.querySelectorAll(".grid text")].filter((t) => /\d/.test(t.textContent))
      .map((t) => [Number(t.textContent.replace("\u2212", "-")), Number(t.getAttribute("y")) - 4]);
    const [a, b] = [ticks[0], ticks[ticks.length - 1]], k = (a[1] - b[1]) / (b[0] - a[0]);
    return [box.x + x0 + r * k, box.y + a[1] - (z - a[0]) * k];
  }, [r, z]);
}

test("a teacher sets, a phone answers by touch, a keyboard answers alone, the results are collected", async () => {
  const teacher = await open(browser);
  const t = teacher.page, was = await verdict(t);
  await addCode(t, "C1-0007-T"); // one that catches: of those that are drawn some do not
  await until(() => t.locator(".set-list .code").innerText(), "C1-0007-T");
  await draw(t, ["count", "where"]);
  await t.getByLabel("Title", { exact: true }).fill("Monday bench");
  await t.evaluate(() => { navigator.clipboard.writeText = (s) => { window.copied = s; return Promise.resolve(); }; });
  await button(t, "Copy link for the class").click();
  await t.waitForFunction(() => window.copied);
  const link = await t.evaluate(() => window.copied);
  assert.match(link, /#class=[\w-]+$/);
  assert.equal(await verdict(t), was);
  const codes = await t.locator(".set-list .code").allInnerTexts();
  const keys = [];
  for (const code of codes) keys.push((await key(t, { code })).answer);

  // by touch, on a phone
  const phone = await browser.newContext({ viewport: { width: 360, height: 740 }, hasTouch: true, isMobile: true, acceptDownloads: true });
  const p = await phone.newPage();
  p.setDefaultTimeout(PATIENCE);
  await p.goto(link);
  await p.getByLabel("Your name").fill("Ada Reed");
  await button(p, "Begin").tap();
  assert.equal(await p.locator(".tabs, .verdict, .tools").count(), 0, "nothing of the bench is shown");
  await p.locator(".plane .outline").waitFor();
  for (const m of keys[0].marks) {
    await p.locator(".plane svg").scrollIntoViewIfNeeded();
    await p.touchscreen.tap(...await onScreen(p, m.r, m.z));
  }
  await until(() => p.locator(".put-mark").count(), String(keys[0].marks.length));
  await button(p, "Check").tap();
  await until(() => said(p), /^Right/);
  for (const b of await p.locator("main button:visible, nav button").all()) assert.ok((await b.boundingBox()).height >= 43.5, await b.innerText());
  await button(p, "Next question").tap();
  for (const id of ["count", "reason"]) {
    const words = (await core(p, { do: "pose", code: codes[1] })).answer.find((f) => f.id === id).options.find((o) => o.id === keys[1].choices[id]).words;
    await p.getByLabel(words, { exact: true }).tap();
  }
  await button(p, "Check").tap();
  await until(() => said(p), /^Right/);
  await button(p, "Next question").tap();
  await p.locator(".seam-handle").waitFor();
  await p.locator(".plane svg").scrollIntoViewIfNeeded();
  const grip = await p.locator(".seam-handle .grip").boundingBox(), goal = (await onScreen(p, 0, Number(keys[2].value)))[1];
  const cdp = await phone.newCDPSession(p), x = grip.x + grip.width / 2, y = grip.y + grip.height / 2;
  // the finger moved a second ago and rested since: lifted on the move it would fling, and a browser takes the next touch for the end of that
  const timestamp = Date.now() / 1000 - 1;
  await cdp.send("Input.dispatchTouchEvent", { type: "touchStart", timestamp, touchPoints: [{ x, y }] });
  for (let i = 1; i <= 12; i++) await cdp.send("Input.dispatchTouchEvent", { type: "touchMove", timestamp, touchPoints: [{ x, y: y + ((goal - y) * i) / 12 }] });
  await cdp.send("Input.dispatchTouchEvent", { type: "touchEnd", touchPoints: [] });
  await until(async () => Math.abs(Number(await p.locator(".number-answer input").inputValue()) - Number(keys[2].value)) < 1, "true");
  await button(p, "Check").tap();
  await until(() => said(p), /^(Right|Close)/);
  const touchScore = /^Right/.test(await said(p)) ? 3 : 2.5;
  await button(p, "To your sheet").tap();
  await until(() => p.locator(".score").innerText(), `${touchScore} of 3 points`);
  assert.match(await p.locator(".honest").innerText(), /keeps no secrets/);
  const one = await downloaded(p, () => button(p, "Save the sheet as file").tap());
  assert.equal(one.name, "ada-reed-monday-bench.moldwright-result.json");
  await phone.close();

  // by keyboard alone: nothing below touches the mouse
  const desk = await browser.newContext({ viewport: { width: 1280, height: 800 }, acceptDownloads: true });
  const d = await desk.newPage();
  d.setDefaultTimeout(PATIENCE);
  await d.goto(link);
  await d.getByLabel("Your name").waitFor();
  const at = () => d.evaluate(() => { const e = document.activeElement; return `${e.getAttribute("aria-label") ?? ""}|${e.labels?.[0]?.innerText ?? ""}|${e.innerText ?? ""}`; });
  const tabTo = async (want, keyName = "Tab") => {
    for (let i = 0; i < 60; i++) {
      await d.keyboard.press(keyName);
      if (want.test(await at())) return;
    }
    assert.fail(`no way by ${keyName} to ${want}, at ${await at()}`);
  };
  await tabTo(/Your name/);
  await d.keyboard.type("Bo Fen");
  await d.keyboard.press("Enter");
  await d.locator("main.exercise .plane svg").waitFor();
  await tabTo(/^\|\|Type where a mark stands/);
  await d.keyboard.press("Enter");
  for (const m of keys[0].marks) {
    await tabTo(/^\|Height\|/);
    while ((await d.evaluate(() => document.activeElement.closest(".type-mark") === null))) await tabTo(/^\|Height\|/);
    await d.keyboard.type(String(m.z));
    await tabTo(/\|Radius \(outermost wall\)\|/);
    await d.keyboard.type(String(m.r));
    await tabTo(/\|\|Add a mark/);
    await d.keyboard.press("Enter");
    await tabTo(/Radius \(outermost wall\)/, "Shift+Tab");
    await tabTo(/^\|Height\|/, "Shift+Tab");
    await d.keyboard.press("Shift+Tab");
  }
  await tabTo(/\|\|Check/);
  await d.keyboard.press("Enter");
  await until(() => said(d), /^Right/);
  await tabTo(/\|\|Next question/);
  await d.keyboard.press("Enter");
  await until(() => at(), /How many parts\?/);
  await tabTo(/\|\|Hint 1 of 3/);
  await d.keyboard.press("Enter");
  await d.getByText("Hint 1", { exact: true }).waitFor();
  await tabTo(/\|\|Next question/);
  await d.keyboard.press("Enter");
  await until(() => at(), /Where must it part\?/);
  await tabTo(/^Height of the parting/);
  await d.keyboard.press("PageUp");
  await d.keyboard.press("ArrowUp");
  await until(() => d.locator(".number-answer input").inputValue(), "11");
  await tabTo(/\|Height above the foot\|/);
  await d.keyboard.press("Control+a");
  await d.keyboard.type(`${keys[2].value.replace(".", ",")}`);
  await d.keyboard.press("Enter");
  await until(() => said(d), /^Right/);
  await tabTo(/\|\|To your sheet/);
  await d.keyboard.press("Enter");
  await until(() => d.locator(".score").innerText(), "2 of 3 points");
  await tabTo(/\|\|Save the sheet as file/);
  const two = await downloaded(d, () => d.keyboard.press("Enter"));
  await desk.close();

  // the teacher again
  await t.locator("#tabpanel input[type=file][multiple]").setInputFiles([one.path, two.path]);
  await until(() => t.locator(".results [role=status]").innerText(), /^2 sheets/);
  await t.locator("#tabpanel input[type=file][multiple]").setInputFiles([fileOf("notes.json", '{"format":"moldwright-result","ver')]);
  await until(() => t.locator(".bad-files li").innerText(), /^notes\.json: The text is no result file/);
  await idle(t);
  const cells = (i) => t.locator(".results tbody tr").nth(i).locator("th, td").allInnerTexts();
  assert.match((await cells(0)).join("|"), new RegExp(`^Ada Reed\\|${touchScore} of 3\\|right[^|]*\\|right[^|]*\\|(right|close)[^|]*$`, "s"));
  assert.match((await cells(1)).join("|"), /^Bo Fen\|2 of 3\|right[^|]*\|not answered[^|]*1 hint[^|]*\|right[^|]*$/s);
  const csv = await downloaded(t, () => button(t, "Download as CSV").click());
  const lines = readFileSync(csv.path, "utf8").replace(/^\ufeff/, "").trimEnd().split("\r\n").map((l) => l.split(/,(?=(?:[^"]*"[^"]*")*[^"]*$)/).map((c) => c.replace(/^"|"$/g, "")));
  assert.equal(lines.length, 3);
  assert.deepEqual(lines[0].slice(0, 5), ["Student", "Set", ...codes]);
  const col = (name) => lines[0].indexOf(name);
  assert.deepEqual([lines[1][0], lines[1][col("Score")], lines[1][col("Of")]], ["Ada Reed", touchScore.toFixed(1), "3"]);
  assert.deepEqual([lines[2][0], lines[2][col("Score")], lines[2][3], lines[2][col("Hints")]], ["Bo Fen", "2.0", "not answered", "1"]);
  assert.equal(await verdict(t), was);
  assert.deepEqual(teacher.seen.errors, []);
  await teacher.context.close();
});

onPage("a mistyped code is explained, the right one adds its question", async (page) => {
  await addCode(page, "C2-0007-X");
  await until(() => page.locator("#tabpanel .bad").first().innerText(), /mistyped/);
  assert.equal(await page.locator(".set-list li").count(), 0);
  await page.getByLabel("Code of a question").fill("c2 0007 w");
  await button(page, "Add").click();
  await until(() => page.locator(".set-list .code").innerText(), "C2-0007-W");
});

onPage("questions added faster than the core answers are all in the set; a new set takes up none of them", async (page) => {
  await tab(page, "class");
  const add = (then) => page.evaluate((next) => {
    const press = (like) => [...document.querySelectorAll("#tabpanel button")].find((b) => like.test(b.textContent)).click();
    for (let i = 0; i < 2; i++) press(/^Add 3 questions$/);
    if (next) press(new RegExp(next));
  }, then);
  await add();
  await until(() => page.locator(".set-list li").count(), "6");
  await add("^Begin a new set$");
  await idle(page);
  assert.equal(await page.locator(".set-list li").count(), 0);
  await add();
  await until(() => page.locator(".set-list li").count(), "6");
});

onPage("a damaged set is explained, as file and as link, and the bench stays", async (page, { context, seen }) => {
  const was = await verdict(page);
  await page.locator("header input[type=file]").setInputFiles(fileOf("half.json", '{"format":"moldwright-class","version":1,"ques'));
  await until(() => page.locator(".toast p").innerText(), /half\.json was not opened as an exercise: .*no class file/);
  await page.locator("header input[type=file]").setInputFiles(fileOf("odd.json", setOf([{ code: "S1-0005-0" }, { kind: "sing" }])));
  await until(() => page.locator(".toast p").innerText(), /odd\.json was not opened as an exercise: Question \d:/);
  assert.equal(await verdict(page), was);
  const there = await context.newPage();
  await there.goto(`${address}#class=eNoz`);
  await until(() => there.locator(".toast p").innerText(), /no whole exercise/);
  assert.equal(await verdict(there), was);
  seen.requests.length = 0; // the page itself, with its #
});

onPage("an answer that cannot be read costs no try; after two tries the solution opens; another like this", async (page) => {
  const { ref } = await core(page, { do: "pose", kind: "size", difficulty: 1, seed: 4 });
  await begin(page, setOf([ref]));
  const field = page.locator(".number-answer input");
  await field.fill("12,5");
  await button(page, "Check").click();
  await until(() => said(page), /The unit is missing/);
  assert.equal(await button(page, "Solution, after two tries").isEnabled(), false);
  for (const v of ["1 mm", "2 mm"]) {
    const units = await page.locator(".number-answer select option").allInnerTexts();
    await field.fill(v.replace("mm", units[1]));
    await button(page, "Check").click();
    await idle(page);
  }
  await button(page, "Solution").click();
  await until(() => page.locator(".solution li").count().then((n) => n > 0), "true");
  await button(page, "Another like this").click();
  await page.getByText("Practice, not on your sheet").waitFor();
  assert.notEqual(await page.locator(".asked-text .code").allInnerTexts().then((c) => c[0]), ref.code);
  await button(page, "Back to question 1").click();
  await page.locator(".solution").waitFor();
});

onPage("without a drag: the height of a parting and a node's place by the buttons beside them", async (page) => {
  const refs = [];
  for (const kind of ["where", "save"]) refs.push((await core(page, { do: "pose", kind, difficulty: 1, seed: 3 })).ref);
  await begin(page, setOf(refs));
  const height = page.locator(".number-answer input"), line = page.locator(".seam-handle");
  const high = Math.round(Number(await line.getAttribute("aria-valuemax")) / 2); // an empty field begins halfway
  await button(page, "1 mm higher").click();
  await until(() => height.inputValue(), String(high + 1));
  assert.equal(await page.locator(".number-answer select").inputValue(), "mm");
  await height.fill("4.5 cm");
  await until(() => line.getAttribute("aria-valuenow"), "45");
  await page.evaluate(() => { const [less] = document.querySelectorAll(".number-answer .nudge"); for (let i = 0; i < 3; i++) less.click(); });
  await until(() => height.inputValue(), "42"); // faster than the page is drawn
  await until(() => line.getAttribute("aria-valuenow"), "42");

  await button(page, "Next question").click();
  await page.getByLabel("Node to change").waitFor();
  const [r, z] = ["Radius", "Height"].map((name) => page.getByLabel(name, { exact: true }));
  const [was, at] = [Number(await r.inputValue()), Number(await z.inputValue())];
  await button(page, "1 mm outward").click();
  await button(page, "1 mm outward").click();
  await button(page, "1 mm inward").click();
  await button(page, "1 mm higher").click();
  await until(() => r.inputValue().then(Number), String(was + 1));
  await until(() => z.inputValue().then(Number), String(at + 1));
  await button(page, "Back to the form as given").click();
  await until(() => r.inputValue().then(Number), String(was));
});

onPage("choices made faster than the page is drawn all stand", async (page) => {
  const { ref } = await core(page, { do: "pose", kind: "count", difficulty: 1, seed: 7 });
  await begin(page, setOf([ref]));
  await idle(page);
  const n = await page.evaluate(() => {
    const groups = [...document.querySelectorAll(".choice-answer")];
    for (const g of groups) g.querySelectorAll("input")[1].click();
    return groups.length;
  });
  assert.ok(n > 1, `${n} groups`);
  await idle(page);
  await button(page, "Check").click();
  await until(() => said(page), /^(Right|Close|Not)/);
  assert.equal(await page.locator(".choice-answer input:checked").count(), n);
});

onPage("the smallest change is judged as the form is typed, and right when it clears", async (page) => {
  let ref, given, best; // one whose nearest form has the same nodes
  for (let seed = 0; !best && seed < 40; seed++) {
    const q = await core(page, { do: "pose", kind: "save", difficulty: 1, seed }), { answer } = await key(page, q.ref);
    if (answer.job.form.outer.length === q.job.form.outer.length) [ref, given, best] = [q.ref, q.job, answer.job];
  }
  await begin(page, setOf([ref]));
  await until(() => page.locator(".live-line .mark-line").innerText(), /The form is as it was/);
  await page.locator(".plane .sticks .caught").waitFor();
  for (const [i, n] of best.form.outer.entries()) {
    if (Math.abs(n.r - given.form.outer[i].r) < 0.001) continue;
    await page.getByLabel("Node to change").selectOption({ value: String(i) });
    await until(() => page.locator(".form-answer").getByLabel("Radius", { exact: true }).inputValue().then(Number), String(Math.round(given.form.outer[i].r * 1e6) / 1e6));
    await page.locator(".form-answer").getByLabel("Radius", { exact: true }).fill(String(n.r));
  }
  await until(() => page.locator(".live-line .mark-line").innerText(), /now lets go|no longer catches|lets go/);
  await until(() => page.locator(".plane .sticks").count(), "0");
  await button(page, "Check").click();
  await until(() => said(page), /^Right/);
});

onPage("what sticks is drawn on the section, with the part, the pull and the depth in words", async (page) => {
  const { ref } = await core(page, { do: "pose", kind: "where", difficulty: 1, seed: 2 });
  await begin(page, setOf([ref]));
  await page.locator(".number-answer input").fill("1 mm");
  await button(page, "Check").click();
  await until(() => said(page), /^Not yet\. Too low: .* catches by [\d.]+ mm at/);
  await page.locator(".plane .sticks .caught").waitFor();
  await idle(page);
  assert.match(await page.locator(".plane .sticks text").innerHTML(), /^held by [\d.]+&nbsp;mm$/);
  assert.match(await page.locator(".feedback").innerText(), /Pulled straight up, the upper part is held from/);
});

onPage("leaving brings the bench back with the job untouched; a reload goes on with the answers", async (page) => {
  await page.locator("input.name").fill("Reed cup");
  const was = await verdict(page);
  const { ref } = await core(page, { do: "pose", kind: "drain", difficulty: 1, seed: 1 });
  await begin(page, setOf([ref]));
  await page.locator(".choice-answer input").first().check();
  await page.locator(".asked-text h2").focus();
  await page.keyboard.press("Control+z");
  await page.reload();
  await page.locator("main.exercise .plane svg").waitFor();
  await until(() => page.locator(".choice-answer input").first().isChecked(), "true");
  await button(page, "Leave the exercise").click();
  await until(() => verdict(page), was);
  await until(() => page.locator("input.name").inputValue(), "Reed cup");
  await tab(page, "class");
  await button(page, "Go on with “Monday bench”").click();
  await page.locator("main.exercise .choice-answer").first().waitFor();
  await until(() => page.locator(".choice-answer input").first().isChecked(), "true");
});

onPage("shuffled by name: the same name gets the same again, another name another", async (page) => {
  const { ref } = await core(page, { do: "pose", kind: "catch", difficulty: 1, seed: 9 });
  const code = async (name) => {
    await begin(page, setOf([ref], { shuffle: true }), name);
    const c = await page.locator(".asked-text .code").innerText();
    await button(page, "Leave the exercise").click();
    return c;
  };
  const ada = await code("Ada Reed");
  assert.notEqual(await code("Bo Fen"), ada);
  assert.equal(await code(" ada  reed"), ada);
});

onPage("the pot on the bench becomes a question, in order with others; a pot that does not fit is told why", async (page) => {
  await draw(page, ["size", "draft"]);
  await page.getByText("Ask about the pot on the bench").click();
  await page.getByLabel(/^Question: /).selectOption("where");
  await button(page, "Add this pot").click();
  await until(() => page.locator(".set-list li").count(), "3");
  await button(page, "Question 3: earlier").click();
  await until(() => page.locator(".set-list li").nth(1).innerText(), /Where must it part\?[^]*from the bench/);
  await page.getByLabel(/^Question: /).selectOption("save");
  await button(page, "Add this pot").click();
  await until(() => page.locator("#tabpanel .bad").first().innerText(), /cannot be asked about this pot/);
  const saved = await downloaded(page, () => button(page, "Save as file").click());
  assert.equal(JSON.parse(readFileSync(saved.path, "utf8")).questions.length, 3);
});

/** Every face of the class in turn. */
async function faces(page, look) {
  await draw(page, ["catch", "pull", "size"]);
  await look("setting");
  await button(page, "Show the answer").click();
  await page.locator(".class-key p").waitFor();
  await look("answer shown");
  await button(page, "Try it as a student").click();
  await page.getByLabel("Your name").fill("Ada");
  await look("start");
  await button(page, "Begin").click();
  for (let i = 0; i < 3; i++) {
    await page.getByText(`Question ${i + 1} of 3`).waitFor();
    if (i === 0) await page.getByText("Type where a mark stands").click();
    if (i === 0) { await page.locator(".type-mark input").first().fill("20"); await button(page, "Add a mark").click(); }
    for (const f of await page.locator(".choice-answer").all()) await f.locator("input").first().check();
    await button(page, "Hint 1 of 3").click();
    await page.locator(".hint-help").waitFor();
    await button(page, "Check").click();
    await page.locator(".feedback [role=status] > *").waitFor();
    await look(`question ${i + 1}`);
    await page.locator(".actions.on button").last().click();
  }
  await page.locator(".score").waitFor();
  await look("sheet");
  const file = await downloaded(page, () => button(page, "Save the sheet as file").click());
  await button(page, "Back to setting it").click();
  await page.locator("#tabpanel input[type=file][multiple]").setInputFiles([file.path]);
  await page.locator(".results table").waitFor();
  await look("table");
}

for (const [width, colorScheme] of [[1280, "light"], [1280, "dark"], [360, "light"], [360, "dark"], [320, "light"]]) {
  onPage(`axe finds nothing and nothing scrolls sideways, ${width} px, ${colorScheme}`, async (page) => {
    await faces(page, async (name) => {
      await accessible(page, name);
      const [wide, room] = await page.evaluate(() => [document.documentElement.scrollWidth, document.documentElement.clientWidth]);
      assert.ok(wide <= room, `${name}: ${wide} > ${room}`);
    });
  }, { width, height: 800, colorScheme, bypassCSP: true, hasTouch: width < 500, isMobile: width < 500 });
}
