// The Casting panel: what to weigh out for each part, and what the cast needs,
// weighs and holds, each figure with how it comes about where the core says so.
import { useEffect, useState } from "preact/hooks";
import type { Plan, Row } from "../contract";
import { NumberField, Section } from "../fields";
import { mass, show, volume, withUnit } from "../numbers";
import { coreOf, now, parse } from "../state";
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
            const x = plan.casting[k] as number;
            return <div key={k}><dt>{w.figures[k]}</dt><dd>{f(x)}</dd></div>;
          })}
        </dl>
      </Section>
      <All />
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

/** Every figure in groups, each with its formula, its source and how far to
 *  trust it. Asked for once opened, and again for each new job. */
function All() {
  const { job } = now();
  const [open, setOpen] = useState(false);
  const [rows, setRows] = useState<Row[]>([]);
  useEffect(() => {
    if (!open) return;
    let gone = false;
    void coreOf().ask("figures", { job }).then((a) => {
      const reply = a && parse<{ rows: Row[] }>(a.reply);
      if (!gone && reply && !("error" in reply)) setRows(reply.rows);
    });
    return () => { gone = true; };
  }, [open, job]);
  return (
    <details class="all" onToggle={(e) => setOpen(e.currentTarget.open)}>
      <summary>{w.allFigures}</summary>
      {[...new Set(rows.map((r) => r.group))].map((g) => (
        <table key={g}>
          <caption>{g}</caption>
          <tbody>
            {rows.filter((r) => r.group === g).map((r) => (
              <tr key={r.key}>
                <th scope="row">{r.label}<span class="hint how">{r.formula}</span><span class="hint how">{r.source} ({r.status})</span></th>
                <td class="num">{r.unit ? withUnit(r.value, r.unit, r.digits) : show(r.value, r.digits)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      ))}
    </details>
  );
}
