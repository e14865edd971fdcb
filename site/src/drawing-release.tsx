// What the drawing shows for the Release panel: the wall in the colour of its
// draft, the ghost line of the nearest form, the place that is pointed out, and
// where air or slip is held.
import { draftColour } from "./cividis";
import type { At, Plan, Pocket } from "./contract";
import { type Looked, walled } from "./looked";
import { volume } from "./numbers";
import { path, type View, X, Y } from "./view";
import { w } from "./words";

/** The wall of the elevation in the colour of its draft, to the whole degree; of a
 *  core the inner surface, in the section. */
export function Draft({ v, plan, looked }: { v: View; plan: Plan; looked: Looked }) {
  const runs: { colour: string; at: At[] }[] = [], { line, draft, from, to, core } = walled(plan, looked), side = core ? 1 : -1;
  for (let i = from; i < to; i++) {
    const colour = draftColour(Math.round(draft(i))), a = line[i]!, b = line[i + 1]!;
    const last = runs[runs.length - 1];
    if (last?.colour === colour && last.at[last.at.length - 1] === a) last.at.push(b);
    else runs.push({ colour, at: [a, b] });
  }
  return (
    <g class="draft">
      <path class="rim" d={runs.map((r) => path(v, r.at, false, side)).join("")} />
      {runs.map((r, i) => <path key={i} d={path(v, r.at, false, side)} stroke={r.colour} />)}
    </g>
  );
}

/** The ghost line; its name stands on the free side of the wall, whose rim has that radius. */
export function Ghost({ v, contour, rim, both }: { v: View; contour: readonly At[]; rim: number; both: boolean }) {
  const end = contour[contour.length - 1]!, inside = end[0] < rim;
  return (
    <g class="ghosts">
      <path class="ghost" d={path(v, contour) + (both ? path(v, contour, false, -1) : "")} />
      <text x={X(v, end[0]) + (inside ? -8 : 8)} y={Y(v, end[1]) - 6} text-anchor={inside ? "end" : "start"}>{w.ghost}</text>
    </g>
  );
}

/** Both halves between two heights, ruled off where the wall stands. */
export function Place({ v, zFrom, zTo }: { v: View; zFrom: number; zTo: number }) {
  const high = Math.max(3, Y(v, zFrom) - Y(v, zTo)), y = (Y(v, zFrom) + Y(v, zTo) - high) / 2;
  return <rect class="place" x={X(v, -v.pot) - 8} y={y} width={2 * v.pot * v.k + 16} height={high} />;
}

/** Pockets as level bars across the inside of the section, each with its volume. */
export function Held({ v, plan }: { v: View; plan: Plan }) {
  const { contour, inner } = plan.drawing;
  const bar = (p: Pocket, line: readonly At[], kind: "air" | "slip") => {
    const r = Math.max(0, ...line.filter((q) => q[1] >= p.zFrom && q[1] <= p.zTo).map((q) => q[0]));
    const words = kind === "air" ? w.airMark(volume(p.volume)) : w.slipMark(volume(p.volume));
    return (
      <g key={`${kind}${p.zFrom}`} class={`held ${kind}`}>
        <rect x={v.x0} y={Y(v, p.zTo)} width={r * v.k} height={Math.max(2, Y(v, p.zFrom) - Y(v, p.zTo))} />
        <text x={v.x0 + 8} y={Y(v, p.zFrom) + 14}>{words}</text>
      </g>
    );
  };
  return <>{plan.flow.air.map((p) => bar(p, contour, "air"))}{plan.flow.slip.map((p) => bar(p, inner ?? [], "slip"))}</>;
}
