// The start: while the browser still reads the packed core, which comes last in
// the file, the page is painted with the job of the last visit, of the link or
// of the sample, which brings its plan with it, and the worker is made ready to
// unpack it.
import { render } from "preact";
import { App } from "./app";
import { foresee, onLink, openClass } from "./class/open";
import { room } from "./class/room";
import { Core } from "./core";
import type { First } from "./first";
import type { Plan } from "./contract";
import { fromLink, listen, read, save } from "./files";
import { type FirstPlan, replyIn } from "./first-plan";
import { beginLanguage } from "./language";
import { named, samples } from "./samples";
import { begin, now, redo, say, set, undo, unsaved } from "./state";
import { feed, unpacked } from "./packed";
import { keepNow, left } from "./keep/autosave";
import { opened as linked, putLink } from "./keep/tab";
import { language, w } from "./words";

const root = document.getElementById("page")!;

function paint(): void { render(<App />, root); }

function run(): void {
  beginLanguage();
  const last = left();
  const core = new Core((window as unknown as { moldwrightFirst: First }).moldwrightFirst, feed, (progress) => set({ progress }), (slow) => { if (slow !== now().slow) set({ slow }); });
  core.start();
  foresee();
  // on the way to a link the sample is passed by
  const started = begin(last, named(samples[0]!), location.hash ? null : firstPlan, core, paint);
  paint();
  listen();
  addEventListener("keydown", keys);
  // a tab that has opened its link before goes on with its own job
  const again = location.hash === linked() && last !== undefined && last.length > 0;
  if (last === undefined) void started.then(() => say(w.noStorage));
  const opened = started.then(again ? undefined : openLink).then(openClass);
  addEventListener("hashchange", (e) => {
    if (e.newURL === location.href) void (onLink() ? openClass() : openLink()); // else another follows
  });
  addEventListener("beforeunload", leaving);
  // For the browser tests: the core as the page holds it, and that what an address carries has been opened.
  Object.defineProperty(window, "moldwrightPage", { value: { core, opened } });
}

/** The sample's plan in the language of the page. */
async function firstPlan(): Promise<Plan> {
  return JSON.parse(replyIn(language, JSON.parse(await unpacked("plan")) as FirstPlan)) as Plan;
}

async function openLink(): Promise<void> {
  if (!location.hash.startsWith("#job=")) return;
  const t = await fromLink("job", location.hash);
  const [fault] = t === null ? [] : await read({ kind: "job", text: t }, () => w.stepOpened("link"));
  putLink(location.hash);
  if (t === null) say(w.badLink);
  else if (fault) say(w.notOpened("link", fault.message));
}

/** Asks before the page is left only where something would be lost. */
function leaving(e: BeforeUnloadEvent): void {
  keepNow();
  const { trace, storage } = now(), { inside, session } = room();
  const tracing = trace?.open === true, exercise = inside && !storage && session !== null && !session.trial && session.at >= 0;
  if (tracing || exercise || (!storage && unsaved())) e.preventDefault();
}

function keys(e: KeyboardEvent): void {
  if (room().inside) return;
  if (!(e.ctrlKey || e.metaKey) || e.altKey) return;
  const k = e.key.toLowerCase();
  if (k === "s") save();
  else if (k === "o") document.querySelector<HTMLInputElement>("input[type=file]")?.click();
  else if (k === "z" && !e.shiftKey) undo();
  else if (k === "y" || (k === "z" && e.shiftKey)) redo();
  else return;
  e.preventDefault();
}

run();
