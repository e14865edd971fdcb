// The drawing in the middle of the bench: half elevation on the left of the
// axis, half section on the right, in true proportions. Plaster parts carry
// colour, hatching and letter; the clay wall is filled solid, as sections are.
import { useLayoutEffect, useRef, useState } from "preact/hooks";
import { draftColour } from "./cividis";
import type { Plan, Scheme } from "./contract";
import { Marks, Pulls } from "./marks";
import { Nodes } from "./nodes";
import { show, withUnit } from "./numbers";
import { look } from "./parts-look";
import { now } from "./state";
import { fit, path, tick, type View, X, Y } from "./view";
import { w } from "./words";

export function Drawing({ plan, scheme }: { plan: Plan; scheme: Scheme }) {
  const box = useRef<HTMLDivElement>(null);
  const [size, setSize] = useState<[number, number]>([0, 0]);
  const held = useRef<View | null>(null);
  const [, wake] = useState(0);
  useLayoutEffect(() => {
    const el = box.current!;
    const measure = () => setSize([el.clientWidth, el.clientHeight]);
    const watch = new ResizeObserver(measure);
    watch.observe(el);
    measure();
    return () => watch.disconnect();
  }, []);
  const v = held.current ?? (size[0] > 0 ? fit(plan, size[0], size[1]) : null);
  const { job, tab } = now();
  return (
    <div class="drawing" ref={box}>
      {v && (
        <svg width={v.width} height={v.height} role="group" aria-label={w.drawing}>
          <Hatches plan={plan} />
          <Grid v={v} />
          <Mold v={v} plan={plan} />
          <Pot v={v} plan={plan} />
          {tab === "release" && <Draft v={v} plan={plan} />}
          <Seams v={v} plan={plan} />
          <line class="axis" x1={v.x0} x2={v.x0} y1={Y(v, v.top) - 16} y2={Y(v, v.bottom) + 16} />
          <Marks v={v} plan={plan} scheme={scheme} />
          <Pulls v={v} plan={plan} scheme={scheme} />
          <Nodes
            job={job} plan={plan} view={v}
            hold={(on) => { held.current = on ? v : null; if (!on) wake((n) => n + 1); }}
          />
        </svg>
      )}
    </div>
  );
}

function Hatches({ plan }: { plan: Plan }) {
  return (
    <defs>
      {plan.drawing.parts.map((p) => {
        const l = look(p.name);
        return (
          <pattern
            key={p.name} id={`hatch-${l.letter}`} patternUnits="userSpaceOnUse" width={l.gap} height={l.gap}
            patternTransform={`rotate(${l.angle})`}
          >
            <line x1={0} y1={0} x2={0} y2={l.gap} stroke={l.colour} stroke-width={1.6} />
            {l.cross && <line x1={0} y1={0} x2={l.gap} y2={0} stroke={l.colour} stroke-width={1.6} />}
          </pattern>
        );
      })}
    </defs>
  );
}

/** Squared paper of 10 mm, and the ruler of heights. */
function Grid({ v }: { v: View }) {
  const step = tick(v, 9), label = tick(v, 34);
  const lines: number[] = [], left = 44;
  let fine = "";
  for (let z = Math.ceil((v.y0 - v.height) / v.k / step) * step; Y(v, z) > 0; z += step) fine += `M${left} ${Y(v, z)}H${v.width}`;
  for (let r = Math.ceil((left - v.x0) / v.k / step) * step; X(v, r) < v.width; r += step) fine += `M${X(v, r)} 0V${v.height}`;
  for (let z = Math.ceil(v.bottom / label) * label; z <= v.top + 1e-9; z += label) lines.push(z);
  return (
    <g class="grid" aria-hidden="true">
      <path d={fine} />
      <path class="ruler" d={`M${left} ${Y(v, v.top)}V${Y(v, v.bottom)}` + lines.map((z) => `M${left - 6} ${Y(v, z)}h6`).join("")} />
      {lines.map((z) => <text key={z} x={left - 9} y={Y(v, z) + 4} text-anchor="end">{show(z, label < 1 ? 1 : 0)}</text>)}
      <text x={6} y={Y(v, v.top) - 14}>mm</text>
    </g>
  );
}

function Mold({ v, plan }: { v: View; plan: Plan }) {
  const named = new Map<string, string[]>(); // side parts share one place
  for (const p of plan.drawing.parts) {
    const d = p.rings.map((r) => path(v, r, true)).join("");
    named.set(d, [...(named.get(d) ?? []), p.name]);
  }
  return (
    <g class="mold">
      {[...named].map(([d, names]) => {
        const l = look(names[0]!);
        const [x, y] = letterAt(v, plan.drawing.parts.find((p) => p.name === names[0])!.rings);
        return (
          <g key={names[0]}>
            <path d={d} class="plaster" />
            <path d={d} fill={l.colour} fill-opacity={0.14} fill-rule="evenodd" />
            <path d={d} fill={`url(#hatch-${l.letter})`} fill-opacity={0.75} fill-rule="evenodd" class="edge" />
            <g transform={`translate(${x} ${y})`}>
              <rect class="letter" x={-4 - 9 * names.length} y={-12} width={8 + 18 * names.length} height={24} rx={12} stroke={l.colour} />
              <text class="letter" text-anchor="middle" y={5}>{names.map((n) => look(n).letter).join(" ")}</text>
            </g>
          </g>
        );
      })}
    </g>
  );
}

/** Where a part's letter stands: by its outer face, half way up that face. */
function letterAt(v: View, rings: readonly (readonly (readonly [number, number])[])[]): [number, number] {
  const all = rings.flat();
  const r = Math.max(...all.map((p) => p[0]));
  const face = all.filter((p) => p[0] > r - 1e-6).map((p) => p[1]);
  return [X(v, r) - 20, Y(v, (Math.min(...face) + Math.max(...face)) / 2)];
}

function Pot({ v, plan }: { v: View; plan: Plan }) {
  const { outer, inner, corners } = plan.drawing;
  const rim = outer[outer.length - 1]!;
  const wall = inner.length > 1 ? [...outer, ...[...inner].reverse()] : outer;
  return (
    <g class="pot">
      <path class="body" d={path(v, [[0, outer[0]![1]], ...outer, [0, rim[1]]], true, -1)} />
      <path
        class="edges"
        d={corners.map((i) => outer[i]!).filter((p) => p[0] > 0).map((p) => `M${X(v, -p[0])} ${Y(v, p[1])}H${v.x0}`).join("")}
      />
      <path class="outline" d={path(v, outer, false, -1)} />
      <path class="clay" d={path(v, wall, inner.length > 1)} />
      <path class="outline" d={path(v, outer)} />
    </g>
  );
}

/** The wall of the elevation in the colour of its draft. */
function Draft({ v, plan }: { v: View; plan: Plan }) {
  const { outer, wall } = plan.drawing;
  return (
    <g class="draft">
      {wall.map((s, i) => {
        const a = outer[i]!, b = outer[i + 1];
        if (!b || (now().part !== null && s.part !== now().part)) return null;
        return (
          <line
            key={i} x1={X(v, -a[0])} y1={Y(v, a[1])} x2={X(v, -b[0])} y2={Y(v, b[1])}
            stroke={draftColour(s.draft)} class={s.draft < 0 ? "under" : ""}
          />
        );
      })}
    </g>
  );
}

function Seams({ v, plan }: { v: View; plan: Plan }) {
  return (
    <g class="seams">
      {plan.drawing.seams.map((s, i) => {
        const z = s[0]![1];
        return (
          <g key={i}>
            <path d={path(v, s)} />
            <path d={`M${X(v, -s[0]![0])} ${Y(v, z)}H${v.x0}`} class="behind" />
            <text x={X(v, v.block) + 6} y={Y(v, s[s.length - 1]![1]) + 4}>{show(z, 1)}<title>{w.seam(withUnit(z, "mm"))}</title></text>
          </g>
        );
      })}
    </g>
  );
}
