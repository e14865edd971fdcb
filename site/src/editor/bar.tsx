// The bar of the selected node: in figures and buttons, all that dragging does.
import { NumberField } from "../fields";
import { Told } from "../help/term";
import { now, set } from "../state";
import { w } from "../words";
import { addNode, leastNodes, lineUp, nodeKind, removeNode, straighten, turnNode } from "./steps";
import { fieldOf, nodeName, nodesOf } from "./surface";

/** On to another node; a held key presses faster than the page is drawn. */
function go(by: number): void {
  const { job, node, inside } = now();
  set({ node: Math.max(0, Math.min(nodesOf(job, inside).length - 1, (node ?? 0) + by)) });
}

export function NodeBar() {
  const { job, node, inside, snap } = now(), nodes = nodesOf(job, inside);
  const n = node === null ? undefined : nodes[node], name = (i: number) => nodeName(i, inside), field = fieldOf(inside);
  if (node === null || !n) {
    return (
      <div class="nodebar">
        <button type="button" class="small" onClick={() => set({ node: 0, inside: false })}>{w.firstNode}</button>
        <span class="hint"><Told text={w.noNode} of={["node"]} /></span>
      </div>
    );
  }
  return (
    <div class="nodebar" role="group" aria-label={w.node(name(node))}>
      <span class="step">
        <button type="button" class="small" aria-label={w.nodeBefore} disabled={node === 0} onClick={() => go(-1)}>‹</button>
        <b>{w.node(name(node))}</b>
        <button type="button" class="small" aria-label={w.nodeAfter} disabled={node === nodes.length - 1} onClick={() => go(1)}>›</button>
      </span>
      <span class="named">r <NumberField key={`r${name(node)}`} bare nudge={{ words: [w.nudgeIn, w.nudgeOut], least: 0 }} length label={w.radius} unit="mm" field={`${field}[${node}].r`} value={n.r} set={(j, x) => { nodesOf(j, inside)[node]!.r = x; }} /></span>
      <span class="named">z <NumberField key={`z${name(node)}`} bare nudge={{ words: [w.nudgeDown, w.nudgeUp] }} length label={w.height} unit="mm" field={`${field}[${node}].z`} value={n.z} set={(j, x) => { nodesOf(j, inside)[node]!.z = x; }} /></span>
      <button type="button" class="small" onClick={() => turnNode(node, inside)}><span class={n.corner ? "dot square" : "dot"} />{nodeKind(n)}</button>
      <button type="button" class="small" onClick={() => addNode(node, inside)}>{w.addAfter}</button>
      <button type="button" class="small" disabled={nodes.length <= leastNodes(inside)} onClick={() => removeNode(node, inside)}>{w.remove}</button>
      {[node - 1, node + 1].filter((k) => k >= 0 && k < nodes.length).map((k) => (
        <span key={k} class="toward" role="group" aria-label={w.toward(name(k))}>
          <span class="hint">{w.toward(name(k))}</span>
          <button type="button" class="small" disabled={!!n.corner && !!nodes[k]!.corner} onClick={() => straighten(node, k, inside)}>{w.straight}</button>
          <button type="button" class="small" disabled={n.r === nodes[k]!.r} onClick={() => lineUp(node, k, "upright", inside)}>{w.upright}</button>
          <button type="button" class="small" disabled={n.z === nodes[k]!.z} onClick={() => lineUp(node, k, "level", inside)}>{w.level}</button>
        </span>
      ))}
      <button type="button" class="small" aria-pressed={snap} onClick={() => set({ snap: !snap })}>{w.snap}</button>
    </div>
  );
}
