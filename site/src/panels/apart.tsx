// Taking the mold apart: the slider under the bench, for the drawing and the view
// in space alike, and the order in words in the Parts panel.
import { apart } from "../apart";
import type { Part, Plan } from "../contract";
import { Choice, Section } from "../fields";
import { withUnit } from "../numbers";
import { lookAt, now } from "../state";
import { chosen } from "../verdict";
import { w } from "../words";
import { Tag } from "./parts";

const way = (p: Part) => w.apartPulls[p.pull[2] < 0 ? "down" : p.pull[2] > 0 ? "up" : "out"];

/** The slider and, in words, what moves or where it sticks. */
export function ApartBar({ plan }: { plan: Plan }) {
  const { look } = now(), n = plan.order.length;
  const state = apart(plan, chosen(plan), look);
  const words = look.apart === 0 ? w.apartClosed
    : state.stuck ? w.apartSticks(state.part!.name, withUnit(state.stuck.depth, "mm", 2), withUnit(state.stuck.blockedAtZ, "mm"))
    : look.apart >= n ? w.apartDone
    : w.apartMoving(state.part!.name, state.step, n);
  return (
    <div class="slide">
      <label for="apart">{w.apartTitle}</label>
      <input
        id="apart" type="range" min={0} max={n} step={0.05} value={look.apart} aria-valuetext={words}
        onInput={(e) => lookAt({ apart: Number(e.currentTarget.value), scheme: null })}
      />
      <p class={`step${state.stuck ? " bad" : ""}`} role="status">{words}</p>
    </div>
  );
}

/** The order, and what the parts come away from. */
export function Order({ plan }: { plan: Plan }) {
  const { look } = now(), scheme = chosen(plan), state = apart(plan, scheme, look);
  return (
    <Section title={w.order} of={["pull"]}>
      <ol class="order">
        {plan.order.map((name, i) => {
          const part = scheme.parts.find((p) => p.name === name);
          return <li key={name} class={state.step === i + 1 ? "on" : ""}><Tag name={name} />{w.partName(name)}{part && <span class="hint">&nbsp;{way(part)}</span>}</li>;
        })}
      </ol>
      <Choice
        label={w.apartFrom} value={look.body} options={[["positive", w.bodies.positive], ["cast", w.bodies.cast]]}
        pick={(body) => lookAt({ body })}
      />
    </Section>
  );
}
