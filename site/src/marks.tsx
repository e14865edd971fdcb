// What the drawing says about release: the stretches of wall that catch, drawn
// heavy on both halves, each with its depth; the traps; what rules the scheme
// out that is looked at; and an arrow for the pull of every part.
import { apart } from "./apart";
import type { At, Evidence, Part, Plan, Scheme } from "./contract";
import { looked } from "./looked";
import { memo } from "./memo";
import { withUnit } from "./numbers";
import { look } from "./parts-look";
import type { State } from "./state";
import { held, path, pullOf, type View, X, Y } from "./view";
import { w } from "./words";

interface Props { v: View; plan: Plan; scheme: Scheme }
interface Note { r: number; z: number; words: string; to?: At }

/** From this depth in mm an undercut counts, as in the core's verdicts. */
const COUNTS = 0.05;

/** What the page looks at is given with it, so that it is drawn anew with that. */
type Looking = Pick<State, "tab" | "look" | "part">;

export const Marks = memo(({ v, plan, scheme, tab, look: at }: Props & Looking) => {
  const other = tab === "parts" && at.apart === 0 ? plan.schemes.find((s) => s.id === at.scheme) : undefined;
  if (other) return <Why v={v} plan={plan} scheme={other} />;
  const release = tab === "release" ? looked(plan, scheme) : null;
  const held = tab === "parts" && at.apart > 0 ? apart(plan, scheme, at) : null;
  const parts = release ? (release.part ? [release.part] : []) : held ? (held.stuck ? [held.part!] : [])
    : scheme.parts.filter((p) => !p.sector || p.name === "A");
  const stretches = release ? caught(plan, release.from, release.to, release.pull) : parts.flatMap((p) => ofPart(plan, p));
  const inTrap = (z: number, depth: number) => plan.traps.some((t) => z >= t.zFrom - 0.1 && z <= t.zTo + 0.1 && depth <= t.depth + 0.01);
  const notes: Note[] = [
    ...parts.flatMap((p) => p.catches).filter((c) => held || !inTrap(c.atZ, c.depth))
      .map((c): Note => ({ r: c.atR, z: c.atZ, words: w.catchMark(withUnit(c.depth, "mm")), ...(held ? { to: [c.blockedAtR, c.blockedAtZ] as At } : {}) })),
    ...(held ? [] : plan.traps).map((t) => ({ r: (t.rFrom + t.rTo) / 2, z: (t.zFrom + t.zTo) / 2, words: w.trapMark(withUnit(t.depth, "mm")) })),
  ];
  return (
    <g class="marks">
      {plan.traps.map((t, i) => [1, -1].map((side) => (
        <rect key={`${i}${side}`} class="trap" x={Math.min(X(v, side * t.rFrom), X(v, side * t.rTo))} y={Y(v, t.zTo)} width={(t.rTo - t.rFrom) * v.k} height={(t.zTo - t.zFrom) * v.k} />
      )))}
      {stretches.map((s, i) => <path key={i} d={path(v, s) + path(v, s, false, -1)} class="caught" />)}
      <Notes v={v} notes={notes} />
    </g>
  );
});

/** Notes in a column left of the axis, each led to its place, from the top. */
function Notes({ v, notes }: { v: View; notes: Note[] }) {
  let last = -Infinity;
  return (
    <>
      {[...notes].sort((a, b) => b.z - a.z).map((n, i) => {
        const wide = n.words.length * 5.9 + 14, x = Math.max(46, v.x0 - 16 - wide);
        const y = Math.max(Y(v, n.z) - 28, last + 26);
        last = y;
        return (
          <g key={i}>
            {n.to && <path class="held-by" d={`M${X(v, -n.r)} ${Y(v, n.z)}L${X(v, -n.to[0])} ${Y(v, n.to[1])}`} />}
            {n.to && <path class="block" d={`M${X(v, -n.to[0]) - 5} ${Y(v, n.to[1]) - 5}l10 10m0 -10l-10 10`} />}
            <path d={`M${X(v, -n.r)} ${Y(v, n.z)}L${Math.min(Math.max(X(v, -n.r), x + 8), x + wide - 8)} ${y}`} class="leader" />
            <circle cx={X(v, -n.r)} cy={Y(v, n.z)} r={3.5} />
            <rect class="note" x={x} y={y - 11} width={wide} height={22} rx={3} />
            <text x={x + wide / 2} y={y + 4.5} text-anchor="middle">{n.words}</text>
          </g>
        );
      })}
    </>
  );
}

/** What stands against a scheme that is not the chosen one: the places of the
 *  certificate, or, for one with no fewer parts, its deepest catches. */
function Why({ v, plan, scheme }: Props) {
  const proof = plan.certificate.filter((e) => e.scheme === scheme.id);
  const all: Evidence[] = proof.length ? proof : scheme.parts.flatMap((p): Evidence[] => {
    const c = [...p.catches].sort((a, b) => b.depth - a.depth)[0];
    const base = { scheme: scheme.id, part: p.name, share: p.rubShare };
    if (c) return [{ ...base, code: "catch", r: c.atR, z: c.atZ, blockR: c.blockedAtR, blockZ: c.blockedAtZ, depth: c.depth }];
    return p.verdict === "rubs" ? [{ ...base, code: "rub", r: 0, z: 0, blockR: 0, blockZ: 0, depth: 0 }] : [];
  });
  const sided = (name: string) => scheme.parts.some((p) => p.name === name && p.sector);
  const notes = all.filter((e, i) => !sided(e.part) || all.findIndex((o) => sided(o.part)) === i).map((e): Note => {
    const part = scheme.parts.find((p) => p.name === e.part)!;
    if (e.code === "rub") {
      const mid = (part.zFrom + part.zTo) / 2;
      const near = plan.drawing.contour.reduce((a, b) => (Math.abs(b[1] - mid) < Math.abs(a[1] - mid) ? b : a));
      return { r: near[0], z: near[1], words: w.evidenceRub(e.part, withUnit(e.share, "%", 0)) };
    }
    return { r: e.r, z: e.z, to: [e.blockR, e.blockZ], words: w.evidenceCatch(e.part, withUnit(e.depth, "mm")) };
  });
  return (
    <g class="marks why">
      {scheme.partingHeights.map((z) => <path key={z} class="would-part" d={`M${X(v, -v.pot)} ${Y(v, z)}H${X(v, v.block)}`} />)}
      <Notes v={v} notes={notes} />
    </g>
  );
}

const ofPart = (plan: Plan, part: Part): At[][] => caught(plan, ...held(plan, part), pullOf(part));

/** The stretches of wall behind which a part hooks. */
function caught(plan: Plan, from: number, to: number, pull: 0 | 1 | 2): At[][] {
  const { contour, stretches } = plan.drawing;
  const out: At[][] = [];
  for (let i = from; i < to; i++) {
    if (stretches[i]!.depth[pull] <= COUNTS) continue;
    const last = out[out.length - 1], a = contour[i]!, b = contour[i + 1]!;
    if (last && last[last.length - 1] === a) last.push(b);
    else out.push([a, b]);
  }
  return out;
}

export const Pulls = memo(({ v, scheme }: Props) => {
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
});

function Arrow({ x, y, turn, part }: { x: number; y: number; turn: number; part: Part }) {
  return (
    <path
      d="M0 -4H18V-10L32 0 18 10V4H0Z" transform={`translate(${x} ${y}) rotate(${turn})`}
      fill={look(part.name).colour} class="pull"
    />
  );
}
