// The settings of the stretched view, and in words what it shows: how far the
// wall stands off a straight line.
import type { Plan } from "../contract";
import { Choice, Section } from "../fields";
import { withUnit } from "../numbers";
import { lookAt, now } from "../state";
import { farthest } from "../stretched";
import { w } from "../words";

export const factors = [1, 5, 10, 25] as const;

export function Stretch({ plan }: { plan: Plan }) {
  const { stretch, line } = now().look;
  const [out, inside] = farthest(plan, line);
  return (
    <Section title={w.stretch}>
      <div class="choices" role="group" aria-label={w.stretch}>
        {factors.map((n) => (
          <button key={n} type="button" aria-pressed={stretch === n} onClick={() => lookAt({ stretch: n })}>{w.stretchBy(n)}</button>
        ))}
      </div>
      {stretch > 1 && (
        <>
          <Choice label={w.stretchLine} value={line} options={[["ends", w.stretchEnds], ["upright", w.stretchUpright]]} pick={(v) => lookAt({ line: v })} />
          <p class="hint">{w.stretchDescribed(withUnit(out.off, "mm", 2), withUnit(out.z, "mm"), withUnit(-inside.off, "mm", 2), withUnit(inside.z, "mm"))}</p>
        </>
      )}
      <p class="hint">{w.stretchHint}</p>
    </Section>
  );
}
