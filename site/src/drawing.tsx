// The drawing in the middle of the bench: half elevation on the left of the
// axis, half section on the right, in true proportions. Plaster parts carry
// colour, hatching and letter; the clay wall is filled solid, as sections are.
import { useEffect, useMemo, useRef, useState } from "preact/hooks";
import { ahead } from "./ahead";
import type { At, Job, Plan, Scheme } from "./contract";
import { Apart, extents, pieces } from "./drawing-apart";
import { Draft, Ghost, Held, Place } from "./drawing-release";
import { SeamHandles, Seams } from "./drawing-seams";
import { nodesOf } from "./editor/surface";
import { useHands, type Zoom, zoomKey } from "./editor/zoom";
import { ZoomTools } from "./editor/zoomtools";
import { hand } from "./later";
import { ghostOf } from "./look";
import { looked } from "./looked";
import { Marks, Pulls } from "./marks";
import { useMeasured } from "./measured";
import { memo } from "./memo";
import { Nodes } from "./nodes";
import { show, withUnit } from "./numbers";
import { look } from "./parts-look";
import { now, set } from "./state";
import { Stretched } from "./stretched";
import { PictureBehind } from "./trace/behind";
import { behind } from "./trace/tracing";
import { fit, path, seat, tick, type View, X, Y, zoomed } from "./view";
import { w } from "./words";

export function Drawing({ plan, scheme }: { plan: Plan; scheme: Scheme }) {
  const box = useRef<HTMLDivElement>(null);
  const size = useMeasured(box);
  const kept = useRef<View | null>(null);
  const [, wake] = useState(0);
  const put = (zoom: Zoom) => set({ zoom });
  useHands(box, {
    get: () => now().zoom, put,
    pans: (e) => now().zoom.by > 1 && !(e.target as Element).closest(".node, .adder, .seam-handle, button"),
  });
  const { job, tab, look: at, part, planned, answered, zoom } = now();
  const open = tab === "parts" && at.apart > 0;
  const fits = useMemo(
    () => (size[0] > 0 ? zoomed(fit(plan, size[0], size[1], open ? extents(pieces(plan, scheme)) : undefined), zoom) : null),
    [plan, scheme, size, zoom, open && at],
  );
  const v = kept.current ?? fits;
  const hold = (on: boolean) => {
    kept.current = on ? v : null;
    hand(on);
    if (!on) wake((n) => n + 1);
  };
  useEffect(() => () => hand(false), []);
  const wall = useMemo(() => (answered === job ? plan.drawing.contour : ahead(plan, planned!, job)), [plan, planned, job, answered]);
  const inner = useMemo(() => (answered === job || !job.form.inner ? plan.drawing.inner : ahead(plan, planned!, job, true)), [plan, planned, job, answered]);
  const release = tab === "release", seen = release ? looked(plan, scheme) : null;
  const stretched = release && at.stretch > 1;
  const near = release && at.near?.of === planned ? at.near : null, which = ghostOf(at, plan);
  const ghost = near && which !== "none" && near[which].contour.length > 1 ? near[which].contour : null;
  return (
    <div class={`drawing${now().zoom.by > 1 ? " near-by" : ""}${behind()?.on ? " pictured" : ""}`} ref={box}>
      {v && (
        <svg
          width={v.width} height={v.height} viewBox={`0 0 ${v.width} ${v.height}`} role="group" aria-label={w.drawing} tabIndex={-1}
          onKeyDown={(e) => { if (!e.ctrlKey && !e.metaKey && zoomKey(e, now().zoom, v.width, v.height, put, atNode(v, plan))) e.preventDefault(); }}
        >
          <desc>{w.drawingHint}</desc>
          <Hatches plan={plan} />
          <Grid v={v} unit={w.axisUnit} />
          {open ? <Apart v={v} plan={plan} scheme={scheme} /> : <Mold v={v} plan={plan} />}
          <PictureBehind v={v} plan={plan} />
          {!open && <Letters v={v} plan={plan} scheme={scheme} />}
          <Pot v={v} plan={plan} planned={planned!} contour={wall} inside={inner} bare={stretched} solid={open && at.body === "positive"} />
          {release && <Held v={v} plan={plan} />}
          {release && at.place && <Place v={v} zFrom={at.place.zFrom} zTo={at.place.zTo} />}
          {ghost && <Ghost v={v} contour={ghost} rim={plan.drawing.contour.at(-1)![0]} both={!stretched} />}
          {stretched ? <Stretched v={v} plan={plan} look={at} looked={seen!} ghost={ghost} /> : seen && <Draft v={v} plan={plan} looked={seen} />}
          {!open && <Seams v={v} plan={plan} />}
          {!open && <Captions v={v} plan={plan} left={stretched ? w.stretchCaption(at.stretch) : w.elevation} />}
          <line class="axis" x1={v.x0} x2={v.x0} y1={Y(v, v.top) - 16} y2={Y(v, v.bottom) + 16} />
          {!stretched && <Marks v={v} plan={plan} scheme={scheme} tab={tab} look={at} part={part} />}
          {!open && <Pulls v={v} plan={plan} scheme={scheme} />}
          {!open && <Nodes job={job} plan={plan} view={v} hold={hold} inside={false} />}
          {!open && job.form.inner && <Nodes job={job} plan={plan} view={v} hold={hold} inside />}
          {tab === "parts" && !open && <SeamHandles v={v} plan={plan} scheme={scheme} hold={hold} />}
        </svg>
      )}
      {v && <ZoomTools zoom={now().zoom} width={v.width} height={v.height} put={put} about={atNode(v, plan)} />}
    </div>
  );
}

/** Where the selected node stands: what keys and buttons zoom about. */
function atNode(v: View, plan: Plan): [number, number] | undefined {
  const { job, node, inside } = now(), n = node === null ? undefined : nodesOf(job, inside)[node];
  return n && [X(v, n.r * plan.scale), Y(v, seat(plan, n.z))];
}

const Hatches = memo(({ plan }: { plan: Plan }) => {
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
});

/** Squared paper of 10 mm, and the ruler of heights. */
export const Grid = memo(({ v, unit = "mm" }: { v: View; unit?: string }) => {
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
      <text x={6} y={Y(v, v.top) - 14}>{unit}</text>
    </g>
  );
});

const Mold = memo(({ v, plan }: { v: View; plan: Plan }) => {
  const all = plan.drawing.natches, upright = all.find((n) => !n.level)?.azimuth;
  const natches = all.filter((n, i) => (n.level // those of one upright seam, and one for each ring of a level seam
    ? all.findIndex((m) => m.level && m.at[0] === n.at[0] && m.at[1] === n.at[1]) === i
    : n.azimuth === upright));
  return (
    <g class="mold">
      {plan.drawing.parts.map((p) => {
        const l = look(p.name), d = path(v, p.outline, true);
        return (
          <g key={p.name}>
            <path d={d} class="plaster" />
            <path d={d} fill={l.colour} fill-opacity={0.14} />
            <path d={d} fill={`url(#hatch-${l.letter})`} fill-opacity={0.75} class="edge" />
          </g>
        );
      })}
      {natches.map((n, i) => <circle key={i} class="natch" cx={X(v, n.at[0])} cy={Y(v, n.at[1])} r={n.radius * v.k} />)}
    </g>
  );
});

/** The parts' letters, over a picture that lies on the plaster. */
const Letters = memo(({ v, plan, scheme }: { v: View; plan: Plan; scheme: Scheme }) => {
  const sides = scheme.parts.filter((p) => p.sector).map((p) => p.name);
  return (
    <g>
      {plan.drawing.parts.map((p) => {
        const letters = (sides.includes(p.name) ? sides : [p.name]).map((n) => look(n).letter).join(" ");
        const [x, y] = letterAt(v, p.outline), wide = 15 + 9 * letters.length;
        return (
          <g key={p.name} transform={`translate(${x - wide / 2} ${y})`}>
            <rect class="letter" x={-wide / 2} y={-12} width={wide} height={24} rx={12} stroke={look(p.name).colour} />
            <text class="letter" text-anchor="middle" y={5}>{letters}</text>
          </g>
        );
      })}
    </g>
  );
});

/** Where a part's letter ends: by its outer face, half way up that face. */
function letterAt(v: View, outline: readonly At[]): [number, number] {
  const r = Math.max(...outline.map((p) => p[0]));
  const face = outline.filter((p) => p[0] > r - 1).map((p) => p[1]);
  return [X(v, r) - 8, Y(v, (Math.min(...face) + Math.max(...face)) / 2)];
}

interface PotProps { v: View; plan: Plan; planned: Job; contour: readonly At[]; inside: readonly At[]; bare: boolean; solid: boolean }

/** The pot with its wall along the contour: elevation, unless bare, and section;
 *  solid for the positive. */
const Pot = memo(({ v, plan, planned, contour, inside, bare, solid }: PotProps) => {
  const inner = solid ? [] : inside ?? [];
  const rim = contour[contour.length - 1]!;
  const seen: At[] = contour.slice(standing(contour)); // from the side the foot's recess is hidden
  const mouth = plan.drawing.opening[0];
  const open = mouth ? plan.drawing.contour.findIndex((p) => p[0] === mouth[0] && p[1] === mouth[1]) : -1;
  const cast = open > 0 ? contour.slice(0, open + 1) : contour; // a closed form is cast up to its fill hole
  const wall = inner.length > 1 ? [...cast, ...[...inner].reverse()] : solid ? [...cast, [0, cast[cast.length - 1]![1]] as At] : cast;
  const edges = planned.form.outer.filter((n) => n.corner && n.r > 0).map((n): At => [n.r * plan.scale, seat(plan, n.z)]);
  return (
    <g class="pot">
      {!bare && <path class="body" d={path(v, [[0, seen[0]![1]], ...seen, [0, rim[1]]], true, -1)} />}
      {!bare && <path class="edges" d={edges.filter((p) => p[0] >= seen[0]![0] - 0.01).map((p) => `M${X(v, -p[0])} ${Y(v, p[1])}H${v.x0}`).join("")} />}
      {!bare && <path class="edges" d={plan.drawing.dimples.map((l) => path(v, l, false, -1)).join("")} />}
      {!bare && <path class="outline" d={path(v, [[0, seen[0]![1]], ...seen], false, -1)} />}
      <path class={solid ? "positive" : "clay"} d={path(v, wall, solid || inner.length > 1)} />
      <path class="edges" d={path(v, contour)} />
      <path class="outline" d={path(v, cast)} />
      {planned.form.inner && inner.length > 1 && <path class="outline" d={path(v, inner)} />}
      {plan.drawing.thickest && inner.length > 1 && <Thickest v={v} at={plan.drawing.thickest} />}
    </g>
  );
});

/** The largest ball in the wall of a pot cast solid, with its diameter. */
function Thickest({ v, at: [r, z, d] }: { v: View; at: [number, number, number] }) {
  return (
    <g class="thickest">
      <circle cx={X(v, r)} cy={Y(v, z)} r={(d / 2) * v.k}><title>{w.thickest(withUnit(d, "mm"))}</title></circle>
      {d * v.k > 34 && <text x={X(v, r)} y={Y(v, z) + 4} text-anchor="middle">{show(d)}</text>}
    </g>
  );
}

/** The index of the point on which the pot stands farthest out. */
function standing(contour: readonly At[]): number {
  let at = 0;
  contour.forEach((p, i) => { if (p[1] <= contour[at]![1]) at = i; });
  return at;
}

/** What the two halves are, and where the spare is trimmed off. */
const Captions = memo(({ v, plan, left }: { v: View; plan: Plan; left: string }) => {
  const mouth = plan.drawing.opening[0], y = Y(v, v.bottom) + 18;
  return (
    <g class="captions">
      <text x={v.x0 - 10} y={y} text-anchor="end">{left}</text>
      <text x={v.x0 + 10} y={y}>{w.section}</text>
      {mouth && plan.drawing.opening.length > 1 && (
        <>
          <path d={`M${v.x0} ${Y(v, mouth[1])}H${X(v, mouth[0])}`} />
          {/* over the top of a closed form, whose last node stands on the axis */}
          {left === w.elevation && <text x={v.x0 - 8} y={plan.size.height - mouth[1] > 0.01 ? Y(v, plan.size.height) - 13 : Y(v, mouth[1]) - 6} text-anchor="end">{w.trimLine}</text>}
        </>
      )}
    </g>
  );
});
