// The plan that a first visit begins with: it is the core's own, to the byte, in
// every language; the pot can be worked on before the core is there; and it is
// shown on no other way into the page. The packed core is held back, so that the
// page can be looked at without it for as long as it takes.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { after, before, test } from "node:test";
import { gunzipSync } from "node:zlib";
import { transform } from "esbuild";
import { startCore } from "../tools/core.mjs";
import { words } from "../tools/words.mjs";
import { address, idle, launch, planned, until } from "./browser.mjs";
import { tab } from "./onpage.mjs";

const ours = async (file) => {
  const { code } = await transform(readFileSync(new URL(`../src/${file}`, import.meta.url), "utf8"), { loader: "ts" });
  return import(`data:text/javascript,${encodeURIComponent(code)}`);
};
const { decode } = await ours("pairs.ts"), { replyIn } = await ours("first-plan.ts");
const { tables, languages } = await words(), core = await startCore();
const packed = /<script type="text\/plain" id="plan">([^<]*)</.exec(readFileSync(new URL(address), "utf8"))[1];
const built = JSON.parse(gunzipSync(decode(packed)));
const sample = core.ask("read", { kind: "job", text: readFileSync(new URL("../samples/harbour-jar.json", import.meta.url), "utf8") }).job;

for (const language of Object.keys(languages)) {
  test(`in ${language} it is what the core says of the sample, to the byte`, () => {
    const job = { ...sample, name: tables[language].samples[sample.name][0] };
    const { reply } = core.call("plan", JSON.stringify({ language, job }), null);
    assert.equal(replyIn(language, built), reply);
    assert.equal(JSON.parse(reply).error, undefined);
  });
}

let browser;
before(async () => { browser = await launch(); });
after(async () => { await browser.close(); });

/** A page whose core is held back until release() is called; what the core answers is noted. */
async function withoutCore(work, to = address, options = {}) {
  const context = await browser.newContext(options), page = await context.newPage(), errors = [];
  page.on("pageerror", (e) => errors.push(String(e)));
  await page.addInitScript(() => {
    const own = Worker.prototype.postMessage, held = [];
    let released = false;
    window.asked = [];
    Worker.prototype.postMessage = function (m, ...rest) {
      if (m.op) window.asked.push({ op: m.op, request: m.request });
      if (released || !("core" in m)) return own.call(this, m, ...rest);
      held.push(() => own.call(this, m, ...rest));
    };
    window.release = () => { released = true; for (const send of held.splice(0)) send(); };
  });
  try {
    await page.goto(to);
    await work(page);
    assert.deepEqual(errors, []);
  } finally {
    await context.close();
  }
}
const says = async (page) => (await page.locator(".verdict p").innerText()).replaceAll("\u00a0", " ");
const wall = (page) => page.locator(".pot > .outline").last().getAttribute("d");
/** What is read once fonts are there and what that moved is drawn. */
const settled = async (page, read) => {
  await page.evaluate(async () => { await document.fonts.ready; for (let i = 0; i < 3; i++) await new Promise((r) => requestAnimationFrame(r)); });
  return read();
};
const busy = (page) => page.locator(".verdict").getAttribute("aria-busy");

for (const [language, locale] of [["en", "en-GB"], ["de", "de-DE"]]) {
  test(`a first visit in ${language} shows the planned sample before the core is there; the core's own plan leaves all as it is`, () => withoutCore(async (page) => {
    const { verdict } = JSON.parse(replyIn(language, built));
    await page.locator(".drawing svg").waitFor();
    await until(() => says(page), verdict.replaceAll("\u00a0", " "));
    assert.equal(await busy(page), "false");
    assert.deepEqual(await page.evaluate(() => window.asked), [], "the core has been asked nothing yet");
    await tab(page, "parts");
    await page.locator("#tab-form").click();
    const drawing = () => page.locator(".drawing").innerHTML();
    let was = "";
    await until(async () => was === (was = await settled(page, drawing)), "true"); // its size follows the text above it
    await page.evaluate(() => window.release());
    await planned(page);
    const [first] = await page.evaluate(() => window.asked);
    assert.equal(first.op, "plan");
    assert.equal(core.call("plan", first.request, null).reply, replyIn(language, built), "the live core is asked for the very plan that was shown");
    assert.equal(await settled(page, drawing), was);
  }, address, { locale }));
}

test("the pot can be worked on before the core is there: only the newest job is planned then", () => withoutCore(async (page) => {
  await page.locator(".node").nth(5).focus();
  const was = await wall(page);
  for (let i = 0; i < 20; i++) await page.keyboard.press("Shift+ArrowRight");
  await until(() => busy(page), "true");
  await until(async () => (await wall(page)) !== was, "true");
  const job = await page.evaluate(() => window.moldwrightPage.core.queue.map((q) => JSON.parse(q.request).job));
  assert.equal(job.length, 1);
  assert.equal(job[0].form.outer[5].r, sample.form.outer[5].r + 20);
  await page.evaluate(() => window.release());
  await planned(page);
  const plan = core.ask("plan", { language: "en", job: job[0] });
  assert.notEqual(plan.verdict, JSON.parse(replyIn("en", built)).verdict);
  await until(() => says(page), plan.verdict.replaceAll("\u00a0", " "));
}));

test("whoever comes by a link, or comes back, is not shown the sample on the way", async () => {
  const link = `${address}#job=AAAA`; // an address that carries no job: the sample is planned by the live core
  await withoutCore(async (page) => {
    await page.locator(".panels .panel > *").first().waitFor(); // drawn once all is read
    assert.equal(await page.locator(".drawing svg").count(), 0);
    await page.evaluate(() => window.release());
    await planned(page);
    assert.equal(await page.locator(".drawing svg").count(), 1);
  }, link);
  await withoutCore(async (page) => {
    await page.evaluate(() => window.release());
    await idle(page);
    await page.locator("input.name").fill("Mine");
    await until(() => page.evaluate(() => Object.values(localStorage).some((v) => v.includes("Mine"))), "true");
    await page.reload();
    await page.waitForFunction(() => document.readyState === "complete" && window.moldwrightPage.core.queue.length > 0);
    assert.equal(await page.evaluate(() => window.moldwrightPage.core.queue[0].op), "read");
    await page.evaluate(() => new Promise((r) => requestAnimationFrame(() => requestAnimationFrame(r))));
    assert.equal(await page.locator(".drawing svg").count(), 0);
    await page.evaluate(() => window.release());
    await planned(page);
    assert.equal(await page.locator("input.name").inputValue(), "Mine");
  });
});
