// The nodes of the profile on the drawing: a square is a corner, a disc is
// smooth. Pointer, arrow keys, and the bar below the drawing move them alike. A
// drag is one step of undo, and holds the view still until it ends.
import { useRef } from "preact/hooks";
import type { Job, Node, Plan } from "./contract";
import { hundredth, withUnit } from "./numbers";
import { edit, now, set, settle } from "./state";
import { w } from "./words";
import { seat, unseat, type View, X, Y } from "./view";

export function moveNode(i: number, r: number, z: number): void {
  edit(w.moved(i + 1), `node${i}`, (j) => {
    const n = j.form.outer[i]!;
    n.r = Math.max(0, hundredth(r));
    n.z = hundredth(z);
  });
}

export function turnNode(i: number): void {
  edit(w.turned(i + 1), "", (j) => {
    const n = j.form.outer[i]!;
    j.form.outer[i] = n.corner ? { r: n.r, z: n.z } : { r: n.r, z: n.z, corner: true };
  });
  settle();
}

/** Adds a node half way to the next one, or to the one before the last. */
export function addNode(i: number): void {
  const outer = now().job.form.outer;
  const a = Math.min(i, outer.length - 2);
  const p = outer[a]!, q = outer[a + 1]!;
  const node: Node = { r: hundredth((p.r + q.r) / 2), z: hundredth((p.z + q.z) / 2) };
  if (p.corner && q.corner) node.corner = true;
  edit(w.added(a + 1), "", (j) => { j.form.outer.splice(a + 1, 0, node); });
  settle();
  set({ node: a + 1 });
}

export function removeNode(i: number): void {
  if (now().job.form.outer.length <= 2) return;
  edit(w.removed(i + 1), "", (j) => { j.form.outer.splice(i, 1); });
  settle();
  set({ node: Math.min(i, now().job.form.outer.length - 1) });
}

export const nodeKind = (n: Node): string => (n.corner ? w.corner : w.smooth);

/** The keys of one node; true when the key was meant for it. */
function press(e: KeyboardEvent, i: number): boolean {
  const n = now().job.form.outer[i]!;
  const step = e.altKey ? 0.01 : e.shiftKey ? 1 : 0.1;
  switch (e.key) {
    case "ArrowLeft": moveNode(i, n.r - step, n.z); return true;
    case "ArrowRight": moveNode(i, n.r + step, n.z); return true;
    case "ArrowUp": moveNode(i, n.r, n.z + step); return true;
    case "ArrowDown": moveNode(i, n.r, n.z - step); return true;
    case "Enter": turnNode(i); return true;
    case "Insert": addNode(i); return true;
    case "Delete": removeNode(i); return true;
    case "Escape": set({ node: null }); return true;
  }
  return false;
}

interface Props { job: Job; plan: Plan; view: View; hold: (on: boolean) => void }

export function Nodes({ job, plan, view, hold }: Props) {
  const grab = useRef<{ id: number; dr: number; dz: number } | null>(null);
  const scale = plan.scale;
  const outer = job.form.outer;
  return (
    <g class="nodes">
      {outer.map((n, i) => {
        const x = X(view, n.r * scale), y = Y(view, seat(plan, n.z));
        const place = (e: PointerEvent): [number, number] => {
          const box = (e.currentTarget as SVGGElement).ownerSVGElement!.getBoundingClientRect();
          return [(e.clientX - box.left - view.x0) / view.k / scale, unseat(plan, (view.y0 - e.clientY + box.top) / view.k)];
        };
        return (
          <g
            key={i} tabIndex={0} role="button" class={`node${now().node === i ? " on" : ""}`}
            aria-label={w.nodeLabel(i + 1, outer.length, withUnit(n.r, "mm", 2), withUnit(n.z, "mm", 2), nodeKind(n))}
            aria-pressed={now().node === i}
            onFocus={() => set({ node: i })}
            onBlur={() => settle()}
            onKeyDown={(e) => { if (press(e, i)) e.preventDefault(); }}
            onDblClick={() => turnNode(i)}
            onPointerDown={(e) => {
              if (e.button !== 0) return;
              e.currentTarget.setPointerCapture(e.pointerId);
              const [r, z] = place(e);
              grab.current = { id: e.pointerId, dr: n.r - r, dz: n.z - z };
              settle();
              hold(true);
              set({ node: i });
            }}
            onPointerMove={(e) => {
              const g = grab.current;
              if (!g || g.id !== e.pointerId) return;
              const [r, z] = place(e);
              const to = (x: number) => (e.altKey ? hundredth(x) : Math.round(x * 10) / 10);
              moveNode(i, to(r + g.dr), to(z + g.dz));
            }}
            onLostPointerCapture={() => {
              grab.current = null;
              settle();
              hold(false);
            }}
          >
            <circle class="hit" cx={x} cy={y} r={22} />
            {n.corner
              ? <rect class="dot" x={x - 4.5} y={y - 4.5} width={9} height={9} />
              : <circle class="dot" cx={x} cy={y} r={5} />}
          </g>
        );
      })}
    </g>
  );
}
