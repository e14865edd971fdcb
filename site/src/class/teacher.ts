// What a teacher does: draw questions, put them in order, hand the set out, and
// collect what comes back. The core completes and checks every set.
import { download, fileName, toLink } from "../files";
import { showAddress } from "../keep/tab";
import { show } from "../numbers";
import { coreOf, now, parse, say, set as setPage } from "../state";
import { w } from "../words";
import type { From } from "../words/from";
import { exercise } from "./ask";
import { beginRow, keepSet, type Kept, own } from "./kept";
import { emptySet, put, room } from "./room";
import { at, nextRef, title } from "./session";
import type { ClassSet, Ref, SetReply, Table } from "./types";

const SEEDS = 31 ** 4;

let last: Promise<unknown> = Promise.resolve();
let sets = 0;

/** Puts other questions in the set, if the core can ask every one of them, and looks
 *  at one. Changes that come faster than the core answers are made one after another,
 *  each to what the one before has left; null changes nothing, and what was asked for
 *  a set that has been put away meanwhile is dropped. */
function use(change: (list: Ref[]) => Ref[] | null, look?: (were: number) => number): Promise<boolean> {
  const of = sets;
  const done = last.then(async () => {
    const list = room().set.questions, questions = of === sets ? change(list) : null;
    if (!questions) return false;
    const reply = await exercise<SetReply>({ do: "set", set: { ...room().set, questions } });
    if (of !== sets) return false;
    if ("error" in reply) {
      put({ fault: at(reply) });
      return false;
    }
    const next = { ...room().set, questions: reply.set.questions };
    put({ set: next, questions: reply.questions, honest: reply.honest, fault: "", ...(look ? { looked: look(list.length) } : {}) });
    keep();
    return true;
  });
  last = done;
  return done;
}

const add = (more: (list: Ref[]) => Ref[]): Promise<boolean> => use((list) => [...list, ...more(list)], (were) => were);

/** Draws new questions, each with a seed of its own. */
export const drawQuestions = (kinds: string[], difficulty: number, each: number): Promise<boolean> =>
  add(() => kinds.flatMap((kind) => Array.from({ length: each }, () => ({ kind, difficulty, seed: Math.floor(Math.random() * SEEDS) }))));

export function addBench(kind: string, difficulty: number): Promise<boolean> {
  const { job } = now();
  return add((list) => [{ kind, difficulty, seed: list.filter((q) => q.job).length, job }]);
}

export const addCode = (code: string): Promise<boolean> => add(() => [{ code }]);

/** Changes the list that is shown, unless it is another one by then. */
function useShown(change: (list: Ref[]) => void, look?: number): Promise<boolean> {
  const shown = room().set.questions;
  return use((list) => {
    if (list !== shown) return null;
    const next = [...list];
    change(next);
    return next;
  }, look === undefined ? undefined : () => look);
}

export function move(i: number, by: number): void {
  void useShown((list) => { list.splice(i + by, 0, ...list.splice(i, 1)); }, i + by);
}

/** Takes a question out, or, where one is given, puts that in its place. */
export function change(i: number, other?: Ref): void {
  void useShown((list) => { list.splice(i, 1, ...(other ? [other] : [])); }).then(() => {
    const { looked, set: { questions: { length } } } = room();
    if (typeof looked === "number" && looked >= length) put({ looked: length ? length - 1 : null });
  });
}

export const drawOther = (i: number): void => change(i, nextRef(room().set.questions[i]!));

export function settings(patch: Partial<ClassSet>): void {
  const next = { ...room().set, ...patch };
  put({ set: next });
  keep();
}

/** Keeps the set as it stands; where the browser refuses, that is said once. */
function keep(): void {
  if (keepSet(room().set) || !now().storage) return;
  setPage({ storage: false });
  say(w.keep.full);
}

/** Keeps the set again, if this tab holds one. */
export const keepHeld = (): void => { if (room().set.questions.length) keep(); };

/** Begins an empty set; the one before stays among those that are kept. */
export function beginNew(): void {
  sets++;
  beginRow("class", null);
  put({ set: emptySet, questions: [], fault: "", looked: null });
  keep();
}

/** Brings back the set in the making of an earlier visit. */
export async function resumeSet(): Promise<void> {
  const k = own("class");
  if (k?.what.questions.length) await openSet(JSON.stringify(k.what), "link", k);
}

/** Puts a kept set on the panel in place of the one there, which stays kept. */
export async function takeSet(k: Kept<"class">): Promise<void> {
  await openSet(JSON.stringify(k.what), { file: title(k.what) }, k);
}

/** Opens a saved set to change it, or one that is kept. */
export async function openSet(text: string, from: From, old: Kept<"class"> | null = null): Promise<void> {
  const reply = await exercise<SetReply>({ do: "set", set: text });
  if ("error" in reply) return say(w.class.notOpened(from, at(reply)));
  sets++;
  beginRow("class", old);
  put({ set: reply.set, questions: reply.questions, honest: reply.honest, fault: "", looked: old ? null : 0 });
  keep();
  if (!old) {
    setPage({ tab: "class" });
    say(w.class.setOpened(from));
  }
}

async function written(): Promise<string | null> {
  const reply = await exercise<SetReply>({ do: "set", set: room().set });
  if ("error" in reply) { put({ fault: at(reply) }); return null; }
  return reply.text;
}

export async function saveSet(): Promise<void> {
  const text = await written();
  if (text) download(fileName({ name: title(room().set) }, ".moldwright-class.json"), text, "application/json");
}

const LONG = 4000;

export async function copyLink(): Promise<void> {
  const text = await written();
  if (!text) return;
  const hash = await toLink("class", JSON.stringify(JSON.parse(text)));
  const address = location.href.replace(/#.*$/, "") + hash;
  const long = address.length > LONG ? " " + w.class.longLink(show(address.length, 0)) : "";
  try {
    await navigator.clipboard.writeText(address);
    say(w.class.linkCopied + long);
  } catch {
    showAddress(hash);
    say(w.class.linkShown + long);
  }
}

/** Sheets on paper, where this core makes them. */
export async function sheet(name: string, request: object): Promise<Uint8Array[] | null> {
  const a = await coreOf().ask("sheet", { sheet: name, paper: "A4", as: "pdf", ...request });
  if (!a || "error" in parse(a.reply)) return null;
  return a.blobs;
}

export async function saveSheet(name: "worksheet" | "key", paper: string): Promise<void> {
  const blobs = await sheet(name, { set: room().set, paper });
  for (const b of blobs ?? []) download(fileName({ name: title(room().set) }, `-${name}.pdf`), b as BlobPart, "application/pdf");
}

interface OpenFile { from: From; text: string }

/** Reads result files beside those that are open, and marks them anew. */
export async function collect(more: OpenFile[]): Promise<void> {
  const files = [...room().files];
  for (const f of more) {
    const i = files.findIndex((g) => g.text === f.text);
    if (i < 0) files.push(f);
    else files[i] = f;
  }
  put({ files });
  if (await tabled()) {
    put({ looked: "table" });
    setPage({ tab: "class" });
  }
}

/** Lets the core mark the opened files and put them in a table. */
export async function tabled(): Promise<boolean> {
  const { files } = room();
  const own = room().set.questions.length ? await exercise<SetReply>({ do: "set", set: room().set }) : null;
  const asked = own && !("error" in own) && files.some((f) => f.text.includes(`"${own.print}"`)) ? own.set : undefined;
  const reply = await exercise<Table>({ do: "collect", results: files.map((f) => f.text), ...(asked ? { set: asked } : {}) });
  if ("error" in reply) {
    say(reply.error.message);
    return false;
  }
  put({ table: reply });
  return true;
}

export function saveTable(): void {
  const t = room().table;
  if (!t) return;
  const name = t.rows[0]?.title || w.class.table;
  download(fileName({ name }, ".csv"), "\ufeff" + t.csv, "text/csv;charset=utf-8");
}

export const clearTable = (): void => put({ files: [], table: null, looked: null });
