// What crosses the boundary to the core, as types: the job that the user saves
// and the plan that the core makes of it. Lengths mm, angles degrees, volumes
// ml, masses g, times min; the plan's geometry is at mold size. The core is the
// authority; nothing here adds meaning.

export interface Node { r: number; z: number; corner?: boolean }

export interface Job {
  format: string;
  version: number;
  name: string;
  form: { size: "fired" | "mold"; outer: Node[]; inner: Node[] | null; section: { kind: string } };
  clay: {
    dryingShrinkage: number; firingShrinkage: number; releaseShrinkage: number; wall: number;
    slipDensity: number; solidsDensity: number; testCast: { wall: number; minutes: number };
  };
  plaster: { consistency: number; wall: number; base: number };
  printer: { bed: [number, number, number]; layer: number; clearance: number; shell: number };
  rules: { leastDraft: number; rubShare: number };
  mold: {
    scheme: string; partingHeights: number[] | null; sides: number | null;
    fillHole: number | null; drainHole: number | null; spare: { height: number } | null;
    staves: number; natches: boolean;
  };
}

/** Bad input, with the field and line where they apply and the remedy in the message. */
export interface Fault { code: string; message: string; field?: string; line?: number; more?: Fault[] }

export type Verdict = "clear" | "rubs" | "catches";

export interface Catch {
  zFrom: number; zTo: number; depth: number; blockedAtZ: number; clayForgives: boolean;
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
  id: string; count: number; verdict: Verdict; partingHeights?: number[]; parts: Part[]; why?: string;
}

export interface Trap { zFrom: number; zTo: number; depth: number; volume: number }

export interface Print {
  name: string; part: string; size: [number, number, number]; fitsBed: boolean; volume: number;
}

/** A place in the half-plane: radius, height. */
export type At = [number, number];

export interface Plan {
  scale: number;
  size: { height: number; maxRadius: number; capacityFired: number; castArea: number };
  schemes: Scheme[];
  chosen: string;
  whyNotFewer: string;
  order: string[];
  traps: Trap[];
  cautions: string[];
  casting: Record<string, number>;
  prints: Print[];
  drawing: Drawing;
}

/** One file of a solids reply; its bytes are the blob of the same index. */
export interface SolidFile {
  name: string; kind: string; part: string; triangles: number; volume: number; size: [number, number, number];
}

/** What the drawing shows, at mold size. */
export interface Drawing {
  /** What was added to every z of the scaled nodes so that the foot stands at 0. */
  lift: number;
  /** The outer wall from the axis under the foot to the rim; corners by index. */
  outer: At[];
  corners: number[];
  /** The inside of the cast, in the same order; empty where there is none. */
  inner: At[];
  /** For each piece of outer between two points: the part it belongs to and its draft. */
  wall: { part: string; draft: number }[];
  /** The plaster parts in the half-plane; a side part as in its middle. */
  parts: { name: string; rings: At[][] }[];
  /** Where parts meet, as lines in the half-plane. */
  seams: At[][];
}
