// What the drawing says about release: the stretches that catch and the traps,
// each with its depth, and an arrow for the pull of every part.
import type { Part, Plan, Scheme } from "./contract";
import { withUnit } from "./numbers";
import { look } from "./parts-look";
import { now } from "./state";
import { type View, X, Y } from "./view";
import { w } from "./words";

interface Props { v: View; plan: Plan; scheme: Scheme }

export function Marks({ v, plan, scheme }: Props) {
  const parts = scheme.parts.filter((p) => now().part === null || now().tab !== "release" || p.name === now().part);
  const catches = parts.flatMap((p) => p.catches);
  return (
    <g class="marks">
      {catches.map((c, i) => <Bracket key={i} v={v} from={c.zFrom} to={c.zTo} words={w.catchMark(withUnit(c.depth, "mm"))} kind="catch" />)}
      {plan.traps.map((t, i) => <Bracket key={i} v={v} from={t.zFrom} to={t.zTo} words={w.trapMark(withUnit(t.depth, "mm"))} kind="trap" />)}
    </g>
  );
}

function Bracket(p: { v: View; from: number; to: number; words: string; kind: string }) {
  const { v } = p;
  const x = X(v, -v.pot) - 2, a = Y(v, p.from), b = Y(v, p.to), y = (a + b) / 2;
  const wide = p.words.length * 6.6 + 12;
  return (
    <g class={p.kind}>
      <rect class="band" x={x} y={Math.min(a, b)} width={v.x0 - x} height={Math.max(2, Math.abs(a - b))} />
      <path d={`M${x + 6} ${a}H${x}V${b}h6`} />
      <rect class="tag" x={x + 4} y={y - 10} width={wide} height={20} rx={3} />
      <text x={x + 10} y={y + 4.5}>{p.words}</text>
    </g>
  );
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
