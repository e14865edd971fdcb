// The Parts panel: every scheme with its verdict and why, the one that is used,
// where it parts, and the order in which the mold comes apart.
import type { Plan, Scheme } from "../contract";
import { Check, Choice, NumberField, Section } from "../fields";
import { Icon } from "../icons";
import { mass, show } from "../numbers";
import { look } from "../parts-look";
import { edit, now, settle } from "../state";
import { partName } from "../verdict";
import { w } from "../words";

export function PartsPanel({ plan }: { plan: Plan }) {
  const { job } = now();
  const use = (id: string, name: string) => {
    edit(w.chose(name), "", (j) => {
      j.mold.scheme = id;
      j.mold.partingHeights = null;
    });
    settle();
  };
  return (
    <>
      <Section title={w.schemes}>
        <ul class="schemes">
          <li>
            <label><input type="radio" name="scheme" checked={job.mold.scheme === "auto"} onChange={() => use("auto", w.auto.toLowerCase())} />
              <span class="what"><b>{w.auto}</b><span class="hint">{w.autoHint}</span></span></label>
          </li>
          {plan.schemes.map((s) => <SchemeRow key={s.id} s={s} on={job.mold.scheme === s.id} used={plan.chosen === s.id} advised={plan.advised === s.id} use={() => use(s.id, s.name)} />)}
        </ul>
      </Section>
      {plan.whyNotFewer && <Section title={w.whyTitle}><p>{plan.whyNotFewer}</p></Section>}
      <Heights plan={plan} />
      <Section title={w.order}>
        <ol class="order">
          {plan.order.map((name) => <li key={name}><Tag name={name} />{partName(name)}</li>)}
        </ol>
      </Section>
      <Block />
    </>
  );
}

interface RowProps { s: Scheme; on: boolean; used: boolean; advised: boolean; use: () => void }

function SchemeRow({ s, on, used, advised, use }: RowProps) {
  return (
    <li class={used ? "on" : ""}>
      <label>
        <input type="radio" name="scheme" checked={on} onChange={use} />
        <span class="what"><b>{w.parts(s.count)}:</b> {s.name} {used ? <em>{w.chosen}</em> : advised && <em>{w.advised}</em>}</span>
        <span class={`badge ${s.verdict}`}><Icon name={s.verdict} />{w.verdict[s.verdict]}</span>
        <span class="num">{mass(s.plaster)}</span>
        {s.verdict !== "clear" && <span class="hint">{sentence(s.against)}</span>}
      </label>
    </li>
  );
}

const sentence = (s: string): string => (s ? s[0]!.toUpperCase() + s.slice(1) + "." : "");

export function Tag({ name }: { name: string }) {
  const l = look(name);
  return <span class="tag" style={{ borderColor: l.colour }} aria-hidden="true">{l.letter}</span>;
}

function Heights({ plan }: { plan: Plan }) {
  const { job } = now();
  const used = plan.schemes.find((s) => s.id === plan.chosen)?.partingHeights ?? [];
  return (
    <div class="row">
      {used.map((z, i) => (
        <NumberField
          key={i} length label={used.length > 1 ? `${w.heights} ${i + 1}` : w.heights} unit="mm" field={`mold.partingHeights[${i}]`}
          value={job.mold.partingHeights?.[i] ?? null}
          empty={{ words: show(z, 1), set: (j) => { j.mold.partingHeights = null; } }}
          set={(j, x) => { j.mold.partingHeights = used.map((u, k) => (k === i ? x : j.mold.partingHeights?.[k] ?? u)); }}
        />
      ))}
      <Choice
        label={w.sides} value={String(job.mold.sides ?? "")} options={[["", w.sidesAuto], ["2", "2"], ["3", "3"], ["4", "4"]]}
        pick={(v) => { edit(w.changed(w.sides.toLowerCase()), "", (j) => { j.mold.sides = v ? Number(v) : null; }); settle(); }}
      />
    </div>
  );
}

function Block() {
  const { job } = now();
  return (
    <div class="row">
      <NumberField length label={w.plasterWall} unit="mm" field="plaster.wall" value={job.plaster.wall} set={(j, x) => { j.plaster.wall = x; }} />
      <NumberField length label={w.plasterBase} unit="mm" field="plaster.base" value={job.plaster.base} set={(j, x) => { j.plaster.base = x; }} />
      <NumberField
        length label={w.spare} unit="mm" field="mold.spare.height" value={job.mold.spare?.height ?? null}
        empty={{ words: w.none, set: (j) => { j.mold.spare = null; } }} set={(j, x) => { j.mold.spare = { height: x }; }}
      />
      <NumberField
        length label={w.fillHole} unit="mm" field="mold.fillHole" value={job.mold.fillHole}
        empty={{ words: w.heightsAuto, set: (j) => { j.mold.fillHole = null; } }} set={(j, x) => { j.mold.fillHole = x; }}
      />
      <NumberField
        length label={w.drainHole} unit="mm" field="mold.drainHole" value={job.mold.drainHole}
        empty={{ words: w.none, set: (j) => { j.mold.drainHole = null; } }} set={(j, x) => { j.mold.drainHole = x; }}
      />
      <Check label={w.natches} hint={w.natchesHint} value={job.mold.natches} pick={(v) => { edit(w.changed(w.natches.toLowerCase()), "", (j) => { j.mold.natches = v; }); settle(); }} />
    </div>
  );
}
