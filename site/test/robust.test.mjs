// The page under rough treatment: slow work is told, stopped and taken up again;
// the worker killed in the middle of it; fifty edits in a row; back, forward and
// reload with and without a link.
import assert from "node:assert/strict";
import { address, downloaded, planned, until, verdict } from "./browser.mjs";
import { pages, tab } from "./onpage.mjs";
import { choose, photo, settled } from "./trace-help.mjs";

const onPage = pages();
const name = (page) => page.locator("input.name").inputValue();
const underway = (page) => page.locator(".underway");
const stop = (page) => underway(page).getByRole("button", { name: "Stop" });

/** From now on the worker that runs works at an op until it is ended. */
const stall = (page, op) => page.workers()[0].evaluate((slow) => {
  const { call } = globalThis.moldwright;
  globalThis.moldwright = { ...globalThis.moldwright, call(o, ...rest) {
    if (o === slow) {
      globalThis.moldwrightProgress(0.4, "Working at it");
      for (;;);
    }
    return call(o, ...rest);
  } };
}, op);

for (const [what, op, start, after] of [
  ["solids", "solids", async (page) => {
    await tab(page, "tooling");
    await page.getByRole("button", { name: /3MF/ }).first().click();
  }, async (page) => {
    const [d] = await Promise.all([page.waitForEvent("download"), page.getByRole("button", { name: /3MF/ }).first().click()]);
    assert.match(d.suggestedFilename(), /3mf$/);
  }],
  ["a sheet", "sheet", (page) => tab(page, "sheets"), async (page) => {
    await page.locator("#tabpanel").getByRole("button", { name: "Try again" }).click();
    await page.locator(".pages img").first().waitFor();
  }],
  ["a trace", "trace", async (page) => {
    await choose(page, "vase-400.jpg", photo("vase-400.jpg"));
    await page.locator(".drawing.picture").waitFor();
  }, async (page) => {
    await page.locator(".said-fault").filter({ hasText: "Stopped" }).waitFor();
    await page.getByLabel("The picture is").selectOption("sketch");
    await page.getByLabel("The picture is").selectOption("photo");
    await settled(page);
  }],
]) {
  onPage(`${what}: told while it takes long, stopped by a press, and done again; the page stays alive`, async (page) => {
    await stall(page, op);
    await start(page);
    await stop(page).waitFor();
    await until(() => underway(page).innerText(), /Working at it/);
    assert.equal(await underway(page).locator("progress").evaluate((p) => p.position), 0.4);
    await page.getByRole("button", { name: "Versions" }).click();
    await page.locator("dialog.versions[open]").getByRole("button", { name: "Close" }).click();
    await stop(page).click();
    await underway(page).waitFor({ state: "detached" });
    await until(() => page.locator("body").innerText(), /Stopped\. Nothing of your job was lost\./);
    await after(page);
    await until(() => verdict(page), /parts?/);
  });
}

onPage("a plan that is stopped leaves the job as it is; tried again it is planned, as is the next change", async (page) => {
  const again = page.locator(".verdict").getByRole("button", { name: "Try again" });
  await stall(page, "plan");
  await page.getByLabel("Node 8, Height, mm").fill("131");
  await stop(page).click();
  await until(() => page.locator(".verdict p").innerText(), /Stopped/);
  assert.equal(await page.locator(".next").count(), 0, "nothing says that the form is wrong");
  await again.click();
  await until(() => page.locator(".figures").first().innerText(), /131\.0 mm high/);
  assert.doesNotMatch(await verdict(page), /Stopped/);
  assert.equal(await again.count(), 0);
  await page.getByLabel("Node 4, Radius, mm").fill("-5");
  await until(() => page.locator(".verdict p").innerText(), /negative/);
  assert.equal(await again.count(), 0, "a form that is wrong is not helped by trying again");
  await page.keyboard.press("Control+z");
  await page.getByLabel("Node 8, Height, mm").fill("132");
  await until(() => page.locator(".figures").first().innerText(), /132\.0 mm high/);
});

onPage("the worker is killed while it works: another does the work", async (page) => {
  await stall(page, "solids");
  await tab(page, "tooling");
  const download = page.waitForEvent("download");
  await page.getByRole("button", { name: /3MF/ }).first().click();
  await stop(page).waitFor();
  await page.evaluate(() => window.moldwrightPage.core.kill());
  assert.match((await download).suggestedFilename(), /3mf$/);
});

onPage("fifty edits in a row: the plan is of the last, and each field is one step of undo", async (page) => {
  const height = page.getByLabel("Node 8, Height, mm"), radius = page.getByLabel("Node 6, Radius, mm");
  const [h, r] = [await height.inputValue(), await radius.inputValue()];
  for (let i = 1; i <= 25; i++) await height.fill(String(100 + i));
  await height.blur();
  for (let i = 1; i <= 25; i++) await radius.fill(String(40 + i / 10));
  await radius.blur();
  await planned(page);
  const asked = await page.evaluate(async () => {
    const kept = () => Object.keys(localStorage).filter((k) => k.startsWith("moldwright.kept.")).map((k) => JSON.parse(localStorage.getItem(k)));
    for (const end = performance.now() + 30_000; performance.now() < end && !kept().some((k) => JSON.parse(k.text).form.outer[5].r === 42.5 && k.words);) await new Promise((done) => setTimeout(done, 50));
    const last = kept().find((k) => JSON.parse(k.text).form.outer[5].r === 42.5);
    const a = await window.moldwrightPage.core.ask("plan", { job: JSON.parse(last.text) }, null, true);
    return { of: JSON.parse(a.reply).verdict, kept: last.words };
  });
  assert.equal(await verdict(page), asked.of.replaceAll("\u00a0", " "));
  assert.equal(asked.kept, asked.of, "the version that is kept tells the verdict of the same job");
  await page.keyboard.press("Control+z");
  await until(async () => [await height.inputValue(), await radius.inputValue()].join(), `125,${r}`);
  await page.keyboard.press("Control+z");
  await until(async () => [await height.inputValue(), await radius.inputValue()].join(), `${h},${r}`);
  assert.ok(await page.getByRole("button", { name: "Undo", exact: true }).first().isDisabled());
});

/** Types these into a field one after the other, without a moment between in which
 *  an answer could come or the page be drawn; what the core is given to plan of it. */
const atOnce = (page, label, texts) => page.getByLabel(label).evaluate(async (field, all) => {
  const { core } = window.moldwrightPage, own = Worker.prototype.postMessage, planned = [];
  Worker.prototype.postMessage = function (m, ...rest) { if (m.op === "plan") planned.push(JSON.parse(m.request).job); return own.call(this, m, ...rest); };
  for (const text of all) {
    field.value = text;
    field.dispatchEvent(new InputEvent("input", { bubbles: true }));
  }
  await core.ask("version", {}); // behind all of them
  Worker.prototype.postMessage = own;
  return planned.map((j) => j.form.outer[7].z);
}, texts);

onPage("of fifty edits in one moment the core plans the first, which it has begun, and the last", async (page) => {
  const texts = Array.from({ length: 50 }, (_, i) => String(101.5 + i / 2));
  const size = () => page.locator(".figures").first().innerText(), was = await size();
  assert.deepEqual(await atOnce(page, "Node 8, Height, mm", texts), [101.5, 126]);
  await planned(page);
  await until(size, /126\.0 mm high/);
  await page.keyboard.press("Control+z");
  await until(size, was.replaceAll("\u00a0", " "));
});

onPage("what the core has against a job that was overtaken is not said of the one on the bench", async (page) => {
  await page.evaluate(() => {
    const v = document.querySelector(".verdict"), { core } = window.moldwrightPage, ask = core.ask.bind(core);
    window.shown = [];
    new MutationObserver(() => window.shown.push(v.className)).observe(v, { attributes: true, attributeFilter: ["class"] });
    const draw = () => new Promise((r) => requestAnimationFrame(() => requestAnimationFrame(r)));
    // the answer to the first comes when the second is made, and is drawn before that to the second
    core.ask = (op, ...rest) => {
      if (op !== "plan") return ask(op, ...rest);
      const a = ask(op, ...rest, null, true);
      return window.first ? Promise.all([a, window.first]).then(draw).then(() => a) : window.first = a;
    };
  });
  await atOnce(page, "Node 8, Height, mm", ["99999", "126"]);
  await planned(page);
  assert.match((await page.evaluate(async () => (await window.first).reply)), /"error"/);
  assert.deepEqual((await page.evaluate(() => window.shown)).filter((c) => c.includes("fault")), []);
  await until(() => page.locator(".figures").first().innerText(), /126\.0 mm high/);
});

for (const how of ["pagehide", "beforeunload", "visibilitychange"]) {
  onPage(`left by ${how} alone, the page keeps the last change before it lets go`, async (page) => {
    const kept = await page.locator("input.name").evaluate((field, how) => {
      field.value = "Last word";
      field.dispatchEvent(new InputEvent("input", { bubbles: true }));
      const kept = () => Object.keys(localStorage).some((k) => k.startsWith("moldwright.kept.") && localStorage.getItem(k).includes("Last word"));
      const before = kept();
      if (how === "visibilitychange") Object.defineProperty(document, "visibilityState", { value: "hidden" });
      (how === "visibilitychange" ? document : window).dispatchEvent(new Event(how, { cancelable: true }));
      return [before, kept()];
    }, how);
    assert.deepEqual(kept, [false, true]);
  });
}

/** The link of the job on the bench, as the address bar holds it where there is no clipboard. */
async function link(page) {
  await page.evaluate(() => { navigator.clipboard.writeText = () => Promise.reject(new Error("no clipboard")); });
  await page.getByRole("button", { name: "Copy link" }).click();
  await page.waitForFunction(() => location.hash.startsWith("#job="));
  return page.url();
}

onPage("a link in the address: reload keeps what was changed since, and a new tab opens the link", async (page, { context, seen }) => {
  await page.locator("input.name").fill("As linked");
  const at = await link(page);
  await page.locator("input.name").fill("Changed since");
  await page.reload();
  await planned(page);
  await until(() => name(page), "Changed since");
  const two = await context.newPage();
  await two.goto(at);
  await planned(two);
  await until(() => name(two), "As linked");
  await two.locator("input.name").fill("Changed there");
  await two.reload();
  await planned(two);
  await until(() => name(two), "Changed there");
  seen.requests.length = 0; // the page itself, with its #
});

/** Waits until the page has done with what its address carries. */
const opened = (page) => page.evaluate(() => window.moldwrightPage.opened);

onPage("back and forward: away to another page and back this tab's job is there; a link put into the address opens", async (page, { context, seen }) => {
  await page.locator("input.name").fill("Linked");
  const at = await link(page);
  await page.locator("input.name").fill("My own");
  await page.goto("about:blank");
  const two = await context.newPage(); // another tab, which has kept something since
  await two.goto(address);
  await planned(two);
  await two.locator("input.name").fill("Of another tab");
  await two.waitForFunction(() => Object.keys(localStorage).some((k) => k.startsWith("moldwright.kept.") && localStorage.getItem(k).includes("Of another tab")));
  for (let i = 0; i < 2; i++) {
    await page.goBack();
    await planned(page);
    await opened(page);
    assert.equal(await name(page), "My own");
    if (i > 0) continue;
    await page.evaluate(() => sessionStorage.clear()); // as a browser may lose it
    await page.goForward();
  }
  await page.evaluate((a) => { location.hash = "#"; location.href = a; }, at);
  await until(() => name(page), "Linked");
  await page.keyboard.press("Control+z");
  await until(() => name(page), "My own");
  await page.goto(`${address}#job=AAAA`);
  await until(() => page.locator(".toast p").innerText(), /carries no whole job/);
  assert.equal(await name(page), "My own");
  seen.requests.length = 0;
});

/** Pastes a text onto the page, beside every field. */
const paste = (page, text) => page.evaluate((t) => {
  document.activeElement?.blur();
  const d = new DataTransfer();
  d.setData("text/plain", t);
  document.body.dispatchEvent(new ClipboardEvent("paste", { clipboardData: d, bubbles: true, cancelable: true }));
}, text);
const toast = (page) => page.locator(".toast p").innerText();

onPage("a link of two thousand points carries them all; cut anywhere it is told and the bench stays; pasted onto the page it opens", async (page, { context, seen }) => {
  const outer = Array.from({ length: 2000 }, (_, i) => ({ r: i === 0 ? 0 : Math.round((40 + 12 * Math.sin(i / 260) + Math.sin(i) / 40) * 1e4) / 1e4, z: i === 0 ? 0 : Math.round((i - 1) * 700) / 1e4 }));
  await page.locator("header input[type=file]").setInputFiles({ name: "fine.json", mimeType: "", buffer: Buffer.from(JSON.stringify({ format: "moldwright-job", version: 1, name: "Of 2,000 points", form: { outer } })) });
  await until(() => name(page), "Of 2,000 points");
  await planned(page);
  const rows = () => page.locator(".nodes-table tbody th").evaluateAll((all) => [all[0].textContent, all.at(-1).textContent, all.length].join());
  assert.equal(await rows(), "1,100,100", "a page of rows, not thousands of fields");
  assert.equal(await page.locator(".node").count(), 100);
  await page.getByRole("button", { name: "Later nodes" }).click();
  await until(rows, "101,200,100");
  const r = page.getByLabel("Node 150, Radius, mm"), was = await r.inputValue();
  await r.fill("44");
  await r.blur();
  await page.keyboard.press("Control+z");
  await until(() => r.inputValue(), was);
  await planned(page);
  const at = await link(page), bench = (p) => p.evaluate(() => JSON.parse(JSON.parse(localStorage.getItem(Object.keys(localStorage).filter((k) => k.startsWith("moldwright.kept.")).sort((a, b) => parseInt(b.split(".")[3], 36) - parseInt(a.split(".")[3], 36))[0])).text).form.outer);
  const two = await context.newPage();
  await two.goto(at);
  await planned(two);
  await until(() => name(two), "Of 2,000 points");
  await until(async () => JSON.stringify((await bench(two)).map(({ r, z }) => [r, z])) === JSON.stringify(outer.map(({ r, z }) => [r, z])), "true");
  await two.locator("input.name").fill("Mine");
  const hash = at.replace(/^[^#]*/, "");
  for (const part of [0.999, 0.8, 0.5, 0.1, 0.002]) {
    await two.getByRole("button", { name: "Close", exact: true }).click().catch(() => {});
    await paste(two, address + hash.slice(0, Math.max(12, Math.floor(hash.length * part))));
    await until(() => toast(two), /carries no whole job/);
    assert.equal(await name(two), "Mine");
  }
  await paste(two, `  ${at}\n`);
  await until(() => name(two), "Of 2,000 points");
  await two.keyboard.press("Control+z");
  await until(() => name(two), "Mine");
  seen.requests.length = 0; // the page itself, with its #
});

onPage("odd names: emoji, marks, none, a path, markup; the file's name stays a name and the page as wide as it was", async (page) => {
  for (const [typed, want] of [["Große Schüssel", "große-schussel"], ["Théière d’été", "theiere-d-ete"], ["Jarra pequeña", "jarra-pequena"], ["湯呑み", "湯呑み"], ["だるま", "だるま"], ["", "pot"], ["🏺🔥", "pot"], ["../../etc\\CON", "etc-con"], ["<b>x</b>\u202e", "b-x-b"], ["W".repeat(80), "w".repeat(80)]]) {
    await page.locator("input.name").fill(typed);
    const [d] = await Promise.all([page.waitForEvent("download"), page.getByRole("button", { name: "Save", exact: true }).click()]);
    assert.equal(d.suggestedFilename(), `${want}.moldwright.json`, typed);
    assert.equal(await page.evaluate(() => document.documentElement.scrollWidth), 360, typed);
    await until(() => verdict(page), /parts?/);
  }
}, { width: 360 });

onPage("odd input is refused at its field or by the plan, and the job stays sound", async (page) => {
  const field = page.getByLabel("Node 6, Radius, mm"), was = await verdict(page);
  for (const typed of ["1e9", "1e400", "NaN", "½", "0,0,5", "1.234,5", "5 5", "٣٤", "", "0x20"]) {
    await field.fill(typed);
    assert.equal(await field.getAttribute("aria-invalid"), "true", typed);
    assert.equal(await verdict(page), was, typed);
  }
  await field.fill("99999999999999999999");
  await until(() => page.locator(".verdict p").innerText(), /more than 2000 mm/);
  await field.fill("12,5 mm");
  await until(() => verdict(page), /parts?/);
  await field.blur();
  assert.equal(await field.inputValue(), "12.5");
  await page.keyboard.press("Control+z");
  await until(() => verdict(page), was);
});

onPage("pasted rubbish is told, and the bench stays", async (page) => {
  const was = await name(page);
  for (const [text, want] of [["\u0000\u0001\u0002", /no text that can be read/], ["hello", /words but no numbers/], ["[]", /words but no numbers/], ["null", /words but no numbers/], ["x".repeat(100_000), /words but no numbers/], ["{}", /was not opened/], ['{"format":"moldwright-class"}', /was not opened as an exercise/], ["PK\u0003\u0004", /packed folder/], ["#job=AAAA", /carries no whole job/], ["#class=AAAA", /carries no whole exercise|no whole exercise/]]) {
    await paste(page, text);
    await until(() => toast(page), want);
    assert.equal(await name(page), was);
  }
  await paste(page, "<svg xmlns='http://www.w3.org/2000/svg'></svg>");
  await page.locator(".svg-lines").waitFor({ state: "attached" }); // it gives way to the rows that are pasted next
  for (const text of ["1 2 3 4 5\n4 5 6", "1".repeat(100_000)]) {
    await paste(page, text);
    await until(() => page.locator("details.rows textarea").inputValue(), text);
    await page.getByLabel("The rows are in").selectOption("mm");
    await page.getByRole("button", { name: "Use these rows" }).click();
    await page.locator(".faults li").first().waitFor();
    assert.equal(await page.evaluate(() => document.documentElement.scrollWidth), 1280);
  }
  assert.equal(await name(page), was);
});

onPage("names of one long word break instead of widening the page: versions, kept sets, an exercise, its sheet, the table", async (page) => {
  const narrow = async (what) => assert.equal(await page.evaluate(() => document.documentElement.scrollWidth), 360, what);
  const button = (n) => page.getByRole("button", { name: n });
  await page.locator("input.name").fill("W".repeat(80));
  await page.locator("input.name").blur();
  await button("Versions").click();
  await until(async () => (await page.locator("dialog.versions").innerText()).includes("WWWW"), "true");
  assert.ok(await page.locator("dialog.versions").evaluate((d) => d.scrollWidth <= d.clientWidth), "versions");
  await page.locator("dialog.versions").getByRole("button", { name: "Close" }).click();
  await tab(page, "class");
  await button(/^Add \d questions?$/).click();
  await page.getByLabel("Title", { exact: true }).fill("W".repeat(120));
  await page.getByLabel("A word to the class").fill("w".repeat(200));
  const set = await downloaded(page, () => button("Save as file").click());
  await button("Begin a new set").click();
  await page.getByText("Sets kept in this browser").click();
  await button(/^Take back W/).waitFor();
  await narrow("kept sets");
  await page.locator("header input[type=file]").setInputFiles(set.path);
  await page.getByLabel("Your name").fill("M".repeat(80));
  await narrow("the start");
  await page.getByRole("button", { name: "Begin", exact: true }).click();
  await page.locator("main.exercise .plane svg").waitFor();
  await narrow("a question");
  await button(/^Sheet$|^To your sheet$|^Your sheet$/).first().click();
  await page.locator(".score").waitFor();
  await narrow("the sheet");
  const sheet = await downloaded(page, () => button("Save the sheet as file").click());
  await button("Leave the exercise").click();
  await button(/^Go on with “W/).waitFor();
  await until(() => toast(page), /You left/);
  await narrow("an exercise that was left");
  await page.locator("#tabpanel input[type=file][multiple]").setInputFiles(sheet.path);
  await page.locator(".results table").waitFor();
  await narrow("the table");
}, { width: 360 });

onPage("steps of undo are named in the language of the page, whichever they were made in", async (page) => {
  const undo = () => page.locator(".tools button").first().getAttribute("title");
  await page.getByLabel("Node 6, Radius, mm").fill("52");
  await page.getByLabel("Node 6, Radius, mm").blur();
  for (const [code, want] of [["de", /Knoten 6/], ["fr", /[Nn]œud 6/], ["es", /[Nn]odo 6/], ["en", /node 6/]]) {
    await page.locator("header select").selectOption(code);
    await until(undo, want);
  }
});
