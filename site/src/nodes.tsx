// The nodes of the profile on the drawing: a square is a corner, a disc is
// smooth. Pointer, arrow keys, and the bar below the drawing move them alike. A
// drag is one step of undo, and holds the view still until it ends; near the
// radius or the height of a neighbour it snaps there. Beside the selected node
// each stretch of wall carries a plus that adds a node.
import { useRef, useState } from "preact/hooks";
import type { Job, Plan } from "./contract";
import { early } from "./early";
import { addNode, moveNode, nodeKind, removeNode, stations, turnNode } from "./editor/steps";
import { stretch } from "./editor/stretch";
import { lineOf, nodeName, nodesOf } from "./editor/surface";
import { memo } from "./memo";
import { hundredth, withUnit } from "./numbers";
import { now, set, settle } from "./state";
import { w } from "./words";
import { path, seat, unseat, type View, X, Y } from "./view";

/** Px within which a dragged node snaps to its neighbour. */
const SNAP = 7;

/** The keys of one node; true when the key was meant for it. */
function press(e: KeyboardEvent, i: number, inside: boolean): boolean {
  if (e.ctrlKey || e.metaKey) return false;
  const n = nodesOf(now().job, inside)[i]!;
  const step = e.altKey ? 0.01 : e.shiftKey ? 1 : 0.1;
  switch (e.key) {
    case "ArrowLeft": moveNode(i, n.r - step, n.z, inside); return true;
    case "ArrowRight": moveNode(i, n.r + step, n.z, inside); return true;
    case "ArrowUp": moveNode(i, n.r, n.z + step, inside); return true;
    case "ArrowDown": moveNode(i, n.r, n.z - step, inside); return true;
    case "Enter": turnNode(i, inside); return true;
    case "Insert": addNode(i, inside); return true;
    case "Delete": case "Backspace": removeNode(i, inside); return true;
    case "Escape": set({ node: null }); return true;
  }
  return false;
}

/** The place under the pointer, as nodes are given: radius and height. */
function place(plan: Plan, view: View, e: MouseEvent): [number, number] {
  const box = (e.currentTarget as SVGElement).ownerSVGElement!.getBoundingClientRect();
  return [(e.clientX - box.left - view.x0) / view.k / plan.scale, unseat(plan, (view.y0 - e.clientY + box.top) / view.k)];
}

interface Props { job: Job; plan: Plan; view: View; hold: (on: boolean) => void; inside: boolean }
interface Guide { r?: number; z?: number }
/** What a hand does to a node, by its index. */
interface Hand { down(e: PointerEvent, i: number): void; move(e: PointerEvent, i: number): void; up(): void }

/** The nodes of one surface, and its wall. */
export function Nodes({ job, plan, view, hold, inside }: Props) {
  const grab = useRef<{ id: number; dr: number; dz: number; off: () => void } | null>(null);
  const [guide, setGuide] = useState<Guide>({});
  const scale = plan.scale, nodes = nodesOf(job, inside), node = now().inside === inside ? now().node : null, [from, to] = stretch(nodes.length, node);
  const drag = (e: PointerEvent, i: number) => {
    const g = grab.current!, [r0, z0] = place(plan, view, e);
    const to = (x: number) => (e.altKey ? hundredth(x) : Math.round(x * 10) / 10);
    let r = to(r0 + g.dr), z = to(z0 + g.dz);
    const seen: Guide = {}, reach = SNAP / view.k / scale;
    if (now().snap && !e.altKey) {
      for (const n of [nodes[i - 1], nodes[i + 1]]) {
        if (n && seen.r === undefined && Math.abs(n.r - r) < reach) r = seen.r = n.r;
        if (n && seen.z === undefined && Math.abs(n.z - z) < reach) z = seen.z = n.z;
      }
    }
    setGuide((was) => (was.r === seen.r && was.z === seen.z ? was : seen)); // the same again draws nothing
    moveNode(i, r, z, inside);
  };
  const hand = useRef<Hand>(null), held = useRef<Hand>({
    down: (e, i) => hand.current!.down(e, i), move: (e, i) => hand.current!.move(e, i), up: () => hand.current!.up(),
  });
  hand.current = {
    down(e, i) {
      const dot = e.currentTarget as Element, n = nodes[i]!, [r, z] = place(plan, view, e);
      dot.setPointerCapture(e.pointerId);
      grab.current = { id: e.pointerId, dr: n.r - r, dz: n.z - z, off: early(dot, (m) => held.current.move(m, i)) };
      settle();
      hold(true);
      set({ node: i, inside });
    },
    move(e, i) { if (grab.current?.id === e.pointerId) drag(e, i); },
    up() {
      grab.current?.off();
      grab.current = null;
      setGuide({});
      settle();
      hold(false);
    },
  };
  return (
    <g class={inside ? "nodes inner" : "nodes"}>
      <Wall plan={plan} view={view} inside={inside} />
      {guide.r !== undefined && <path class="guide" d={`M${X(view, guide.r * scale)} 0V${view.height}`} />}
      {guide.z !== undefined && <path class="guide" d={`M0 ${Y(view, seat(plan, guide.z))}H${view.width}`} />}
      <Adders plan={plan} view={view} inside={inside} />
      {nodes.slice(from, to).map((n, k) => (
        <Dot
          key={from + k} i={from + k} inside={inside} count={nodes.length} r={n.r} z={n.z} corner={!!n.corner} on={node === from + k}
          x={X(view, n.r * scale)} y={Y(view, seat(plan, n.z))} hand={held.current}
        />
      ))}
    </g>
  );
}

interface DotProps { i: number; inside: boolean; count: number; r: number; z: number; corner: boolean; on: boolean; x: number; y: number; hand: Hand }

/** One node: of many, a drag moves one. */
const Dot = memo(({ i, inside, count, r, z, corner, on, x, y, hand }: DotProps) => (
  <g
    tabindex={0} role="button" class={`node${on ? " on" : ""}${i === count - 1 && !inside ? " rim" : ""}`}
    aria-label={w.nodeLabel(nodeName(i, inside), count, withUnit(r, "mm", 2), withUnit(z, "mm", 2), nodeKind({ corner }))}
    aria-pressed={on}
    onFocus={() => set({ node: i, inside })}
    onBlur={() => settle()}
    onKeyDown={(e) => { if (press(e, i, inside)) { e.preventDefault(); e.stopPropagation(); } }}
    onDblClick={() => turnNode(i, inside)}
    onPointerDown={(e) => { if (e.button === 0) hand.down(e, i); }}
    onPointerMove={(e) => hand.move(e, i)}
    onLostPointerCapture={() => hand.up()}
  >
    <circle class="hit" cx={x} cy={y} r={22} />
    {corner ? <rect class="dot" x={x - 4.5} y={y - 4.5} width={9} height={9} /> : <circle class="dot" cx={x} cy={y} r={5} />}
  </g>
));

/** The wall as a broad unseen line: pressed twice, it takes a node there. The
 *  plus beside the selected node and the Insert key do the same. */
const Wall = memo(({ plan, view, inside }: { plan: Plan; view: View; inside: boolean }) => {
  const add = (e: MouseEvent) => {
    const at = nearest(plan, inside, ...place(plan, view, e));
    if (at) addNode(at.after, inside, [at.r, at.z]);
  };
  return <path class="wall-hit" d={path(view, lineOf(plan, inside))} onDblClick={add} />;
});

/** The place of the wall nearest to one of the half-plane, and the node before it. */
function nearest(plan: Plan, inside: boolean, r: number, z: number): { r: number; z: number; after: number } | null {
  const at = stations(plan, inside), c = lineOf(plan, inside);
  let best = -1, least = Infinity, place: [number, number] = [r, z];
  for (let i = 0; i + 1 < c.length; i++) {
    const ar = c[i]![0] / plan.scale, az = unseat(plan, c[i]![1]), br = c[i + 1]![0] / plan.scale, bz = unseat(plan, c[i + 1]![1]);
    const l2 = (br - ar) ** 2 + (bz - az) ** 2;
    const t = l2 > 0 ? Math.max(0, Math.min(1, ((r - ar) * (br - ar) + (z - az) * (bz - az)) / l2)) : 0;
    const p: [number, number] = [ar + t * (br - ar), az + t * (bz - az)], d = Math.hypot(p[0] - r, p[1] - z);
    if (d < least) [best, least, place] = [i, d, p];
  }
  if (best < 0 || at.length < 2) return null;
  const after = Math.max(0, at.filter((i) => i <= best).length - 1);
  return { r: place[0], z: place[1], after: Math.min(after, at.length - 2) };
}

/** A plus in the middle of each stretch beside the selected node, where there is room. */
function Adders({ plan, view, inside }: { plan: Plan; view: View; inside: boolean }) {
  const { node } = now();
  if (node === null || now().inside !== inside) return null;
  const at = stations(plan, inside), c = lineOf(plan, inside);
  return (
    <>
      {[node - 1, node].filter((a) => a >= 0 && at[a + 1] !== undefined).map((a) => {
        const p = c[at[a]!]!, q = c[at[a + 1]!]!, [ar, az] = at[a + 1]! - at[a]! > 1 ? c[Math.round((at[a]! + at[a + 1]!) / 2)]! : [(p[0] + q[0]) / 2, (p[1] + q[1]) / 2];
        const x = X(view, ar), y = Y(view, az);
        if (Math.hypot(X(view, p[0]) - x, Y(view, p[1]) - y) < 26 || Math.hypot(X(view, q[0]) - x, Y(view, q[1]) - y) < 26) return null;
        return (
          <g key={a} class="adder" aria-hidden="true" onClick={(e) => { if (e.detail < 2) addNode(a, inside); }}>
            <circle class="hit" cx={x} cy={y} r={20} />
            <circle class="dot" cx={x} cy={y} r={7} />
            <path d={`M${x - 3.5} ${y}h7M${x} ${y - 3.5}v7`} />
          </g>
        );
      })}
    </>
  );
}
