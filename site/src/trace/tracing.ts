// The picture that is being traced: what the user has said and drawn about it,
// and what the core has found. Every change asks the core for the outline, and,
// once a length is known, for the profile; of several asked, the newest counts.
// The job on the bench stays as it is until the form is taken.
import type { Fault, Job, Traced } from "../contract";
import { show } from "../numbers";
import { isNamed, samples } from "../samples";
import { coreOf, edit, now, parse, say, set, settle } from "../state";
import { w } from "../words";
import type { Opened } from "./decode";

export type Box = [number, number, number, number];
export type Place = [number, number];
export interface Stroke { kind: "exclude" | "include"; radius: number; points: Place[] }
export type Tool = "pot" | "crop" | "away" | "back" | "edge" | "axis" | "bar";
export type Length = "height" | "maxDiameter" | "rimDiameter" | "bar";

/** What is drawn on the picture, in its pixels; each change can be taken back. */
export interface Marks {
  crop: Box | null; point: Place | null; strokes: Stroke[];
  wire: Place[]; around: boolean; axis: Place[]; bar: Place[];
}
/** What is said about it. Lengths mm. */
export interface Settings {
  mode: "photo" | "sketch"; side: "mean" | "left" | "right"; top: "auto" | "open" | "closed"; size: Job["form"]["size"];
  what: Length; mm: number | null; inFront: number; distance: number | null; lens: number | null; tolerance: number | null;
}

export interface Note { code: string; sentence: string; remedy: string; measure: number }
export interface Found {
  form: Job["form"];
  quality: {
    rms: number; max: number; errorBand: number; tilt: number; symmetryResidual: number; tolerance: number;
    notSeen: { zFrom: number; zTo: number; why: string }[]; warnings: Note[];
  };
  outline: Place[]; contour: Place[]; axis: Box; seat: Place;
  camera: { distance: number; height: number; distanceFrom: string; heightFrom: string };
  mmPerPixel: number;
}

export interface Tracing {
  file: Blob; name: string;
  /** The small copy that is shown, as an address. */
  shown: string;
  opened: Opened;
  settings: Settings;
  marks: Marks;
  past: Marks[];
  tool: Tool;
  /** Brush radius, percent of the picture's width. */
  brush: number;
  outline: Place[];
  /** The profile, and the settings and marks it is of. */
  found: Found | null;
  fault: Fault | null;
  busy: "" | "outline" | "form";
  /** It covers the bench; else it waits to be gone back to. */
  open: boolean;
}

/** The picture a form was traced from, kept behind its profile. */
export interface Behind {
  of: Traced; shown: string; width: number; height: number; axis: Box; seat: Place; mmPerPixel: number; opacity: number; on: boolean;
}

const bare: Marks = { crop: null, point: null, strokes: [], wire: [], around: false, axis: [], bar: [] };
let newest = 0;

const patch = (p: Partial<Tracing>) => { const t = now().trace; if (t) set({ trace: { ...t, ...p } }); };

/** Opens a picture file; what cannot be read is told, and nothing changes. */
export async function openPicture(file: Blob, name: string): Promise<void> {
  const mine = ++newest;
  say(w.trace.opening);
  const a = await coreOf().ask("picture", {}, file);
  if (!a || mine !== newest) return;
  const reply = parse<Opened>(a.reply);
  if ("error" in reply) {
    const { code, megapixels = 0 } = reply.error as Fault & { megapixels?: number };
    if (code === "stopped") return say(reply.error.message);
    return say(code === "tooLarge" ? w.trace.pictureHuge(name, show(megapixels, 0)) : w.trace.notPicture(name));
  }
  const old = now().trace;
  if (old && old.shown !== now().behind?.shown) URL.revokeObjectURL(old.shown);
  set({
    tab: "form", toast: null,
    look: { ...now().look, space: false },
    trace: {
      file, name, opened: reply, shown: URL.createObjectURL(new Blob([a.blobs[0] as BlobPart], { type: "image/jpeg" })),
      settings: {
        mode: "photo", side: "mean", top: "auto", size: now().job.form.size, what: "height", mm: null, inFront: 0, distance: null, lens: null, tolerance: null,
      },
      marks: bare, past: [], tool: "pot", brush: 3, outline: [], found: null, fault: null, busy: "", open: true,
    },
  });
  if (reply.width < reply.fileWidth) {
    say(w.trace.pictureScaled(`${reply.fileWidth} × ${reply.fileHeight}`, `${reply.width} × ${reply.height}`));
  }
  await run(true);
}

/** Says something else about the picture. */
export function tell(p: Partial<Settings>): void {
  const t = now().trace!;
  patch({ settings: { ...t.settings, ...p } });
  void run("mode" in p);
}

/** Draws on the picture; the step can be taken back. */
export function mark(p: Partial<Marks>): void {
  const t = now().trace!;
  patch({ past: [...t.past, t.marks], marks: { ...t.marks, ...p } });
  void run(true);
}

export function unmark(): void {
  const t = now().trace!, last = t.past.at(-1);
  if (!last) return;
  patch({ past: t.past.slice(0, -1), marks: last });
  void run(true);
}

export const clearMarks = (): void => mark(bare);
export const pickTool = (tool: Tool): void => patch({ tool });
export const setBrush = (brush: number): void => patch({ brush });

export function leave(): void {
  newest++;
  patch({ open: false, busy: "" });
  void coreOf().ask("picture", {}, null); // its pixels need not stand in memory
}

export function goBack(): void {
  patch({ open: true });
  set({ tab: "form", look: { ...now().look, space: false } });
  void run(true);
}

/** The language has changed: what the core said of the picture is asked anew. */
export function inLanguage(): void { if (now().trace?.open) void run(true); }

/** What is said and drawn, as the core reads it, for the picture at so many
 *  times its size. */
function request(t: Tracing, k: number): object {
  const { settings: s, marks: m, opened: o } = t;
  const at = (p: Place): Place => [p[0] * k, p[1] * k];
  return {
    width: k === 1 ? o.width : o.smallWidth, height: k === 1 ? o.height : o.smallHeight,
    mode: s.mode, side: s.side, top: s.top, size: s.size,
    ...(m.crop ? { crop: m.crop.map((x) => x * k) } : {}), ...(m.point ? { point: at(m.point) } : {}),
    ...(m.axis.length === 2 ? { axis: m.axis.flatMap(at) } : {}),
    ...(m.strokes.length ? { brush: m.strokes.map((b) => ({ ...b, radius: b.radius * k, points: b.points.map(at) })) } : {}),
    ...(m.wire.length > 1 ? { wire: { points: m.wire.map(at), closed: m.around } } : {}),
    ...(s.tolerance ? { tolerance: s.tolerance } : {}),
    camera: s.mode === "sketch" ? {} : { // a flat drawing has no depth
      ...(s.distance !== null ? { distance: s.distance } : o.focalPixels !== null ? { focalPixels: o.focalPixels } : {}),
      ...(s.lens !== null ? { height: s.lens } : {}),
    },
  };
}

/** The known length, or null while there is none. */
function scale({ settings: s, marks: { bar: [p, q] } }: Tracing): object | null {
  if (s.mm === null || s.mm <= 0 || (s.what === "bar" && !q)) return null;
  return { what: s.what, mm: s.mm, ...(s.what === "bar" ? { x0: p![0], y0: p![1], x1: q![0], y1: q![1], inFront: s.inFront } : {}) };
}

/** Asks about the held picture; one that the worker has lost is opened again. */
async function ask<T extends object>(op: string, t: Tracing, q: object): Promise<T | { error: Fault } | null> {
  for (let again = false; ; again = true) {
    const a = await coreOf().ask(op, q);
    if (!a) return null;
    const reply = parse<T>(a.reply);
    if (!("error" in reply) || reply.error.code !== "noPicture" || again) return reply;
    const opened = await coreOf().ask("picture", {}, t.file);
    if (!opened || "error" in parse<Opened>(opened.reply)) return { error: { code: "noPicture", message: w.trace.notPicture(t.name) } };
  }
}

/** Traces anew: the outline first, unless it stays as it is, then the form. */
async function run(outline: boolean): Promise<void> {
  const mine = ++newest, t = now().trace!, known = scale(t);
  const current = () => mine === newest && now().trace?.open === true;
  if (outline) {
    patch({ busy: "outline", fault: null });
    const k = t.opened.smallWidth / t.opened.width, small = request(t, k);
    const reply = t.marks.wire.length > 1
      ? await ask<{ path: Place[] }>("wire", t, small)
      : await ask<Found>("outline", t, { ...small, draft: true });
    if (!reply || !current()) return;
    if ("error" in reply) return patch({ busy: "", found: null, fault: reply.error, outline: [] });
    const places = "path" in reply ? reply.path : reply.outline;
    patch({ outline: places.map(([x, y]) => [x / k, y / k]) });
  }
  if (!known) return patch({ busy: "", found: null });
  patch({ busy: "form" });
  const reply = await ask<Found>("trace", t, { ...request(t, 1), scale: known });
  if (!reply || !current()) return;
  if ("error" in reply) patch({ busy: "", found: null, fault: reply.error });
  else patch({ busy: "", found: reply, outline: reply.outline, fault: null });
}

/** Puts the traced form on the bench, one step of undo, and keeps the picture behind it. */
export function takeForm(): void {
  const t = now().trace, f = t?.found;
  if (!t || !f) return;
  const words = () => w.trace.traceStep(t.name);
  edit(words, "", (j) => {
    j.form = f.form;
    // it is another pot than the sample that was traced over
    if (samples.some((s) => isNamed(s, j.name))) j.name = t.name.replace(/\.\w+$/, "").slice(0, 80) || j.name;
    j.mold.partingHeights = null;
  });
  settle();
  set({
    node: null,
    ...(f.form.traced ? { behind: { of: f.form.traced, shown: t.shown, width: t.opened.width, height: t.opened.height, axis: f.axis, seat: f.seat, mmPerPixel: f.mmPerPixel, opacity: 0.5, on: true } } : {}),
  });
  leave();
  say(words(), true);
}

/** The picture behind the profile, where the form is the one traced from it. */
export function behind(form: Job["form"] = now().job.form): Behind | null {
  const b = now().behind, of = form.traced;
  const same = b && of && of.rms === b.of.rms && of.errorBand === b.of.errorBand && of.contour.length === b.of.contour.length;
  return same ? b : null;
}
