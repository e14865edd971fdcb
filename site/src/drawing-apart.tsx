// The mold in full section while it is taken apart: each part moves along its
// pull. Right of the axis stands the first side part, left of it the last.
import { apart, way } from "./apart";
import type { At, Part, Plan, Scheme } from "./contract";
import { look as lookOf } from "./parts-look";
import { now } from "./state";
import { path, type View, X, Y } from "./view";

interface Piece { part: Part; outline: readonly At[]; side: 1 | -1; shift: At }

/** The parts in section, where they stand now. */
export function pieces(plan: Plan, scheme: Scheme): Piece[] {
  const state = apart(plan, scheme, now().look);
  let wide = 0, high = 0, low = 0;
  for (const p of plan.drawing.parts) for (const [r, z] of p.outline) [wide, high, low] = [Math.max(wide, r), Math.max(high, z), Math.min(low, z)];
  const sides = scheme.parts.filter((p) => p.sector);
  const out: Piece[] = [];
  for (const { name, outline } of plan.drawing.parts) {
    const cap = scheme.parts.find((p) => p.name === name && !p.sector);
    const [right, left] = cap ? [cap, cap] : [sides[0]!, sides[sides.length - 1]!];
    for (const [part, side] of [[right, 1], [left, -1]] as const) {
      const by = (state.gone.get(part.name) ?? 0) * way(part, high - low, wide);
      out.push({ part, outline, side, shift: part.pull[2] === 0 ? [side * by, 0] : [0, part.pull[2] * by] });
    }
  }
  return out;
}

/** Extents of what stands there, for the view. */
export function extents(list: readonly Piece[]): { left: number; right: number; bottom: number; top: number } {
  const e = { left: 0, right: 0, bottom: 0, top: 0 };
  for (const { outline, side, shift } of list) {
    for (const [r, z] of outline) {
      const x = side * r + shift[0];
      e.left = Math.max(e.left, -x);
      e.right = Math.max(e.right, x);
      e.bottom = Math.min(e.bottom, z + shift[1]);
      e.top = Math.max(e.top, z + shift[1]);
    }
  }
  return e;
}

export function Apart({ v, plan, scheme }: { v: View; plan: Plan; scheme: Scheme }) {
  const state = apart(plan, scheme, now().look);
  return (
    <g class="apart">
      {pieces(plan, scheme).map(({ part, outline, side, shift }, i) => {
        const l = lookOf(part.name), stuck = state.stuck && state.part === part;
        const at = outline.map(([r, z]): At => [side * r + shift[0], z + shift[1]]), d = path(v, at, true);
        // no line along the axis, where a cap is one with its other half
        const edge = outline.map((p, k) => (p[0] === 0 && outline[(k + 1) % outline.length]![0] === 0 ? "" : path(v, [at[k]!, at[(k + 1) % at.length]!]))).join("");
        const r = Math.max(...outline.map((p) => p[0])), face = outline.filter((p) => p[0] > r - 1).map((p) => p[1]);
        const x = X(v, side * r + shift[0]) - side * 20, y = Y(v, (Math.min(...face) + Math.max(...face)) / 2 + shift[1]);
        return (
          <g key={i} class={stuck ? "stuck" : ""}>
            <path d={d} class="plaster" />
            <path d={d} fill={l.colour} fill-opacity={0.14} />
            <path d={d} fill={`url(#hatch-${lookOf(part.sector ? "A" : part.name).letter})`} fill-opacity={0.75} />
            <path d={edge} class="edge" />
            <rect class="letter" x={x - 12} y={y - 12} width={24} height={24} rx={12} stroke={l.colour} />
            <text class="letter" x={x} y={y + 5} text-anchor="middle">{l.letter}</text>
          </g>
        );
      })}
    </g>
  );
}
