// A person's hands in Firefox, from file://, by WebDriver BiDi (W3C), which the
// browser speaks by itself; the browser tests' own library needs a build of its
// own. A profile of its own is made and thrown away.
import { spawn, spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readdirSync, rmSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { address, PATIENCE } from "./browser.mjs";
import { connect } from "./socket.mjs";

export const program = ["firefox-esr", "firefox"].find((p) => spawnSync("sh", ["-c", `command -v ${p}`]).status === 0) ?? null;

const KEYS = { Tab: "\ue004", Enter: "\ue007", Escape: "\ue00c", ArrowLeft: "\ue012", ArrowUp: "\ue013", ArrowRight: "\ue014", ArrowDown: "\ue015" };

/** A value of the protocol as one of JavaScript. */
function plain(v) {
  if (v.type === "array") return v.value.map(plain);
  if (v.type === "object") return Object.fromEntries(v.value.map(([k, x]) => [k, plain(x)]));
  return v.type === "undefined" || v.type === "null" ? null : v.value;
}

export async function start() {
  const home = mkdtempSync(join(tmpdir(), "firefox-")), into = mkdtempSync(join(tmpdir(), "firefox-down-"));
  const prefs = {
    "browser.download.folderList": 2, "browser.download.dir": into, "browser.download.useDownloadDir": true, "browser.download.always_ask_before_handling_new_types": false,
    "browser.helperApps.neverAsk.saveToDisk": "application/json,application/pdf,model/3mf,application/zip,text/csv", "browser.download.alwaysOpenPanel": false, "pdfjs.disabled": true,
    "dom.disable_beforeunload": true, "browser.shell.checkDefaultBrowser": false, "datareporting.policy.dataSubmissionEnabled": false, "app.update.enabled": false, "toolkit.telemetry.enabled": false,
    "browser.startup.homepage_override.mstone": "ignore", "network.captive-portal-service.enabled": false, "network.connectivity-service.enabled": false, "browser.safebrowsing.update.enabled": false,
    "intl.accept_languages": "en-US",
  };
  writeFileSync(join(home, "user.js"), Object.entries(prefs).map(([k, v]) => `user_pref(${JSON.stringify(k)}, ${JSON.stringify(v)});\n`).join(""));
  const child = spawn(program, ["--headless", "--no-remote", "--profile", home, "--remote-debugging-port", "0"], { stdio: ["ignore", "ignore", "pipe"] });
  const url = await new Promise((resolve, reject) => {
    let out = "";
    child.stderr.on("data", (d) => {
      out += d;
      const m = /WebDriver BiDi listening on (ws:\S+)/.exec(out);
      if (m) resolve(m[1]);
    });
    child.on("exit", () => reject(new Error(`Firefox ended: ${out.slice(-400)}`)));
  });
  const waiting = new Map(), logs = new Map();
  let next = 1;
  const socket = await connect(`${url}/session`, (text) => {
    const m = JSON.parse(text);
    if (m.method === "log.entryAdded" && m.params.level === "error") logs.get(m.params.source.context)?.push(m.params.text);
    const w = waiting.get(m.id);
    if (!w) return;
    waiting.delete(m.id);
    if (m.type === "error") w.reject(new Error(`${m.error}: ${m.message}`));
    else w.resolve(m.result);
  });
  const ask = (method, params = {}) => new Promise((resolve, reject) => {
    waiting.set(next, { resolve, reject });
    socket.send(JSON.stringify({ id: next++, method, params }));
  });
  await ask("session.new", { capabilities: { alwaysMatch: { unhandledPromptBehavior: { default: "accept" } } } });
  await ask("session.subscribe", { events: ["log.entryAdded"] });

  async function page({ width, height }) {
    const { userContext } = await ask("browser.createUserContext");
    const { context } = await ask("browsingContext.create", { type: "tab", userContext });
    const errors = [];
    logs.set(context, errors);
    await ask("browsingContext.setViewport", { context, viewport: { width, height } });
    const run = async (f, arg, handle = false) => {
      const a = await ask("script.callFunction", {
        functionDeclaration: `async (a) => (${f})(JSON.parse(a))`, arguments: [{ type: "string", value: JSON.stringify(arg ?? null) }], awaitPromise: true, target: { context }, userActivation: true,
      });
      if (a.type === "exception") throw new Error(a.exceptionDetails.text);
      return handle ? a.result : plain(a.result);
    };
    const act = (id, type, actions, more = {}) => ask("input.performActions", { context, actions: [{ type, id, actions, ...more }] });
    const point = (x, y, kind) => act(kind, "pointer", [{ type: "pointerMove", x: Math.round(x), y: Math.round(y) }, { type: "pointerDown", button: 0 }, { type: "pointerUp", button: 0 }], { parameters: { pointerType: kind } });
    return {
      errors,
      open: (hash = "") => ask("browsingContext.navigate", { context, url: address + hash, wait: "complete" }),
      evaluate: run,
      click: (x, y) => point(x, y, "mouse"),
      tap: (x, y) => point(x, y, "touch"),
      key: (k) => act("keys", "key", k.split("+").flatMap((x) => [{ type: "keyDown", value: { Control: "\ue009", Shift: "\ue008" }[x] ?? KEYS[x] ?? x }]).concat(k.split("+").reverse().map((x) => ({ type: "keyUp", value: { Control: "\ue009", Shift: "\ue008" }[x] ?? KEYS[x] ?? x })))),
      type: (t) => act("keys", "key", [...t].flatMap((c) => [{ type: "keyDown", value: c === "\n" ? KEYS.Enter : c }, { type: "keyUp", value: c === "\n" ? KEYS.Enter : c }])),
      async files(selector, paths) {
        const element = await run(`(s) => document.querySelector(s)`, selector, true);
        await ask("input.setFiles", { context, element: { sharedId: element.sharedId }, files: [paths].flat() });
      },
      async downloaded(work) {
        const before = new Set(readdirSync(into));
        await work();
        for (const end = performance.now() + PATIENCE; performance.now() < end;) {
          const now = readdirSync(into).filter((f) => !before.has(f));
          const done = now.find((f) => !f.endsWith(".part") && !now.includes(`${f}.part`));
          if (done && statSync(join(into, done)).size > 0) return join(into, done);
          await new Promise((r) => setTimeout(r, 60));
        }
        throw new Error("no download came");
      },
      end: () => ask("browsingContext.close", { context }).then(() => ask("browser.removeUserContext", { userContext })),
    };
  }
  return {
    name: "Firefox",
    page,
    async end() {
      const ended = new Promise((r) => child.once("exit", r));
      await ask("browser.close").catch(() => {});
      socket.close();
      const late = setTimeout(() => child.kill("SIGKILL"), 5000);
      await ended;
      clearTimeout(late);
      for (const d of [home, into]) if (existsSync(d)) rmSync(d, { recursive: true, force: true });
    },
  };
}
