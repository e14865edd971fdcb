// The Form panel: the size, where a form comes from and how it leaves, the table
// of coordinates, rows to type or paste, and the clay's shrinkage. While a
// picture is traced or a drawing's line is chosen, that stands in its place.
import { Choice, NumberField, Section } from "../fields";
import { Told } from "../help/term";
import { show, volume, withUnit } from "../numbers";
import { edit, now, settle } from "../state";
import { TracePanel, underTrace } from "../trace/panel";
import { Source, TakeOut } from "../trace/source";
import { SvgPanel } from "../trace/svg";
import { w } from "../words";
import { Coordinates } from "./coordinates";
import { Inside } from "./inside";
import { Rows } from "./rows";

export function FormPanel() {
  const { job, plan, svg } = now(), trace = underTrace();
  if (trace) return <TracePanel of={trace} />;
  if (svg) return <SvgPanel of={svg} />;
  const line = (height: number, radius: number) => w.sizeLine(withUnit(height, "mm"), withUnit(2 * radius, "mm"));
  return (
    <>
      {plan && (
        <dl class="figures">
          <div><dt>{w.sizeFired}</dt><dd>{line(plan.size.firedHeight, plan.size.firedRadius)}</dd></div>
          <div><dt><Told text={w.sizeWet} of={["oversize"]} always /></dt><dd>{line(plan.size.height, plan.size.maxRadius)}</dd></div>
          <div><dt>{w.capacity}</dt><dd>{volume(plan.size.capacityFired)}</dd></div>
        </dl>
      )}
      <Source />
      <Section title={w.nodes} of={["node"]}>
        <Choice
          label={w.size} value={job.form.size} options={[["fired", w.fired], ["mold", w.wet]]}
          pick={(v) => { edit(() => w.sizeStep, "", (j) => { j.form.size = v; }); settle(); }}
        />
        <p class="hint"><Told text={w.nodesHint} of={["foot"]} /></p>
        <Coordinates />
        <Rows />
      </Section>
      <Inside />
      <TakeOut />
      <Section title={w.shrinkage} of={["shrinkage"]}>
        <div class="row">
          <NumberField label={w.drying} unit="%" field="clay.dryingShrinkage" value={job.clay.dryingShrinkage} set={(j, x) => { j.clay.dryingShrinkage = x; }} />
          <NumberField label={w.firing} unit="%" field="clay.firingShrinkage" value={job.clay.firingShrinkage} set={(j, x) => { j.clay.firingShrinkage = x; }} />
          <NumberField ask="letGo" label={w.atRelease} unit="%" field="clay.releaseShrinkage" value={job.clay.releaseShrinkage} set={(j, x) => { j.clay.releaseShrinkage = x; }} />
        </div>
        <p class="hint">{w.shrinkageHint} {plan && w.enlarged(show(plan.scale, 3))}</p>
      </Section>
    </>
  );
}
