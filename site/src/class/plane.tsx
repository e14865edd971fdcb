// The drawing of a question: the pot in section, to scale, with no more on it
// than the question needs, and, once it is marked, what sticks.
import type { ComponentChildren } from "preact";
import { useRef } from "preact/hooks";
import type { At } from "../contract";
import { Grid } from "../drawing";
import { useMeasured } from "../measured";
import { withUnit } from "../numbers";
import { FigureTable } from "../reading";
import { path, type View, X, Y } from "../view";
import { w } from "../words";
import type { Picture, Plane as Shape, Pull } from "./types";

const ROOM = { left: 50, right: 24, top: 34, bottom: 34, arrow: 58 };

function viewOf(p: Shape, width: number, height: number): View {
  const all = (p.parts ?? []).flatMap((q) => q.outline);
  const block = Math.max(p.maxRadius, ...all.map((a) => a[0])), bottom = Math.min(0, ...all.map((a) => a[1])), top = Math.max(p.height, ...all.map((a) => a[1]));
  const right = p.pull?.id === "out" ? ROOM.arrow : ROOM.right;
  const high = p.pull?.id === "up" ? ROOM.arrow : ROOM.top, low = p.pull?.id === "down" ? ROOM.arrow : ROOM.bottom;
  const k = Math.max(0.05, Math.min((width - ROOM.left - right) / (2 * block), (height - high - low) / (top - bottom), 6));
  const spare = { x: width - ROOM.left - right - 2 * k * block, y: height - high - low - k * (top - bottom) };
  return { width, height, k, pot: block, block, bottom, top, x0: ROOM.left + spare.x / 2 + k * block, y0: height - low - spare.y / 2 + k * bottom };
}

interface Props {
  shape: Shape; name: string;
  /** The contour as it stands, where it is being changed. */
  wall?: At[] | undefined;
  /** Chosen pulls by part. */
  pulls?: Record<string, string> | undefined;
  heights?: readonly number[];
  picture?: Picture | undefined;
  tap?: ((r: number, z: number, v: View) => void) | undefined;
  /** The view stays as it is while something is dragged. */
  still?: boolean;
  children?: (v: View) => ComponentChildren;
}

export function Plane({ shape, name, wall, pulls, heights, picture, tap, still, children }: Props) {
  const box = useRef<HTMLDivElement>(null), kept = useRef<View | null>(null);
  const size = useMeasured(box);
  const contour = wall ?? shape.contour;
  const fresh = size[0] > 0 ? viewOf(wall ? { ...shape, maxRadius: Math.max(...wall.map((p) => p[0])), height: Math.max(...wall.map((p) => p[1])) } : shape, ...size) : null;
  const v = still && kept.current ? kept.current : fresh;
  kept.current = v;
  const touch = (e: MouseEvent) => {
    if (!tap || !v) return;
    const at = (e.currentTarget as SVGElement).getBoundingClientRect();
    tap(Math.abs(e.clientX - at.left - v.x0) / v.k, (v.y0 - e.clientY + at.top) / v.k, v);
  };
  return (
    <div class="figure-of">
      <div class="drawing plane" ref={box}>
        {v && (
          <svg width={v.width} height={v.height} viewBox={`0 0 ${v.width} ${v.height}`} role="group" aria-label={w.class.drawing(name)} class={tap ? "tappable" : ""} onClick={touch}>
            <Hatch />
            <Grid v={v} />
            {shape.parts?.map((p, i) => <Part key={p.id} v={v} id={p.id} i={i} outline={p.outline} pull={pulls?.[p.id]} />)}
            <Pot v={v} contour={contour} ghost={wall ? shape.contour : null} />
            {shape.inner && shape.inner.length > 1 && <path class="edges" d={path(v, shape.inner) + path(v, shape.inner, false, -1)} />}
            <line class="axis" x1={v.x0} x2={v.x0} y1={Y(v, v.top) - 16} y2={Y(v, v.bottom) + 16} />
            {heights?.map((z) => <g key={z} class="looked-at"><path d={`M${X(v, -v.block)} ${Y(v, z)}H${X(v, v.block)}`} /></g>)}
            {shape.pull && <BigArrow v={v} pull={shape.pull.id} />}
            {shape.points?.map((p) => <Point key={p.id} v={v} r={p.r} z={p.z} />)}
            {picture && <Sticks v={v} p={picture} />}
            {children?.(v)}
          </svg>
        )}
      </div>
      <FigureTable contour={contour} points={shape.points} parts={shape.parts} />
    </div>
  );
}

/** One hatching for each of the parts, in an order that tells nothing. */
function Hatch() {
  return (
    <defs>
      {[45, -45, 0].map((turn, i) => (
        <pattern key={i} id={`part-${i}`} patternUnits="userSpaceOnUse" width="7" height="7" patternTransform={`rotate(${turn})`}>
          <line x1="0" y1="0" x2="0" y2="7" class="stroke" />
        </pattern>
      ))}
    </defs>
  );
}

function Part({ v, id, i, outline, pull }: { v: View; id: string; i: number; outline: At[]; pull: string | undefined }) {
  const r = Math.max(...outline.map((p) => p[0])), face = outline.filter((p) => p[0] > r - 1).map((p) => p[1]);
  const x = X(v, r) - 16, y = Y(v, (Math.min(...face) + Math.max(...face)) / 2), d = path(v, outline, true) + path(v, outline, true, -1);
  const edge = offAxis(outline).map((run) => path(v, run) + path(v, run, false, -1)).join("");
  return (
    <g class="given-part">
      <path class="plaster" d={d} />
      <path d={d} fill={`url(#part-${i % 3})`} />
      <path class="edge" d={edge} fill="none" />
      {pull && pull !== "none" && <path class="asked-pull chosen" d={ARROW} transform={`translate(${x} ${y}) rotate(${TURN[pull as Pull]}) translate(14 0)`} />}
      <circle class="letter" cx={x} cy={y} r={13} />
      <text class="letter" x={x} y={y + 5} text-anchor="middle">{id.toUpperCase()}</text>
    </g>
  );
}

/** The runs of an outline but for its edges along the axis: there a part goes on into its other half. */
function offAxis(outline: readonly At[]): At[][] {
  const on = (p: At) => p[0] < 1e-6, n = outline.length, runs: At[][] = [];
  for (let i = 0; i < n; i++) {
    const a = outline[i]!, b = outline[(i + 1) % n]!;
    if (on(a) && on(b)) continue;
    const last = runs[runs.length - 1];
    if (last && last[last.length - 1] === a) last.push(b);
    else runs.push([a, b]);
  }
  return runs;
}

function Pot({ v, contour, ghost }: { v: View; contour: At[]; ghost: At[] | null }) {
  const end = contour[contour.length - 1]!, solid: At[] = [...contour, [0, end[1]]];
  return (
    <g class="pot">
      <path class="body" d={path(v, solid, true) + path(v, solid, true, -1)} />
      {end[0] > 0 && <path class="edges" d={`M${X(v, -end[0])} ${Y(v, end[1])}H${X(v, end[0])}`} />}
      {ghost && <path class="as-given" d={path(v, ghost) + path(v, ghost, false, -1)} />}
      <path class="outline" d={path(v, contour) + path(v, contour, false, -1)} />
    </g>
  );
}

const ARROW = "M0 -4H18V-10L32 0 18 10V4H0Z";
const TURN: Record<Pull, number> = { down: 90, up: -90, out: 0 };

function BigArrow({ v, pull }: { v: View; pull: Pull }) {
  const axial = pull !== "out";
  const x = axial ? X(v, v.block * 0.62) : X(v, v.block) + 10;
  const y = pull === "up" ? Y(v, v.top) - 8 : pull === "down" ? Y(v, v.bottom) + 8 : Y(v, (v.top + v.bottom) / 2);
  const words = w.class.pulled[pull];
  return (
    <g class="big-arrow">
      <path class="asked-pull" d={ARROW} transform={`translate(${x} ${y}) rotate(${TURN[pull]}) scale(1.2)`} />
      <text x={axial ? x - 18 : v.width - 8} y={axial ? y + (pull === "up" ? -14 : 24) : y - 18} text-anchor="end">{words}</text>
    </g>
  );
}

function Point({ v, r, z }: { v: View; r: number; z: number }) {
  const x = X(v, r), y = Y(v, z);
  return <g class="asked"><path d={`M${x - 13} ${y}H${x + 13}M${x} ${y - 13}V${y + 13}`} /><circle cx={x} cy={y} r={6.5} /></g>;
}

/** What sticks: the wall that is held, heavy; the same plaster moved along its
 *  pull until it meets the pot, broken; and the place that stands in the way. */
function Sticks({ v, p }: { v: View; p: Picture }) {
  const by: At = p.pullId === "out" ? [p.blockR - p.r, 0] : [0, p.blockZ - p.z]; // at the block's height or radius the depth stands open
  const x = X(v, p.r), y = Y(v, p.z), bx = X(v, p.blockR), by2 = Y(v, p.blockZ);
  const label = w.class.held(withUnit(p.depth, "mm")), wide = label.length * 5.9 + 14;
  // the words stand on the left half, since marks and nodes stand on the right
  const far = X(v, -p.r), out = far - 14 - wide >= 48, lx = out ? far - 14 - wide : Math.max(far + 14, 48), ly = Math.max(14, Math.min(y - 26, v.height - 14));
  return (
    <g class="sticks">
      <path class="moved" d={path(v, p.stretch.map(([r, z]): At => [r + by[0], z + by[1]]))} />
      <path class="caught" d={path(v, p.stretch) + path(v, p.stretch, false, -1)} />
      <path class="held-by" d={`M${X(v, p.r + by[0])} ${Y(v, p.z + by[1])}L${bx} ${by2}`} />
      <path class="asked-pull" d={ARROW} transform={`translate(${x} ${y}) rotate(${TURN[p.pullId]}) scale(0.8)`} />
      <path class="block" d={`M${bx - 6} ${by2 - 6}l12 12m0 -12l-12 12`} />
      <circle cx={x} cy={y} r={4} />
      <path class="leader" d={`M${far} ${y}L${out ? lx + wide - 8 : lx + 8} ${ly}`} />
      <circle cx={far} cy={y} r={4} />
      <rect class="note" x={lx} y={ly - 11} width={wide} height={22} rx={3} />
      <text x={lx + wide / 2} y={ly + 4.5} text-anchor="middle">{label}</text>
    </g>
  );
}
