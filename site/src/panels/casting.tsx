// The Casting panel: what to weigh out for each part, and what the cast needs,
// weighs and holds, each figure with how it comes about where the core says so.
import type { Plan } from "../contract";
import { NumberField, Section } from "../fields";
import { mass, show, volume, withUnit } from "../numbers";
import { now } from "../state";
import { chosen, partName } from "../verdict";
import { w } from "../words";
import { Tag } from "./parts";

const shape: Record<string, (x: number) => string> = {
  minutes: (x) => withUnit(x, "min", 0), slipFill: volume, slipTaken: volume,
  castWet: mass, castDry: mass, castFired: mass, castsPerDay: (x) => show(x, 0),
  liftForce: (x) => withUnit(x, "N", 0), bandForce: (x) => withUnit(x, "N", 0),
};

export function CastingPanel({ plan }: { plan: Plan }) {
  const { job } = now();
  const parts = chosen(plan).parts;
  const sum = (k: "plaster" | "water" | "wet" | "dry") => mass(parts.reduce((s, p) => s + p[k], 0));
  return (
    <>
      <Section title={w.mix}>
        <table>
          <thead><tr><th scope="col">{w.part}</th>{[w.plaster, w.water, w.wetMass, w.dryMass].map((t) => <th key={t} scope="col" class="num">{t}</th>)}</tr></thead>
          <tbody>
            {parts.map((p) => (
              <tr key={p.name}><th scope="row"><Tag name={p.name} />{partName(p.name)}</th>{[p.plaster, p.water, p.wet, p.dry].map((m, i) => <td key={i} class="num">{mass(m)}</td>)}</tr>
            ))}
          </tbody>
          {parts.length > 1 && <tfoot><tr><th scope="row">{w.total}</th>{(["plaster", "water", "wet", "dry"] as const).map((k) => <td key={k} class="num">{sum(k)}</td>)}</tr></tfoot>}
        </table>
        <NumberField label={w.consistency} field="plaster.consistency" value={job.plaster.consistency} set={(j, x) => { j.plaster.consistency = x; }} hint={w.consistencyHint} />
      </Section>
      <Section title={w.slipTitle}>
        <dl class="figures">
          {Object.entries(shape).map(([k, f]) => {
            const x = plan.casting[k];
            return typeof x === "number" && <div key={k}><dt>{w.figures[k]}</dt><dd>{f(x)}</dd></div>;
          })}
        </dl>
      </Section>
      <Section title={w.slipSettings}>
        <div class="row">
          <NumberField length label={w.wall} unit="mm" field="clay.wall" value={job.clay.wall} set={(j, x) => { j.clay.wall = x; }} />
          <NumberField label={w.slipDensity} unit="g/ml" field="clay.slipDensity" value={job.clay.slipDensity} set={(j, x) => { j.clay.slipDensity = x; }} />
          <NumberField label={w.solidsDensity} unit="g/ml" field="clay.solidsDensity" value={job.clay.solidsDensity} set={(j, x) => { j.clay.solidsDensity = x; }} />
          <NumberField length label={w.testWall} unit="mm" field="clay.testCast.wall" value={job.clay.testCast.wall} set={(j, x) => { j.clay.testCast.wall = x; }} />
          <NumberField label={w.testMinutes} unit="min" field="clay.testCast.minutes" value={job.clay.testCast.minutes} set={(j, x) => { j.clay.testCast.minutes = x; }} />
        </div>
      </Section>
      {plan.cautions.length > 0 && (
        <aside class="caution" aria-label={w.cautions}>
          <h3>{w.cautions}</h3>
          <ul class="plainlist">{plan.cautions.map((c, i) => <li key={i}>{c}</li>)}</ul>
        </aside>
      )}
    </>
  );
}
