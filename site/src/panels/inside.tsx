// The inner surface in the Form panel: the wall that slip builds, or a surface of the
// pot's own, which a core forms and the pot is cast solid against. The first nodes
// of such a one are those of the drained cast's inside; from there they are moved.
import { setInner } from "../editor/steps";
import { innerBar, innerNodes } from "../editor/surface";
import { Choice, NumberField, Section } from "../fields";
import { Told } from "../help/term";
import { withUnit } from "../numbers";
import { now } from "../state";
import { w } from "../words";
import { Coordinates } from "./coordinates";

export function Inside() {
  const { job, plan, answered } = now(), own = !!job.form.inner, bar = own ? null : innerBar(job, plan);
  const ready = answered === job && plan;
  const pick = (to: "slip" | "own") => {
    if (to === "slip") setInner(null);
    else if (ready && !bar) setInner(innerNodes(job, plan));
  };
  return (
    <Section title={w.inner} of={["core"]}>
      {bar && <p class="hint">{bar === "closed" ? w.innerClosed : w.innerFull}</p>}
      {!bar && <Choice label={w.innerIs} value={own ? "own" : "slip"} options={[["slip", w.innerSlip], ["own", w.innerOwn]]} pick={pick} />}
      {!bar && !own && (
        <>
          <p class="hint">{w.innerBegins}</p>
          <NumberField length ask="wall" label={w.wall} unit="mm" field="clay.wall" value={job.clay.wall} set={(j, x) => { j.clay.wall = x; }} />
        </>
      )}
      {own && (
        <>
          <p class="hint"><Told text={w.innerHint} of={["core"]} /></p>
          {plan?.drawing.thickest && <p class="hint">{w.thickest(withUnit(plan.drawing.thickest[2], "mm"))}</p>}
          <Coordinates inside />
        </>
      )}
    </Section>
  );
}
