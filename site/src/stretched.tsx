// The stretched view: the wall in the left half of the drawing with its distance
// from a straight line multiplied, heights true. A belly of a third of a
// millimetre, which decides whether a wall lets go, is seen so.
import { draftColour } from "./cividis";
import type { At, Plan } from "./contract";
import type { Looked } from "./looked";
import type { Look } from "./look";
import { show } from "./numbers";
import { path, type View, X, Y } from "./view";

/** The line from which distances count: radius by height. */
export function reference(plan: Plan, kind: Look["line"]): (z: number) => number {
  const { contour } = plan.drawing;
  if (kind === "upright") return () => plan.size.maxRadius;
  let foot = contour[0]!;
  for (const p of contour) if (p[1] <= foot[1]) foot = p;
  const rim = contour[contour.length - 1]!;
  const slope = rim[1] > foot[1] ? (rim[0] - foot[0]) / (rim[1] - foot[1]) : 0;
  return (z) => foot[0] + slope * (z - foot[1]);
}

/** The pieces above the foot: what stands inside it is no wall. */
export function wallFrom(plan: Plan): number {
  const { contour } = plan.drawing;
  let at = 0;
  contour.forEach((p, i) => { if (p[1] <= contour[at]![1]) at = i; });
  return at;
}

/** Where the wall stands farthest outside the line, and farthest inside it. */
export function farthest(plan: Plan, kind: Look["line"]): [{ z: number; off: number }, { z: number; off: number }] {
  const ref = reference(plan, kind);
  const off = plan.drawing.contour.slice(wallFrom(plan)).map(([r, z]) => ({ z, off: r - ref(z) }));
  return [off.reduce((a, b) => (b.off > a.off ? b : a)), off.reduce((a, b) => (b.off < a.off ? b : a))];
}

interface Props { v: View; plan: Plan; look: Look; looked: Looked; ghost: readonly At[] | null }

export function Stretched({ v, plan, look, looked, ghost }: Props) {
  const { contour, stretches } = plan.drawing;
  const ref = reference(plan, look.line), n = look.stretch, from = wallFrom(plan);
  const far = ([r, z]: At): At => [ref(z) + n * (r - ref(z)), z];
  const low = contour[from]![1], high = plan.size.height;
  // lines at whole steps of true distance from the reference, 26 px apart or more
  const step = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20].find((s) => s * n * v.k >= 26) ?? 50;
  const steps = Array.from({ length: 41 }, (_, i) => (i - 20) * step);
  const shown = steps.filter((s) => X(v, -(ref(high) + n * s)) > 46 && ref(high) + n * s > 0);
  const runs: { colour: string; at: At[] }[] = [];
  for (let i = Math.max(from, looked.from); i < looked.to; i++) {
    const colour = draftColour(Math.round(stretches[i]!.draft[looked.pull])), a = far(contour[i]!), b = far(contour[i + 1]!);
    const last = runs[runs.length - 1], end = last?.at[last.at.length - 1];
    if (last?.colour === colour && end && end[0] === a[0] && end[1] === a[1]) last.at.push(b);
    else runs.push({ colour, at: [a, b] });
  }
  // where the wall runs out of the half it is drawn in, how far it goes
  const beyond = farthest(plan, look.line).map((f) => ({ ...f, x: X(v, -(ref(f.z) + n * f.off)) })).filter((f) => f.x < 46 || f.x > v.x0);
  return (
    <g class="stretched">
      <clipPath id="left-half"><rect x={44} y={0} width={Math.max(0, v.x0 - 44)} height={v.height} /></clipPath>
      <g clip-path="url(#left-half)">
        {shown.map((s) => (
          <g key={s}>
            <path class={s === 0 ? "ref" : "off"} d={path(v, [[ref(low) + n * s, low], [ref(high) + n * s, high]], false, -1)} />
            <text x={X(v, -(ref(high) + n * s))} y={Y(v, high) - 6} text-anchor="middle">{s > 0 ? "+" : ""}{show(s, step < 1 ? 1 : 0)}</text>
          </g>
        ))}
        {ghost && <path class="ghost" d={path(v, ghost.filter((p) => p[1] >= low).map(far), false, -1)} />}
        <g class="draft">
          <path class="rim" d={path(v, contour.slice(from).map(far), false, -1)} />
          {runs.map((r, i) => <path key={i} d={path(v, r.at, false, -1)} stroke={r.colour} />)}
        </g>
        {beyond.map(({ x, z, off }) => x < 46
          ? <text key={z} class="beyond" x={50} y={Y(v, z) - 6}>‹ +{show(off, 1)}</text>
          : <text key={z} class="beyond" x={v.x0 - 6} y={Y(v, z) - 6} text-anchor="end">{show(off, 1)} ›</text>)}
      </g>
    </g>
  );
}

