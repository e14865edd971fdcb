// Files in and out: download, open, drop and paste, and the job as a link. What
// comes in is read by the core; what it cannot read is told, and the job on the
// bench stays as it is.
import type { Fault, Job } from "./contract";
import { takeClass } from "./class/open";
import { room } from "./class/room";
import { canonical } from "./canonical";
import type { Said } from "./history";
import { keepSoon } from "./keep/autosave";
import { decode, likeJob, looksLikePicture, strange } from "./keep/text";
import { coreOf, faults, make, now, type Origin, parse, replace, say, set } from "./state";
import { isNamed, samples } from "./samples";
import { isPicture } from "./trace/files";
import { openSvg } from "./trace/svg";
import { openPicture } from "./trace/tracing";
import { w } from "./words";
import type { From } from "./words/from";

/** Hands bytes to the browser as a file of that name. */
export function download(name: string, bytes: BlobPart, type: string): void {
  const a = document.createElement("a");
  a.href = URL.createObjectURL(new Blob([bytes], { type }));
  a.download = name;
  a.click();
  set({ handed: { name } });
  setTimeout(() => URL.revokeObjectURL(a.href), 60_000);
}

/** The job's name as a file name: letters, digits and dashes. */
export function fileName(job: { name: string }, rest: string): string {
  // ü is u in a file's name, not u and a stroke; marks of other scripts are part of their letters
  const plain = job.name.normalize("NFKD").replace(/(\p{Script=Latin})\p{M}+/gu, "$1").normalize("NFC");
  const base = plain.toLowerCase().replace(/[^\p{L}\p{N}\p{M}]+/gu, "-").replace(/^-+|-+$/g, "");
  return `${base || "pot"}${rest}`;
}

export function save(): void {
  const { job } = now();
  const text = canonical(job);
  download(fileName(job, ".moldwright.json"), text, "application/json");
  set({ saved: text });
  keepSoon(); // as one that is saved
}

/** Reads text of any kind we know and puts it on the bench. Coordinates wait in
 *  the box for rows, since their unit must be asked for. */
export async function take(text: string, from: From): Promise<void> {
  const start = text.trimStart(), odd = strange(text);
  if (odd) return say(w.keep.strange[odd](from));
  const [, hash, kind] = /^\S*(#(job|class)=[\w-]+)$/.exec(start.trimEnd()) ?? [];
  if (hash) { // a link of ours that was pasted into the page and not into the address
    const linked = await fromLink(kind as "job" | "class", hash);
    if (linked === null) return say(kind === "job" ? w.badLink : w.class.badLink);
    if (!takeClass([{ from: "link", text: linked }])) await openJob(linked, "link", "given");
    return;
  }
  if (takeClass([{ from, text: start }])) return;
  if (likeJob(start)) return openJob(text, from);
  if (start.startsWith("<")) {
    return openSvg(text, from);
  }
  if (!/\d/.test(text)) return say(w.keep.strange.words(from));
  const { trace } = now();
  set({ tab: "form", svg: null, trace: trace && { ...trace, open: false }, rows: { ...now().rows, text, units: "", open: true, faults: [] } });
  say(w.rowsWait);
  requestAnimationFrame(() => document.querySelector<HTMLElement>("details.rows select")?.focus()); // once they are drawn
}

/** Opens a file of any kind we know; of several, results of a class. */
export async function takeFile(file: File, ...more: File[]): Promise<void> {
  if (more.length || room().inside) {
    const all = await Promise.all([file, ...more].map(async (f) => ({ from: { file: f.name }, text: decode(await bytesOf(f)) })));
    if (takeClass(all)) return;
  }
  if (isPicture(file)) return openPicture(file, file.name);
  const bytes = await bytesOf(file);
  if (looksLikePicture(bytes)) return openPicture(file, file.name);
  return take(decode(bytes), { file: file.name });
}

const bytesOf = async (f: File): Promise<Uint8Array> => new Uint8Array(await f.arrayBuffer());

/** Opens a saved job. Of one that does not read, what can be saved is offered,
 *  and nothing is done unasked. */
export async function openJob(text: string, from: From, origin: Origin = "file", row: string | null = null): Promise<void> {
  const [fault] = await read({ kind: "job", text }, () => w.stepOpened(from), origin, row);
  if (!fault) return;
  const a = await coreOf().ask("read", { kind: "salvage", text });
  const reply = a && parse<{ job: Job; notes?: Fault[] }>(a.reply);
  if (!reply || "error" in reply) return say(w.notOpened(from, fault.message));
  set({ damaged: { from, fault, job: reply.job, notes: reply.notes ?? [] } });
}

/** Lets the core read a text; on success its job is on the bench, else all its
 *  faults come back and nothing changes. */
export async function read(request: object, words: Said, origin: Origin = "given", row: string | null = null): Promise<Fault[]> {
  const a = await coreOf().ask("read", request);
  if (!a) return [];
  const reply = parse<{ job: Job }>(a.reply);
  if ("error" in reply) return faults(reply);
  say(words(), replace(reply.job, words, origin, row));
  return [];
}

/** Puts typed rows in place of the form; everything else of the job stays, but for
 *  the name of a sample. */
export async function readRows(text: string, units: string, across: string): Promise<Fault[]> {
  const a = await coreOf().ask("read", { kind: "coordinates", text, units, across });
  if (!a) return [];
  const reply = parse<{ job: Job }>(a.reply);
  if ("error" in reply) return faults(reply);
  make(() => w.rowsStep, (j) => {
    j.form.outer = reply.job.form.outer;
    delete j.form.traced;
    j.mold.partingHeights = null;
    if (samples.some((s) => isNamed(s, j.name))) j.name = w.ownPot; // another pot than the sample
  });
  set({ node: null });
  return [];
}

/** Drop and paste anywhere on the page, except into a field. */
export function listen(): void {
  const hold = (e: DragEvent) => {
    if (!e.dataTransfer?.types.some((t) => t === "Files" || t === "text/plain")) return;
    e.preventDefault();
    document.body.classList.toggle("dropping", e.type === "dragover");
  };
  addEventListener("dragover", hold);
  addEventListener("dragleave", hold);
  addEventListener("drop", (e) => {
    hold(e);
    const [file, ...more] = e.dataTransfer?.files ?? [];
    if (file) void takeFile(file, ...more);
    else if (e.dataTransfer) void take(e.dataTransfer.getData("text/plain"), "drop");
  });
  addEventListener("paste", (e) => {
    if ((e.target as Element).closest?.("input, textarea, select")) return;
    const file = e.clipboardData?.files[0];
    const text = e.clipboardData?.getData("text/plain") ?? "";
    if (!file && !text.trim()) return;
    e.preventDefault();
    if (file) void takeFile(file);
    else void take(text, "paste");
  });
}

async function through(bytes: Uint8Array<ArrayBuffer>, stream: CompressionStream | DecompressionStream): Promise<Uint8Array<ArrayBuffer>> {
  return new Uint8Array(await new Response(new Blob([bytes]).stream().pipeThrough(stream)).arrayBuffer());
}

/** A document as the part of a link after #, which is sent to nobody: what it is,
 *  and its text, deflated. */
export async function toLink(what: "job" | "class", json: string): Promise<string> {
  const packed = await through(new TextEncoder().encode(json), new CompressionStream("deflate-raw"));
  const text = btoa(Array.from(packed, (b) => String.fromCharCode(b)).join(""));
  return `#${what}=` + text.replaceAll("+", "-").replaceAll("/", "_").replace(/=+$/, "");
}

/** The document's text in a link, or null where the link carries none or a
 *  damaged one. */
export async function fromLink(what: "job" | "class", hash: string): Promise<string | null> {
  const m = /^#(\w+)=([\w-]+)$/.exec(hash);
  if (m?.[1] !== what) return null;
  try {
    const bytes = Uint8Array.from(atob(m[2]!.replaceAll("-", "+").replaceAll("_", "/")), (c) => c.charCodeAt(0));
    return new TextDecoder().decode(await through(bytes, new DecompressionStream("deflate-raw")));
  } catch {
    return null;
  }
}
