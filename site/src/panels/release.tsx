// The Release panel: for the pull of one part, or of the whole wall, how much
// draft the wall has and where it catches; what is known about the way it lets
// go; how slip and air move; and the rules that tell clear from rubbing.
import { draftColour, FULL } from "../cividis";
import type { Catch, Part, Plan } from "../contract";
import { NumberField, Section } from "../fields";
import { Told } from "../help/term";
import type { Pull } from "../look";
import { looked, partOf } from "../looked";
import { show, unbroken, volume, withUnit } from "../numbers";
import { lookAt, now, reveal, set } from "../state";
import { chosen } from "../verdict";
import { pullOf } from "../view";
import { w } from "../words";
import { NearestForm } from "./nearest";
import { Remedies } from "./remedies";
import { Stretch } from "./stretch";

export function ReleasePanel({ plan }: { plan: Plan }) {
  const { job } = now();
  const { part } = looked(plan, chosen(plan));
  return (
    <>
      <Pulls plan={plan} />
      {part ? <Bands part={part} least={job.rules.leastDraft} /> : <p class="hint">{w.pullNoBands}</p>}
      {part && (
        <Section title={w.catchesTitle} of={["catch"]}>
          {part.catches.length === 0 ? <p>{w.noCatch}</p> : <ul class="plainlist">{part.catches.map((c, i) => <li key={i}>{caught(c)}</li>)}</ul>}
        </Section>
      )}
      {plan.traps.length > 0 && (
        <Section title={w.trapsTitle} of={["trap"]}>
          <ul class="plainlist">
            {plan.traps.map((t, i) => <li key={i}>{(t.surface === "inner" ? w.trapInside : w.trapLine)(withUnit(t.zFrom, "mm"), withUnit(t.zTo, "mm"), withUnit(t.depth, "mm", 2), volume(t.volume))}</li>)}
          </ul>
        </Section>
      )}
      <Stretch plan={plan} />
      <Findings plan={plan} />
      <NearestForm plan={plan} />
      <Remedies />
      <Flow plan={plan} />
      <Section title={w.rulesTitle}>
        <div class="row">
          <NumberField ask="draft" label={w.leastDraft} unit="°" field="rules.leastDraft" value={job.rules.leastDraft} set={(j, x) => { j.rules.leastDraft = x; }} />
          <NumberField ask="rub" label={w.rubShare} unit="%" field="rules.rubShare" value={job.rules.rubShare} set={(j, x) => { j.rules.rubShare = x; }} hint={w.rubShareHint} />
        </div>
      </Section>
    </>
  );
}

function caught(c: Catch): string {
  const where = c.zTo - c.zFrom < 0.1 ? w.atHeight(withUnit(c.zFrom, "mm")) : w.betweenHeights(show(c.zFrom), withUnit(c.zTo, "mm"));
  const line = w.catchLine(where, withUnit(c.depth, "mm", 2), withUnit(c.blockedAtZ, "mm"));
  const clay = c.clayForgives ? w.forgiven(withUnit(c.depth, "mm", 2))
    : c.depth - c.clayDepth < 0.005 ? w.clayNone : w.clayLeft(withUnit(c.clayDepth, "mm", 2));
  return `${line} ${clay}`;
}

const arrows = ["↓", "↑", "→"] as const;

/** One button for each part's pull, and for each pull of the whole wall. */
function Pulls({ plan }: { plan: Plan }) {
  const { look } = now();
  const scheme = chosen(plan), { parts } = scheme, on = partOf(scheme, now().part);
  return (
    <Section title={w.pullTitle} of={["pull"]}>
      <div class="choices" role="group" aria-label={w.pullGroup}>
        {parts.map((p) => (
          <button key={p.name} type="button" aria-pressed={look.pull === null && p === on} onClick={() => { set({ part: p.name }); lookAt({ pull: null }); }}>
            <span aria-hidden="true">{arrows[pullOf(p)]}</span>{w.pullOfPart(p.name)}
          </button>
        ))}
        {([0, 1, 2] as Pull[]).map((pull) => (
          <button key={pull} type="button" aria-pressed={look.pull === pull} onClick={() => lookAt({ pull })}>
            <span aria-hidden="true">{arrows[pull]}</span>{w.pullWhole[pull]}
          </button>
        ))}
      </div>
    </Section>
  );
}

function Bands({ part, least }: { part: Part; least: number }) {
  const most = Math.max(...part.draftBands.map((b) => b.area), 1e-9);
  return (
    <Section title={w.draftTitle} of={["draft"]}>
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
      <p class="hint">{w.leastOnPart(show(part.minDraft, 1) + "°", withUnit(part.rubShare, "%"), show(least, 1) + "°")}</p>
    </Section>
  );
}

function Findings({ plan }: { plan: Plan }) {
  const { place } = now().look;
  if (plan.findings.length === 0) return null;
  return (
    <Section title={w.findings}>
      <ul class="findings">
        {plan.findings.map((f, i) => {
          const of = `${f.code}${i}`, on = place?.of === of;
          return (
            <li key={of}>
              <p><Told text={unbroken(f.text)} of={["seam", "ripple", "natch", "draft"]} /> <span class="hint">{unbroken(f.remedy)}</span></p>
              <button
                type="button" class="small" aria-pressed={on} aria-label={w.showPlaceOf(f.text)}
                onClick={() => { lookAt({ place: on ? null : { zFrom: f.zFrom, zTo: f.zTo, of } }); if (!on) reveal(".drawing"); }}
              >{w.showPlace}</button>
            </li>
          );
        })}
      </ul>
    </Section>
  );
}

function Flow({ plan }: { plan: Plan }) {
  const { air, slip, drains } = plan.flow;
  return (
    <Section title={w.flowTitle} of={["pocket"]}>
      <ul class="plainlist">
        {air.length === 0 && <li>{w.flowFills}</li>}
        {air.map((p, i) => <li key={`a${i}`}>{w.flowAir(withUnit(p.volume, "ml"), show(p.zFrom), withUnit(p.zTo, "mm"))}</li>)}
        {slip.map((p, i) => <li key={`s${i}`}>{w.flowSlip(withUnit(p.volume, "ml"), withUnit(p.zFrom, "mm"))}</li>)}
        {drains === null ? <li>{w.flowSolid}</li> : drains ? <li>{w.flowDrains}</li> : slip.length === 0 && <li>{w.flowFull}</li>}
      </ul>
    </Section>
  );
}
