// The nearest form that lets go in one part and in two: how large the change is,
// the ghost line on the drawing, and one button to take it.
import type { Plan } from "../contract";
import { Section } from "../fields";
import { ghostOf } from "../look";
import { useNearest } from "../near";
import { withUnit } from "../numbers";
import { lookAt, make, now } from "../state";
import { w } from "../words";

export function NearestForm({ plan }: { plan: Plan }) {
  useNearest();
  const { look, job } = now();
  const near = look.near, on = ghostOf(look, plan);
  const stale = near?.of !== job;
  return (
    <Section title={w.nearTitle} of={["ghost"]}>
      {!near ? <p class="hint">{w.nearWait}</p> : (
        <dl class={`near${stale ? " stale" : ""}`} aria-busy={stale}>
          {(["one", "two"] as const).map((k) => {
            const { found, why } = near[k];
            return (
              <div key={k}>
                <dt>{w.nearIn[k]}</dt>
                <dd>
                  {!found ? why : found.maxChange === 0 ? w.nearNone
                    : w.nearChange(withUnit(found.maxChange, "mm", 2), withUnit(found.atZ, "mm"), withUnit(found.rmsChange, "mm", 2))}
                  {found && found.maxChange > 0 && (
                    <button
                      type="button" data-point={`near-${k}`} disabled={stale} aria-label={w.nearTakeIn[k]}
                      onClick={() => make(() => w.nearSteps[k], (j) => { Object.assign(j, found.job); })}
                    >{w.nearTake}</button>
                  )}
                </dd>
              </div>
            );
          })}
        </dl>
      )}
      <div class="choices" role="group" aria-label={w.nearGhost}>
        <span class="hint">{w.nearGhost}</span>
        {(["one", "two", "none"] as const).map((g) => (
          <button key={g} type="button" class="small" aria-pressed={on === g} onClick={() => lookAt({ ghost: g })}>{w.ghosts[g]}</button>
        ))}
      </div>
      <p class="hint">{w.nearHint}</p>
    </Section>
  );
}
