// What the drawing says about release: the stretches of wall that catch, drawn
// heavy on both halves, each with its depth; the traps; and an arrow for the pull
// of every part.
import type { At, Part, Plan, Scheme } from "./contract";
import { withUnit } from "./numbers";
import { look } from "./parts-look";
import { now } from "./state";
import { held, path, pullOf, type View, X, Y } from "./view";
import { w } from "./words";

interface Props { v: View; plan: Plan; scheme: Scheme }

/** From this depth in mm an undercut counts, as in the core's verdicts. */
const COUNTS = 0.05;

export function Marks({ v, plan, scheme }: Props) {
  const only = now().tab === "release" ? now().part : null;
  const parts = scheme.parts.filter((p) => p.catches.length > 0 && (only === null || p.name === only) && (!p.sector || p.name === "A" || p.name === only));
  const stretches = parts.flatMap((p) => caught(plan, p));
  const inTrap = (z: number, depth: number) => plan.traps.some((t) => z >= t.zFrom - 0.1 && z <= t.zTo + 0.1 && depth <= t.depth + 0.01);
  const notes = [
    ...parts.flatMap((p) => p.catches).filter((c) => !inTrap(c.atZ, c.depth))
      .map((c) => ({ r: c.atR, z: c.atZ, words: w.catchMark(withUnit(c.depth, "mm")) })),
    ...plan.traps.map((t) => ({ r: (t.rFrom + t.rTo) / 2, z: (t.zFrom + t.zTo) / 2, words: w.trapMark(withUnit(t.depth, "mm")) })),
  ].sort((a, b) => b.z - a.z);
  let last = -Infinity;
  return (
    <g class="marks">
      {plan.traps.map((t, i) => [1, -1].map((side) => (
        <rect key={`${i}${side}`} class="trap" x={Math.min(X(v, side * t.rFrom), X(v, side * t.rTo))} y={Y(v, t.zTo)} width={(t.rTo - t.rFrom) * v.k} height={(t.zTo - t.zFrom) * v.k} />
      )))}
      {stretches.map((s, i) => <path key={i} d={path(v, s) + path(v, s, false, -1)} class="caught" />)}
      {notes.map((n, i) => {
        const wide = n.words.length * 6.3 + 14, x = v.x0 - 16 - wide;
        const y = Math.max(Y(v, n.z) - 28, last + 26);
        last = y;
        return (
          <g key={i}>
            <path d={`M${X(v, -n.r)} ${Y(v, n.z)}L${Math.min(Math.max(X(v, -n.r), x + 8), x + wide - 8)} ${y}`} class="leader" />
            <circle cx={X(v, -n.r)} cy={Y(v, n.z)} r={3.5} />
            <rect class="note" x={x} y={y - 11} width={wide} height={22} rx={3} />
            <text x={x + 7} y={y + 4.5}>{n.words}</text>
          </g>
        );
      })}
    </g>
  );
}

/** The stretches of a part's wall behind which it hooks. */
function caught(plan: Plan, part: Part): At[][] {
  const { contour, stretches } = plan.drawing;
  const [from, to] = held(plan, part), pull = pullOf(part), out: At[][] = [];
  for (let i = from; i < to; i++) {
    if (stretches[i]!.depth[pull] <= COUNTS) continue;
    const last = out[out.length - 1], a = contour[i]!, b = contour[i + 1]!;
    if (last && last[last.length - 1] === a) last.push(b);
    else out.push([a, b]);
  }
  return out;
}

export function Pulls({ v, scheme }: Props) {
  const sides = scheme.parts.filter((p) => p.pull[2] === 0);
  const axial = scheme.parts.filter((p) => p.pull[2] !== 0);
  const side = sides[0];
  return (
    <g class="pulls" aria-hidden="true">
      {axial.map((p) => {
        const up = p.pull[2] > 0;
        return <Arrow key={p.name} x={X(v, v.block * 0.6)} y={up ? Y(v, v.top) - 6 : Y(v, v.bottom) + 6} turn={up ? -90 : 90} part={p} />;
      })}
      {side && <Arrow x={X(v, v.block) + 6} y={Y(v, (side.zFrom + side.zTo) / 2)} turn={0} part={side} />}
    </g>
  );
}

function Arrow({ x, y, turn, part }: { x: number; y: number; turn: number; part: Part }) {
  return (
    <path
      d="M0 -4H18V-10L32 0 18 10V4H0Z" transform={`translate(${x} ${y}) rotate(${turn})`}
      fill={look(part.name).colour} class="pull"
    />
  );
}
