// The Form panel: the name, the size, the table of coordinates that mirrors the
// drawing, rows to type or paste, and the clay's shrinkage.
import { Choice, NumberField, Section } from "../fields";
import { addNode, nodeKind, removeNode, turnNode } from "../nodes";
import { show, volume, withUnit } from "../numbers";
import { edit, now, set, settle } from "../state";
import { w } from "../words";
import { Rows } from "./rows";

export function FormPanel() {
  const { job, plan } = now();
  const line = (height: number, radius: number) => w.sizeLine(withUnit(height, "mm"), withUnit(2 * radius, "mm"));
  return (
    <>
      {plan && (
        <dl class="figures">
          <div><dt>{w.sizeFired}</dt><dd>{line(plan.size.firedHeight, plan.size.firedRadius)}</dd></div>
          <div><dt>{w.sizeWet}</dt><dd>{line(plan.size.height, plan.size.maxRadius)}</dd></div>
          <div><dt>{w.capacity}</dt><dd>{volume(plan.size.capacityFired)}</dd></div>
        </dl>
      )}
      <Section title={w.nodes}>
        <Choice
          label={w.size} value={job.form.size} options={[["fired", w.fired], ["mold", w.wet]]}
          pick={(v) => { edit(w.changed(w.size), "", (j) => { j.form.size = v; }); settle(); }}
        />
        <p class="hint">{w.nodesHint}</p>
        <Coordinates />
        <Rows />
      </Section>
      <Section title={w.shrinkage}>
        <div class="row">
          <NumberField label={w.drying} unit="%" field="clay.dryingShrinkage" value={job.clay.dryingShrinkage} set={(j, x) => { j.clay.dryingShrinkage = x; }} />
          <NumberField label={w.firing} unit="%" field="clay.firingShrinkage" value={job.clay.firingShrinkage} set={(j, x) => { j.clay.firingShrinkage = x; }} />
          <NumberField label={w.atRelease} unit="%" field="clay.releaseShrinkage" value={job.clay.releaseShrinkage} set={(j, x) => { j.clay.releaseShrinkage = x; }} />
        </div>
        <p class="hint">{w.shrinkageHint} {plan && w.enlarged(show(plan.scale, 3))}</p>
      </Section>
    </>
  );
}

function Coordinates() {
  const { job, node } = now();
  const outer = job.form.outer;
  return (
    <table class="nodes-table">
      <thead>
        <tr><th scope="col">#</th><th scope="col">{w.radius}</th><th scope="col">{w.height}</th><th scope="col">{w.kind}</th><td class="acts" /></tr>
      </thead>
      <tbody>
        {outer.map((n, i) => (
          <tr key={`${i}/${outer.length}`} class={node === i ? "on" : ""} onFocusIn={() => { if (now().node !== i) set({ node: i }); }}>
            <th scope="row">{i + 1}</th>
            <td><NumberField bare length label={`${w.node(i + 1)}, ${w.radius}`} field={`form.outer[${i}].r`} value={n.r} set={(j, x) => { j.form.outer[i]!.r = x; }} /></td>
            <td><NumberField bare length label={`${w.node(i + 1)}, ${w.height}`} field={`form.outer[${i}].z`} value={n.z} set={(j, x) => { j.form.outer[i]!.z = x; }} /></td>
            <td>
              <button type="button" class="small" aria-label={`${w.node(i + 1)}: ${nodeKind(n)}, ${n.corner ? w.makeSmooth : w.makeCorner}`} onClick={() => turnNode(i)}>
                <span class={n.corner ? "dot square" : "dot"} />{nodeKind(n)}
              </button>
            </td>
            <td class="acts">
              <button type="button" class="small" aria-label={`${w.addAfter} ${i + 1}`} title={w.addAfter} onClick={() => addNode(i)}>+</button>
              <button type="button" class="small" aria-label={`${w.remove} ${i + 1}`} title={w.remove} disabled={outer.length <= 2} onClick={() => removeNode(i)}>−</button>
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
