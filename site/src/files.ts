// Files in and out: download, open, drop and paste, and the job as a link. What
// comes in is read by the core; what it cannot read is told, and the job on the
// bench stays as it is.
import type { Fault, Job } from "./contract";
import { coreOf, edit, faults, now, parse, replace, say, set, settle } from "./state";
import { canonical } from "./storage";
import { isPicture } from "./trace/files";
import { openSvg } from "./trace/svg";
import { openPicture } from "./trace/tracing";
import { w } from "./words";

/** Hands bytes to the browser as a file of that name. */
export function download(name: string, bytes: BlobPart, type: string): void {
  const a = document.createElement("a");
  a.href = URL.createObjectURL(new Blob([bytes], { type }));
  a.download = name;
  a.click();
  setTimeout(() => URL.revokeObjectURL(a.href), 60_000);
}

/** The job's name as a file name: letters, digits and dashes. */
export function fileName(job: Job, rest: string): string {
  const base = job.name.normalize("NFKD").toLowerCase().replace(/[^\p{L}\p{N}]+/gu, "-").replace(/^-+|-+$/g, "");
  return `${base || "pot"}${rest}`;
}

export function save(): void {
  const { job } = now();
  const text = canonical(job);
  download(fileName(job, ".moldwright.json"), text, "application/json");
  set({ saved: text });
}

/** Reads text of any kind we know and puts it on the bench. Coordinates wait in
 *  the box for rows, since their unit must be asked for. */
export async function take(text: string, from: string): Promise<void> {
  const start = text.trimStart();
  if (start.startsWith("{")) return openJob(text, from);
  if (start.startsWith("<")) {
    return openSvg(text, from);
  }
  set({ tab: "form", rows: { ...now().rows, text, units: "", open: true, faults: [] } });
  say(w.rowsWait);
}

/** Opens a file of any kind we know. */
export async function takeFile(file: File): Promise<void> {
  if (isPicture(file)) return openPicture(file, file.name);
  return take(await file.text(), file.name);
}

async function openJob(text: string, from: string): Promise<void> {
  const [fault] = await read({ kind: "job", text }, w.stepOpened(from), true);
  if (fault) say(w.notOpened(from, fault.message));
}

/** Lets the core read a text; on success its job is on the bench, else all its
 *  faults come back and nothing changes. */
export async function read(request: object, words: string, saved = false): Promise<Fault[]> {
  const a = await coreOf().ask("read", request);
  if (!a) return [];
  const reply = parse<{ job: Job }>(a.reply);
  if ("error" in reply) return faults(reply);
  replace(reply.job, words, saved);
  say(words, true);
  return [];
}

/** Puts typed rows in place of the form; everything else of the job stays. */
export async function readRows(text: string, units: string, across: string): Promise<Fault[]> {
  const a = await coreOf().ask("read", { kind: "coordinates", text, units, across });
  if (!a) return [];
  const reply = parse<{ job: Job }>(a.reply);
  if ("error" in reply) return faults(reply);
  edit(w.rowsStep, "", (j) => {
    j.form.outer = reply.job.form.outer;
    delete j.form.traced;
    j.mold.partingHeights = null;
  });
  settle();
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
    const file = e.dataTransfer?.files[0];
    if (file) void takeFile(file);
    else if (e.dataTransfer) void take(e.dataTransfer.getData("text/plain"), w.dropped);
  });
  addEventListener("paste", (e) => {
    if ((e.target as Element).closest?.("input, textarea, select")) return;
    const file = e.clipboardData?.files[0];
    const text = e.clipboardData?.getData("text/plain") ?? "";
    if (!file && !text.trim()) return;
    e.preventDefault();
    if (file) void takeFile(file);
    else void take(text, w.pasted);
  });
}

async function through(bytes: Uint8Array<ArrayBuffer>, stream: CompressionStream | DecompressionStream): Promise<Uint8Array<ArrayBuffer>> {
  return new Uint8Array(await new Response(new Blob([bytes]).stream().pipeThrough(stream)).arrayBuffer());
}

/** The job as the part of a link after #: deflated, so it is sent to nobody. */
export async function toLink(job: Job): Promise<string> {
  const packed = await through(new TextEncoder().encode(JSON.stringify(job)), new CompressionStream("deflate-raw"));
  const text = btoa(Array.from(packed, (b) => String.fromCharCode(b)).join(""));
  return "#job=" + text.replaceAll("+", "-").replaceAll("/", "_").replace(/=+$/, "");
}

/** The job's text in a link, or null where the link carries none or a damaged one. */
export async function fromLink(hash: string): Promise<string | null> {
  const m = /^#job=([\w-]+)$/.exec(hash);
  if (!m) return null;
  try {
    const bytes = Uint8Array.from(atob(m[1]!.replaceAll("-", "+").replaceAll("_", "/")), (c) => c.charCodeAt(0));
    return new TextDecoder().decode(await through(bytes, new DecompressionStream("deflate-raw")));
  } catch {
    return null;
  }
}
