// Invented pots of an invented workshop, to open with and to learn from. Each is
// a whole job.
import type { Job, Node } from "./contract";

const c = (r: number, z: number): Node => ({ r, z, corner: true });
const s = (r: number, z: number): Node => ({ r, z });

function job(name: string, outer: Node[]): Job {
  return {
    format: "moldwright-job", version: 1, name,
    form: { size: "fired", outer, inner: null, section: { kind: "round" } },
    clay: {
      dryingShrinkage: 6, firingShrinkage: 7, releaseShrinkage: 1.5, wall: 4,
      slipDensity: 1.75, solidsDensity: 2.6, testCast: { wall: 3, minutes: 10 },
    },
    plaster: { consistency: 70, wall: 30, base: 30 },
    printer: { bed: [220, 220, 250], layer: 0.2, clearance: 0.3, shell: 2.4 },
    rules: { leastDraft: 3, rubShare: 5 },
    mold: {
      scheme: "auto", partingHeights: null, sides: null, fillHole: null, drainHole: null,
      spare: { height: 20 }, staves: 2, natches: true,
    },
  };
}

export const samples: Job[] = [
  job("Harbour jar", [c(0, 3), c(24, 3), c(27, 0), c(31, 0), s(47, 32), s(55, 66), s(44, 104), c(33, 124)]),
  job("Fen bowl", [c(0, 2), c(22, 2), c(24, 0), c(29, 0), s(52, 22), c(76, 62)]),
];
