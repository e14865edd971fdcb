// The bar of the selected node: in figures and buttons, all that dragging does.
import { NumberField } from "../fields";
import { Told } from "../help/term";
import { now, set } from "../state";
import { w } from "../words";
import { addNode, lineUp, nodeKind, removeNode, straighten, turnNode } from "./steps";

/** On to another node; a held key presses faster than the page is drawn. */
function go(by: number): void {
  const { job, node } = now();
  set({ node: Math.max(0, Math.min(job.form.outer.length - 1, (node ?? 0) + by)) });
}

export function NodeBar() {
  const { job, node, snap } = now(), outer = job.form.outer;
  const n = node === null ? undefined : outer[node];
  if (node === null || !n) {
    return (
      <div class="nodebar">
        <button type="button" class="small" onClick={() => set({ node: 0 })}>{w.firstNode}</button>
        <span class="hint"><Told text={w.noNode} of={["node"]} /></span>
      </div>
    );
  }
  return (
    <div class="nodebar" role="group" aria-label={w.node(node + 1)}>
      <span class="step">
        <button type="button" class="small" aria-label={w.nodeBefore} disabled={node === 0} onClick={() => go(-1)}>‹</button>
        <b>{w.node(node + 1)}</b>
        <button type="button" class="small" aria-label={w.nodeAfter} disabled={node === outer.length - 1} onClick={() => go(1)}>›</button>
      </span>
      <span class="named">r <NumberField key={`r${node}`} bare nudge={{ words: [w.nudgeIn, w.nudgeOut], least: 0 }} length label={w.radius} unit="mm" field={`form.outer[${node}].r`} value={n.r} set={(j, x) => { j.form.outer[node]!.r = x; }} /></span>
      <span class="named">z <NumberField key={`z${node}`} bare nudge={{ words: [w.nudgeDown, w.nudgeUp] }} length label={w.height} unit="mm" field={`form.outer[${node}].z`} value={n.z} set={(j, x) => { j.form.outer[node]!.z = x; }} /></span>
      <button type="button" class="small" onClick={() => turnNode(node)}><span class={n.corner ? "dot square" : "dot"} />{nodeKind(n)}</button>
      <button type="button" class="small" onClick={() => addNode(node)}>{w.addAfter}</button>
      <button type="button" class="small" disabled={outer.length <= 2} onClick={() => removeNode(node)}>{w.remove}</button>
      {[node - 1, node + 1].filter((k) => k >= 0 && k < outer.length).map((k) => (
        <span key={k} class="toward" role="group" aria-label={w.toward(k + 1)}>
          <span class="hint">{w.toward(k + 1)}</span>
          <button type="button" class="small" disabled={!!n.corner && !!outer[k]!.corner} onClick={() => straighten(node, k)}>{w.straight}</button>
          <button type="button" class="small" disabled={n.r === outer[k]!.r} onClick={() => lineUp(node, k, "upright")}>{w.upright}</button>
          <button type="button" class="small" disabled={n.z === outer[k]!.z} onClick={() => lineUp(node, k, "level")}>{w.level}</button>
        </span>
      ))}
      <button type="button" class="small" aria-pressed={snap} onClick={() => set({ snap: !snap })}>{w.snap}</button>
    </div>
  );
}
