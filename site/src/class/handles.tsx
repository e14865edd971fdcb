// The few things on a question's drawing that move: marks on the wall, the line
// at which two parts meet, and the nodes of a form that is to be changed. Pointer
// and arrow keys move each of them, and each can be typed beside the drawing.
import { useRef } from "preact/hooks";
import type { At, Job } from "../contract";
import { hundredth, show, withUnit } from "../numbers";
import { type View, X, Y } from "../view";
import { w } from "../words";
import type { Shape } from "./live";
import type { Place } from "./types";
import { along, nearest, outermost } from "./wall";

interface Grip { onMove: (r: number, z: number) => void; onEnd?: () => void; hold?: (on: boolean) => void }

/** What makes an element follow the pointer that took hold of it. */
function useGrip(v: View) {
  const id = useRef<number | null>(null);
  return ({ onMove, onEnd, hold }: Grip) => ({
    onClick: (e: MouseEvent) => e.stopPropagation(),
    onPointerDown: (e: PointerEvent) => {
      if (e.button !== 0) return;
      (e.currentTarget as Element).setPointerCapture(e.pointerId);
      id.current = e.pointerId;
      hold?.(true);
    },
    onPointerMove: (e: PointerEvent) => {
      if (id.current !== e.pointerId) return;
      const at = (e.currentTarget as SVGElement).ownerSVGElement!.getBoundingClientRect();
      onMove((e.clientX - at.left - v.x0) / v.k, (v.y0 - e.clientY + at.top) / v.k);
    },
    onLostPointerCapture: () => { id.current = null; hold?.(false); onEnd?.(); },
  });
}

/** Which way a key moves: up or right 1, down or left -1, else 0. */
const way = (key: string): number =>
  key === "ArrowUp" || key === "ArrowRight" || key === "PageUp" ? 1 : key === "ArrowDown" || key === "ArrowLeft" || key === "PageDown" ? -1 : 0;

interface MarksProps { v: View; wall: At[]; marks: Place[]; /** Makes new marks of the present ones; without it they are only shown. */ change?: (f: (now: Place[]) => Place[]) => void }

export function Marks({ v, wall, marks, change }: MarksProps) {
  const grip = useGrip(v);
  return (
    <g class={change ? "put-marks" : "solved-marks"}>
      {marks.map((m, i) => {
        const r = m.r ?? outermost(wall, m.z);
        if (r === null || !Number.isFinite(r)) return null;
        const x = X(v, r), y = Y(v, m.z);
        if (!change) return <path key={i} class="solved" d={`M${x} ${y - 9}L${x + 9} ${y}L${x} ${y + 9}L${x - 9} ${y}Z`} />;
        const put = (p: Place) => change((all) => all.map((o, k) => (k === i ? p : o)));
        const on = nearest(wall, r, m.z);
        return (
          <g
            key={i} class="put-mark" tabindex={0} role="slider" aria-label={w.class.mark(i + 1)} aria-valuemin={0} aria-valuemax={Math.round(nearest(wall, ...wall[wall.length - 1]!).s)}
            aria-valuenow={Math.round(on.s)} aria-valuetext={w.class.markAt(i + 1, withUnit(m.z, "mm"), withUnit(r, "mm"))}
            onKeyDown={(e) => {
              if (e.key === "Delete" || e.key === "Backspace") { e.preventDefault(); return change((all) => all.filter((_, k) => k !== i)); }
              const dir = way(e.key);
              if (!dir) return;
              e.preventDefault();
              const by = dir * (e.altKey ? 0.1 : e.shiftKey || e.key.startsWith("Page") ? 5 : 1);
              change((all) => all.map((o, k) => (k === i ? along(wall, nearest(wall, o.r ?? outermost(wall, o.z) ?? 0, o.z).s + by) : o)));
            }}
            {...grip({ onMove: (pr, pz) => { const p = nearest(wall, Math.abs(pr), pz); put({ r: p.r, z: p.z }); } })}
          >
            <circle class="hit" cx={x} cy={y} r={22} />
            <circle class="disc" cx={x} cy={y} r={10} />
            <text x={x} y={y + 4} text-anchor="middle">{i + 1}</text>
          </g>
        );
      })}
    </g>
  );
}

export function Seam({ v, z, now, high, set, hold }: { v: View; z: number | null; now: () => number | null; high: number; set: (z: number) => void; hold: (on: boolean) => void }) {
  const grip = useGrip(v), at = z ?? 0, y = Y(v, at), x = X(v, v.block) - 4;
  const put = (to: number) => set(Math.round(Math.min(Math.max(to, 0), high) * 10) / 10);
  return (
    <g
      class={`seam-handle${z === null ? " unset" : ""}`} tabindex={0} role="slider" aria-orientation="vertical" aria-label={w.class.height}
      aria-valuemin={0} aria-valuemax={high} aria-valuenow={at} aria-valuetext={withUnit(at, "mm")}
      onKeyDown={(e) => {
        const dir = way(e.key);
        if (!dir) return;
        e.preventDefault();
        put((now() ?? 0) + dir * (e.altKey ? 0.1 : e.shiftKey || e.key.startsWith("Page") ? 10 : 1));
      }}
      {...grip({ onMove: (_, to) => put(to), hold })}
    >
      <path class="would-part" d={`M${X(v, -v.block)} ${y}H${X(v, v.block)}`} />
      <path class="reach" d={`M${X(v, -v.block)} ${y}H${X(v, v.block)}`} />
      <circle class="hit" cx={x} cy={y} r={22} />
      <rect class="grip" x={x - 9} y={y - 13} width={18} height={26} rx={5} />
      <path class="teeth" d={`M${x - 4} ${y - 4}l4 -4 4 4M${x - 4} ${y + 4}l4 4 4 -4`} />
      {z !== null && <text x={X(v, -v.block)} y={y - 7}>{show(at)}</text>}
    </g>
  );
}

interface NodesProps { v: View; shape: Shape; job: Job; now: () => Job; node: number; pick: (i: number) => void; move: (i: number, r: number, z: number) => void; hold: (on: boolean) => void }

export function FormNodes({ v, shape, job, now, node, pick, move, hold }: NodesProps) {
  const grip = useGrip(v), outer = job.form.outer, turn = shape.turned ? -1 : 1;
  return (
    <g class="nodes">
      {outer.map((n, i) => {
        const x = X(v, n.r * shape.scale), y = Y(v, shape.lift + turn * n.z * shape.scale);
        return (
          <g
            key={i} tabindex={0} role="button" class={`node${node === i ? " on" : ""}`} aria-pressed={node === i}
            aria-label={w.nodeLabel(i + 1, outer.length, withUnit(n.r, "mm", 2), withUnit(n.z, "mm", 2), n.corner ? w.corner : w.smooth)}
            onFocus={() => pick(i)}
            onKeyDown={(e) => {
              const step = e.altKey ? 0.01 : e.shiftKey ? 1 : 0.1;
              const [dr, dz] = e.key === "ArrowLeft" ? [-1, 0] : e.key === "ArrowRight" ? [1, 0] : e.key === "ArrowUp" ? [0, turn] : e.key === "ArrowDown" ? [0, -turn] : [0, 0];
              if (!dr && !dz) return;
              e.preventDefault();
              const from = now().form.outer[i]!;
              move(i, hundredth(from.r + dr! * step), hundredth(from.z + dz! * step));
            }}
            {...grip({
              onMove: (r, z) => move(i, Math.round((Math.max(0, r) / shape.scale) * 10) / 10, Math.round(((turn * (z - shape.lift)) / shape.scale) * 10) / 10),
              hold: (on) => { if (on) pick(i); hold(on); },
            })}
          >
            <circle class="hit" cx={x} cy={y} r={22} />
            {n.corner ? <rect class="dot" x={x - 4.5} y={y - 4.5} width={9} height={9} /> : <circle class="dot" cx={x} cy={y} r={5} />}
          </g>
        );
      })}
    </g>
  );
}
