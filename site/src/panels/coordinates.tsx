// The table of coordinates that mirrors the drawing.
import { addNode, leastNodes, nodeKind, removeNode, turnNode } from "../editor/steps";
import { stretch } from "../editor/stretch";
import { fieldOf, nodeName, nodesOf } from "../editor/surface";
import { NumberField } from "../fields";
import { show } from "../numbers";
import { now, set } from "../state";
import { w } from "../words";

/** Of the outer surface, or of the inner one. */
export function Coordinates({ inside = false }: { inside?: boolean }) {
  const { job } = now(), node = now().inside === inside ? now().node : null;
  const nodes = nodesOf(job, inside), field = fieldOf(inside), [from, to] = stretch(nodes.length, node);
  return (
    <>
    {to - from < nodes.length && (
      <div class="actions">
        <button type="button" class="small" disabled={from === 0} onClick={() => set({ node: from - 1, inside })}>{w.nodesEarlier}</button>
        <button type="button" class="small" disabled={to === nodes.length} onClick={() => set({ node: to, inside })}>{w.nodesLater}</button>
        <span class="hint" role="status">{w.nodesShown(show(from + 1, 0), show(to, 0), show(nodes.length, 0))}</span>
      </div>
    )}
    <table class="nodes-table">
      <thead>
        <tr><th scope="col">#</th><th scope="col">{w.radius}</th><th scope="col">{w.height}</th><th scope="col">{w.kind}</th><td class="acts" /></tr>
      </thead>
      <tbody>
        {nodes.slice(from, to).map((n, k) => { const i = from + k, name = nodeName(i, inside); return (
          <tr key={`${i}/${nodes.length}`} class={node === i ? "on" : ""} onFocusIn={() => { if (now().node !== i || now().inside !== inside) set({ node: i, inside }); }}>
            <th scope="row">{name}</th>
            <td><NumberField bare length label={w.nodeRadius(name)} named={() => w.nodeRadius(name)} field={`${field}[${i}].r`} value={n.r} set={(j, x) => { nodesOf(j, inside)[i]!.r = x; }} /></td>
            <td><NumberField bare length label={w.nodeHeight(name)} named={() => w.nodeHeight(name)} field={`${field}[${i}].z`} value={n.z} set={(j, x) => { nodesOf(j, inside)[i]!.z = x; }} /></td>
            <td>
              <button type="button" class="small" aria-label={w.nodeTurn(name, !!n.corner)} onClick={() => turnNode(i, inside)}>
                <span class={n.corner ? "dot square" : "dot"} />{nodeKind(n)}
              </button>
            </td>
            <td class="acts">
              <button type="button" class="small" aria-label={w.addAfterNode(name)} title={w.addAfter} onClick={() => addNode(i, inside)}>+</button>
              <button type="button" class="small" aria-label={w.removeNode(name)} title={w.remove} disabled={nodes.length <= leastNodes(inside)} onClick={() => removeNode(i, inside)}>−</button>
            </td>
          </tr>
        ); })}
      </tbody>
    </table>
    </>
  );
}
