// The table of coordinates that mirrors the drawing.
import { addNode, nodeKind, removeNode, turnNode } from "../editor/steps";
import { stretch } from "../editor/stretch";
import { NumberField } from "../fields";
import { show } from "../numbers";
import { now, set } from "../state";
import { w } from "../words";

export function Coordinates() {
  const { job, node } = now();
  const outer = job.form.outer, [from, to] = stretch(outer.length, node);
  return (
    <>
    {to - from < outer.length && (
      <div class="actions">
        <button type="button" class="small" disabled={from === 0} onClick={() => set({ node: from - 1 })}>{w.nodesEarlier}</button>
        <button type="button" class="small" disabled={to === outer.length} onClick={() => set({ node: to })}>{w.nodesLater}</button>
        <span class="hint" role="status">{w.nodesShown(show(from + 1, 0), show(to, 0), show(outer.length, 0))}</span>
      </div>
    )}
    <table class="nodes-table">
      <thead>
        <tr><th scope="col">#</th><th scope="col">{w.radius}</th><th scope="col">{w.height}</th><th scope="col">{w.kind}</th><td class="acts" /></tr>
      </thead>
      <tbody>
        {outer.slice(from, to).map((n, k) => { const i = from + k; return (
          <tr key={`${i}/${outer.length}`} class={node === i ? "on" : ""} onFocusIn={() => { if (now().node !== i) set({ node: i }); }}>
            <th scope="row">{i + 1}</th>
            <td><NumberField bare length label={w.nodeRadius(i + 1)} named={() => w.nodeRadius(i + 1)} field={`form.outer[${i}].r`} value={n.r} set={(j, x) => { j.form.outer[i]!.r = x; }} /></td>
            <td><NumberField bare length label={w.nodeHeight(i + 1)} named={() => w.nodeHeight(i + 1)} field={`form.outer[${i}].z`} value={n.z} set={(j, x) => { j.form.outer[i]!.z = x; }} /></td>
            <td>
              <button type="button" class="small" aria-label={w.nodeTurn(i + 1, !!n.corner)} onClick={() => turnNode(i)}>
                <span class={n.corner ? "dot square" : "dot"} />{nodeKind(n)}
              </button>
            </td>
            <td class="acts">
              <button type="button" class="small" aria-label={w.addAfterNode(i + 1)} title={w.addAfter} onClick={() => addNode(i)}>+</button>
              <button type="button" class="small" aria-label={w.removeNode(i + 1)} title={w.remove} disabled={outer.length <= 2} onClick={() => removeNode(i)}>−</button>
            </td>
          </tr>
        ); })}
      </tbody>
    </table>
    </>
  );
}
