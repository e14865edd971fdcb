// The Release panel: for the pull of one part, how much draft its wall has, where
// it catches, and the rules that tell clear from rubbing.
import { draftColour, FULL } from "../cividis";
import type { Part, Plan } from "../contract";
import { Choice, NumberField, Section } from "../fields";
import { show, volume, withUnit } from "../numbers";
import { now, set } from "../state";
import { chosen, partName } from "../verdict";
import { w } from "../words";

export function ReleasePanel({ plan }: { plan: Plan }) {
  const { job, part: name } = now();
  const parts = chosen(plan).parts;
  const part = parts.find((p) => p.name === name) ?? parts[0]!;
  return (
    <>
      <Choice label={w.lookAt} value={part.name} options={parts.map((p) => [p.name, partName(p.name)] as const)} pick={(v) => set({ part: v })} />
      <Bands part={part} />
      <Section title={w.catchesTitle}>
        {part.catches.length === 0 ? <p>{w.noCatch}</p> : (
          <ul class="plainlist">
            {part.catches.map((c, i) => (
              <li key={i}>
                {w.catchLine(withUnit(c.zFrom, "mm"), withUnit(c.zTo, "mm"), withUnit(c.depth, "mm", 2), withUnit(c.blockedAtZ, "mm"))}
                {c.clayForgives && " " + w.forgiven}
              </li>
            ))}
          </ul>
        )}
      </Section>
      {plan.traps.length > 0 && (
        <Section title={w.trapsTitle}>
          <ul class="plainlist">
            {plan.traps.map((t, i) => <li key={i}>{w.trapLine(withUnit(t.zFrom, "mm"), withUnit(t.zTo, "mm"), withUnit(t.depth, "mm", 2), volume(t.volume))}</li>)}
          </ul>
        </Section>
      )}
      <div class="row">
        <NumberField label={w.leastDraft} unit="°" field="rules.leastDraft" value={job.rules.leastDraft} set={(j, x) => { j.rules.leastDraft = x; }} />
        <NumberField label={w.rubShare} unit="%" field="rules.rubShare" value={job.rules.rubShare} set={(j, x) => { j.rules.rubShare = x; }} hint={w.rubShareHint} />
      </div>
    </>
  );
}

function Bands({ part }: { part: Part }) {
  const most = Math.max(...part.draftBands.map((b) => b.area), 1e-9);
  return (
    <Section title={w.draftTitle}>
      <table class="bands">
        <thead><tr><th scope="col">{w.draftLegend}</th><th scope="col" colSpan={2}>{w.area}</th></tr></thead>
        <tbody>
          {part.draftBands.filter((b) => b.area >= 0.05).map((b) => (
            <tr key={b.from}>
              <th scope="row">{b.to <= 0 ? w.underDraft : w.draftRange(show(b.from, 0) + "°", show(b.to, 0) + "°")}</th>
              <td class="bar"><span style={{ width: `${(100 * b.area) / most}%`, background: draftColour(Math.min((b.from + b.to) / 2, FULL)) }} /></td>
              <td class="num">{withUnit(b.area, "cm²", 1)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p class="hint">{w.minDraft}: {show(part.minDraft, 1)}°</p>
    </Section>
  );
}
