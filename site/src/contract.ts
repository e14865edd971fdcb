// What crosses the boundary to the core, as types: the job that the user saves
// and the plan that the core makes of it. Lengths mm, angles degrees, volumes
// ml, masses g, times min; the plan's geometry is at mold size. The core is the
// authority; nothing here adds meaning.

export interface Node { r: number; z: number; corner?: boolean }

/** The cut across the axis; which of the figures count depends on the kind. */
export interface Section {
  kind: "round" | "oval" | "polygon" | "flutes";
  ratio?: number; count?: number; rounding?: number; depth?: number;
  dimples?: { around: number; heights: number[]; diameter: number; depth: number };
}

/** What a picture told of a form: how far it is from the outline, what was not
 *  seen, and the outline itself, r and z. */
export interface Traced {
  rms: number; max: number; errorBand: number; notSeen: { zFrom: number; zTo: number; why: string }[]; contour: At[];
}

export interface Job {
  format: string;
  version: number;
  name: string;
  form: { size: "fired" | "mold"; outer: Node[]; inner: Node[] | null; section: Section; traced?: Traced };
  clay: {
    dryingShrinkage: number; firingShrinkage: number; releaseShrinkage: number; wall: number;
    slipDensity: number; solidsDensity: number; testCast: { wall: number; minutes: number };
  };
  plaster: { consistency: number; wall: number; base: number; outside: "round" | "straight" };
  casting: CastingSettings;
  printer: { bed: [number, number, number]; layer: number; clearance: number; shell: number; nozzle: number; solid: boolean };
  rules: { leastDraft: number; rubShare: number };
  mold: {
    scheme: string; partingHeights: number[] | null; sides: number | null;
    fillHole: number | null; drainHole: number | null; spare: { height: number; flared?: boolean } | null;
    staves: number; natches: boolean; strapGrooves: boolean;
  };
}

/** The maker's own measurements and habits; units as the core has them. */
export interface CastingSettings {
  castMoisture: number; lossOnIgnition: number; testCasts: { wall: number; minutes: number }[];
  minutes: number; laterCastSlowdown: number; waste: number; bucket: number; bucketFill: number;
  publishedWetDensity: number; absorption: number; settingExpansion: number; halfRateWater: number;
  dryingRate: number; glaze: number; glazeDensity: number; bandTension: number; bandSafety: number;
  reach: number; hands: number; travel: number; twist: number; fillLine: number;
}

/** Bad input, with the field and line where they apply and the remedy in the message. */
export interface Fault { code: string; message: string; field?: string; line?: number }

export type Verdict = "clear" | "rubs" | "catches";

export interface Catch {
  zFrom: number; zTo: number; depth: number; blockedAtZ: number; blockedAtR: number; clayForgives: boolean;
  /** What is left of the depth for the cast once it has shrunk. */
  clayDepth: number;
  /** The place of the deepest catch. */
  atR: number; atZ: number;
}

export interface Part {
  name: string;
  pull: [number, number, number];
  zFrom: number; zTo: number;
  sector: [number, number] | null;
  verdict: Verdict;
  minDraft: number; rubbingArea: number; rubShare: number;
  draftBands: { from: number; to: number; area: number }[];
  catches: Catch[];
  volume: number; plaster: number; water: number; wet: number; dry: number;
}

export interface Scheme {
  id: string; count: number; verdict: Verdict; partingHeights: number[]; parts: Part[];
  /** Its parts in words, and what stands against it. */
  name: string; against: string;
  plaster: number;
  /** Side parts, and by how many degrees a section that is not round stands turned to their seams. */
  sides: number; turn: number;
}

export interface Trap { surface: "outer" | "inner"; zFrom: number; zTo: number; rFrom: number; rTo: number; depth: number; volume: number }

export interface Print {
  /** In English, as its file is called, and what to call it. */
  name: string; label: string; part: string; kind: string; size: [number, number, number]; fitsBed: boolean;
  /** What to know: why it is divided, or does not fit. */
  note: string;
  /** ml, g and m of filament when printed full. */
  volume: number; mass: number; filament: number;
  /** The steepest overhang in degrees from upright. */
  overhang: number;
  /** The least draft with which piece and plaster come apart, and what follows. */
  draft: number; verdict: Verdict;
}

/** Something to know about how the chosen scheme lets go, and what to do about it. */
export interface Finding {
  code: string; part: string; zFrom: number; zTo: number; measure: number; unit: string; text: string; remedy: string;
}

/** A place that rules a scheme with fewer parts out. */
export interface Evidence {
  scheme: string; part: string; code: string; r: number; z: number; blockR: number; blockZ: number; depth: number; share: number;
  /** Of both, degrees from the first seam of side parts, where it is not so all round. */
  azimuths?: [number, number] | null;
}

/** By how much every radius may be wrong before the choice might change (-1:
 *  nothing changes it), and what would come about first. */
export interface Robust { radius: number; reason: string; scheme: string; zFrom: number; zTo: number }

/** Where air or slip is held: from the level at which it spills. */
export interface Pocket { zFrom: number; zTo: number; volume: number }

/** A place in the half-plane: radius, height. */
export type At = [number, number];

export interface Plan {
  /** The verdict and what to do next, in words. */
  verdict: string;
  next: string[];
  scale: number;
  size: {
    height: number; maxRadius: number; firedHeight: number; firedRadius: number; capacityFired: number; castArea: number;
  };
  schemes: Scheme[];
  chosen: string;
  advised: string;
  whyNotFewer: string;
  certificate: Evidence[];
  robust: Robust;
  flow: { air: Pocket[]; slip: Pocket[]; /** null where the pot is cast solid. */ drains: boolean | null };
  findings: Finding[];
  order: string[];
  traps: Trap[];
  cautions: string[];
  casting: Figures;
  prints: Print[];
  drawing: Drawing;
}

/** One file of a solids reply; its bytes are the blob of the same index. */
export interface SolidFile {
  name: string; kind: string; part: string; label?: string; triangles: number; volume: number; size: [number, number, number];
}

/** What the drawing shows, in the half-plane at mold size. */
export interface Drawing {
  /** A node's z stands at lift + z times the scale; cast upside down (turned) at
   *  lift - z times the scale. */
  lift: number;
  turned: boolean;
  /** The outer wall from the axis under the foot to the rim. */
  contour: At[];
  /** The inside of the cast, in the same order; null where the wall fills it. */
  inner: At[];
  /** The wall of the spare or the fill hole, on from the mouth. */
  opening: At[];
  /** The plaster parts in section; one stands for all side parts. */
  parts: { name: string; outline: At[] }[];
  natches: { part: string; at: At; azimuth: number; radius: number; level: boolean }[];
  /** Rims of dimples as they are seen on the left half of the elevation. */
  dimples: At[][];
  /** Where the wall of a pot cast solid is thickest, r and z, and how thick; null for others. */
  thickest: [number, number, number] | null;
  /** Draft of each piece of its inner surface as the core is pulled up. */
  innerDraft: number[] | null;
  /** For each piece of contour: draft and depth of catch for the pulls down, up, outward. */
  stretches: { draft: [number, number, number]; depth: [number, number, number] }[];
}

/** The casting figures: plain numbers by the keys that rows name, and lists. */
export interface Figures {
  [key: string]: unknown;
  /** Buckets for each part, in mixing order. */
  batches: { part: string; count: number; ml: number; water: number; plaster: number }[];
  walls: { minutes: number; wall: number }[];
  /** Minutes for each cast of a day, the first first. */
  laterCasts: number[];
  cautions: { code: string; text: string }[];
}

/** One figure of casting with how it comes about. */
export interface Row {
  group: string; key: string; label: string; value: number; unit: string; digits: number;
  formula: string; source: string; status: string; heading: string;
}

/** The smallest change of the radii after which a form lets go; lengths at mold size. */
export interface Nearest {
  job: Job; maxChange: number; rmsChange: number; atZ: number; partingHeight: number | null;
}

/** A change of one place after which a scheme with fewer parts is clear. */
export interface Remedy extends Finding { scheme: string; saves: number; job: Job }
