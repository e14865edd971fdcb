// The start: while the browser still reads the packed core, which comes last in
// the file, the page is painted with the job of the last visit, of the link or
// of the sample, and the worker is made ready to unpack it.
import { render } from "preact";
import { App } from "./app";
import type { Job } from "./contract";
import { Core } from "./core";
import { fromLink, listen, read, save } from "./files";
import { samples } from "./samples";
import { begin, redo, say, set, undo } from "./state";
import { kept } from "./storage";
import { w } from "./words";

const root = document.getElementById("page")!;
const text = (id: string) => document.getElementById(id)!.textContent!.trim();

function paint(): void { render(<App />, root); }

function run(): void {
  const last = kept();
  const packed = new Promise<string>((resolve) => {
    if (document.readyState !== "loading") resolve(text("core"));
    else addEventListener("DOMContentLoaded", () => resolve(text("core")));
  });
  const core = new Core(text("worker"), packed, (progress) => set({ progress }));
  core.start();
  begin(job(last) ?? structuredClone(samples[0]!), last !== undefined, core, paint);
  paint();
  listen();
  addEventListener("keydown", keys);
  if (last === undefined) say(w.noStorage);
  if (location.hash.startsWith("#job=")) {
    void fromLink(location.hash).then(async (t) => {
      const [fault] = t === null ? [] : await read({ kind: "job", text: t }, w.stepOpened(w.link.toLowerCase()));
      if (t === null) say(w.badLink);
      else if (fault) say(fault.message);
    });
  }
  // For the browser tests: the core as the page holds it.
  Object.defineProperty(window, "moldwrightPage", { value: { core } });
}

/** The job that the browser kept, if it still reads as one. */
function job(kept: string | null | undefined): Job | null {
  try {
    const j = JSON.parse(kept ?? "null") as Job | null;
    return j?.format === "moldwright-job" && Array.isArray(j.form?.outer) ? j : null;
  } catch {
    return null;
  }
}

function keys(e: KeyboardEvent): void {
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
