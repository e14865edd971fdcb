// The seams on the drawing. Where the Parts panel is open each level seam has a
// handle: a finger, the mouse or the arrow keys move it, as typing its height
// does. A drag is one step of undo and holds the view still until it ends.
import { useRef } from "preact/hooks";
import type { Plan, Scheme } from "./contract";
import { memo } from "./memo";
import { show, withUnit } from "./numbers";
import { edit, now, settle } from "./state";
import { path, seam, type View, X, Y } from "./view";
import { w } from "./words";

const tenth = (z: number) => Math.round(z * 10) / 10;

/** Moves seam i; pins the others where they are, and the scheme, lest another
 *  one take its place under the hand. */
export function moveSeam(scheme: string, heights: readonly number[], i: number, z: number, high: number): void {
  const least = i > 0 ? heights[i - 1]! + 0.1 : 0, most = i + 1 < heights.length ? heights[i + 1]! - 0.1 : high;
  const to = Math.min(Math.max(z, least), most);
  edit(() => w.seamStep, `seam${i}`, (j) => {
    j.mold.scheme = scheme;
    j.mold.partingHeights = heights.map((h, k) => (k === i ? Math.round(to * 100) / 100 : h));
  });
}

export const Seams = memo(({ v, plan }: { v: View; plan: Plan }) => {
  const { parts } = plan.drawing;
  const lines = parts.flatMap((a, i) => parts.slice(i + 1).map((b) => seam(a.outline, b.outline))).filter((s) => s.length > 1);
  return (
    <g class="seams">
      {lines.map((s, i) => {
        const [r, z] = s[0]!, out = s[s.length - 1]!;
        return (
          <g key={i}>
            <path d={path(v, s)} />
            <path d={`M${X(v, -r)} ${Y(v, z)}H${v.x0}`} class="behind" />
            <text x={X(v, v.block) + 6} y={Y(v, out[1]) + 4}>{z < 0.05 ? w.atFootShort : show(z, 1)}<title>{w.seam(withUnit(z, "mm"))}</title></text>
          </g>
        );
      })}
    </g>
  );
});

interface Props { v: View; plan: Plan; scheme: Scheme; hold: (on: boolean) => void }

export function SeamHandles({ v, plan, scheme, hold }: Props) {
  const grab = useRef<{ id: number; by: number } | null>(null);
  const used = scheme.partingHeights;
  /** Where the seams stand now: keys may come faster than they are drawn. */
  const current = (): readonly number[] => {
    const pinned = now().job.mold.partingHeights;
    return pinned?.length === used.length ? pinned : used;
  };
  const heights = current();
  const high = plan.size.height;
  return (
    <g class="seam-handles">
      {heights.map((z, i) => {
        const x = X(v, v.block) - 26, y = Y(v, z);
        const at = (e: PointerEvent) => {
          const box = (e.currentTarget as SVGGElement).ownerSVGElement!.getBoundingClientRect();
          return (v.y0 - e.clientY + box.top) / v.k;
        };
        const step = (e: KeyboardEvent) => (e.altKey ? 0.01 : e.shiftKey || e.key.startsWith("Page") ? 1 : 0.1);
        return (
          <g
            key={i} class="seam-handle" tabindex={0} role="slider" aria-orientation="vertical"
            aria-label={w.seamHandle(i + 1, heights.length)} aria-valuemin={0} aria-valuemax={tenth(high)}
            aria-valuenow={Math.round(z * 100) / 100} aria-valuetext={withUnit(z, "mm", z === tenth(z) ? 1 : 2)}
            onKeyDown={(e) => {
              const dir = e.key === "ArrowUp" || e.key === "ArrowRight" || e.key === "PageUp" ? 1
                : e.key === "ArrowDown" || e.key === "ArrowLeft" || e.key === "PageDown" ? -1 : 0;
              if (!dir) return;
              e.preventDefault();
              moveSeam(scheme.id, current(), i, current()[i]! + dir * step(e), high);
            }}
            onBlur={() => settle()}
            onPointerDown={(e) => {
              if (e.button !== 0) return;
              e.currentTarget.setPointerCapture(e.pointerId);
              grab.current = { id: e.pointerId, by: z - at(e) };
              settle();
              hold(true);
            }}
            onPointerMove={(e) => {
              const g = grab.current;
              if (g?.id !== e.pointerId) return;
              moveSeam(scheme.id, current(), i, tenth(at(e) + g.by), high);
            }}
            onLostPointerCapture={() => { grab.current = null; settle(); hold(false); }}
          >
            <path class="reach" d={`M${X(v, v.pot)} ${y}H${X(v, v.block)}`} />
            <circle class="hit" cx={x} cy={y} r={22} />
            <rect class="grip" x={x - 9} y={y - 13} width={18} height={26} rx={5} />
            <path class="teeth" d={`M${x - 4} ${y - 4}l4 -4 4 4M${x - 4} ${y + 4}l4 4 4 -4`} />
          </g>
        );
      })}
    </g>
  );
}
