// The Parts panel: every scheme with its verdict and why, the one that is used,
// where it parts, the mold taken apart in its order, and the cut across the axis.
import type { Plan, Scheme } from "../contract";
import { Choice, NumberField, Section } from "../fields";
import type { Said } from "../history";
import { Icon } from "../icons";
import { mass, show, unbroken } from "../numbers";
import { look } from "../parts-look";
import { edit, lookAt, now, reveal, settle } from "../state";
import { chosen } from "../verdict";
import { w } from "../words";
import { Order } from "./apart";
import { CrossSection } from "./section";

/** So many stand in a list before the rest of it is folded. */
const FEW = 3;

export function PartsPanel({ plan }: { plan: Plan }) {
  const { job } = now();
  const use = (id: string, words: Said) => {
    edit(words, "", (j) => {
      j.mold.scheme = id;
      j.mold.partingHeights = null;
    });
    settle();
    lookAt({ scheme: null, apart: 0 });
  };
  const { count } = chosen(plan), row = (s: Scheme) => (
    <SchemeRow key={s.id} s={s} on={job.mold.scheme === s.id} used={plan.chosen === s.id} advised={plan.advised === s.id} use={() => use(s.id, () => w.chose(s.name))} />
  );
  const more = plan.schemes.filter((s) => s.count > count), fold = more.length > FEW ? more : [];
  // where there is room, all stand open; one that is looked at or taken is never hidden
  const open = !matchMedia("(max-width: 56.25em)").matches || fold.some((s) => [now().look.scheme, job.mold.scheme, plan.advised].includes(s.id));
  return (
    <>
      <Section title={w.schemes} of={["partingLine"]}>
        <ul class="schemes">
          <li>
            <label><input type="radio" name="scheme" checked={job.mold.scheme === "auto"} onChange={() => use("auto", () => w.choseAuto)} />
              <span class="what"><b>{w.auto}</b><span class="hint">{w.autoHint}</span></span></label>
          </li>
          {plan.schemes.filter((s) => !fold.includes(s)).map(row)}
        </ul>
        {fold.length > 0 && (
          <details class="more" open={open}>
            <summary>{w.moreParts(fold.length)}</summary>
            <ul class="schemes">{fold.map(row)}</ul>
          </details>
        )}
      </Section>
      {plan.whyNotFewer && <Section title={w.whyTitle}><WhyNotFewer plan={plan} /></Section>}
      <Heights plan={plan} />
      <Order plan={plan} />
      <CrossSection plan={plan} />
    </>
  );
}

interface RowProps { s: Scheme; on: boolean; used: boolean; advised: boolean; use: () => void }

function SchemeRow({ s, on, used, advised, use }: RowProps) {
  const seen = now().look.scheme === s.id;
  return (
    <li class={used ? "on" : ""}>
      <label>
        <input type="radio" name="scheme" checked={on} onChange={use} />
        <span class="what"><b>{w.parts(s.count)}</b> {s.name} {used ? <em>{w.chosen}</em> : advised && <em>{w.advised}</em>}</span>
        <span class={`badge ${s.verdict}`}><Icon name={s.verdict} />{w.verdict[s.verdict]}</span>
        <span class="num">{mass(s.plaster)}</span>
        {s.verdict !== "clear" && <span class="hint">{sentence(s.against)}</span>}
      </label>
      {s.verdict !== "clear" && !used && (
        <button type="button" class="small show" aria-pressed={seen} aria-label={w.pair(w.whyShow, s.name)} onClick={() => { lookAt({ scheme: seen ? null : s.id, apart: 0 }); if (!seen) reveal(".drawing"); }}>{w.whyShow}</button>
      )}
    </li>
  );
}

/** What stands against each scheme with fewer parts; in one sentence where there is none or one. */
function WhyNotFewer({ plan }: { plan: Plan }) {
  const fewer = plan.schemes.filter((s) => s.count < chosen(plan).count);
  if (fewer.length < 2) return <p>{unbroken(plan.whyNotFewer)}</p>;
  const line = (s: Scheme) => <li key={s.id}><b>{sentence(s.name)}</b> {sentence(s.against)}</li>;
  const first = fewer.length > FEW + 1 ? FEW : fewer.length;
  return (
    <>
      <ul class="plainlist">{fewer.slice(0, first).map(line)}</ul>
      {first < fewer.length && <details class="more"><summary>{w.moreFewer(fewer.length - first)}</summary><ul class="plainlist">{fewer.slice(first).map(line)}</ul></details>}
    </>
  );
}

const sentence = (s: string): string => (s ? unbroken(s[0]!.toUpperCase() + s.slice(1)) + "." : "");

export function Tag({ name }: { name: string }) {
  const l = look(name);
  return <span class="tag" style={{ borderColor: l.colour }} aria-hidden="true">{l.letter}</span>;
}

/** Where the parts meet, typed; the drawing has a handle on each seam. */
function Heights({ plan }: { plan: Plan }) {
  const { job } = now();
  const used = plan.schemes.find((s) => s.id === plan.chosen)?.partingHeights ?? [];
  const sides: [string, string][] = [["", w.sidesAuto], ...["2", "3", "4", "6"].map((n): [string, string] => [n, n])];
  return (
    <Section title={w.heightsTitle} of={["seam"]}>
      <div class="row">
        {used.map((z, i) => {
          const label = used.length > 1 ? w.heightOf(i + 1) : w.heights;
          return <NumberField
            key={i} nudge={{ words: [w.pair(label, w.nudgeDown), w.pair(label, w.nudgeUp)], least: 0, start: z }} length label={label} unit="mm" field={`mold.partingHeights[${i}]`}
            value={job.mold.partingHeights?.[i] ?? null}
            empty={{ words: show(z, 1), set: (j) => { j.mold.partingHeights = null; } }}
            set={(j, x) => { j.mold.scheme = plan.chosen; j.mold.partingHeights = used.map((u, k) => (k === i ? x : j.mold.partingHeights?.[k] ?? u)); }}
          />;
        })}
        <Choice
          ask="side" label={w.sides} value={String(job.mold.sides ?? "")} options={sides}
          pick={(v) => { edit(() => w.changed(w.sides), "", (j) => { j.mold.sides = v ? Number(v) : null; }); settle(); }}
        />
      </div>
      {job.mold.partingHeights && (
        <div class="actions"><button type="button" onClick={() => { edit(() => w.seamsFreed, "", (j) => { j.mold.partingHeights = null; }); settle(); }}>{w.seamFree}</button></div>
      )}
      {used.length > 0 && <p class="hint">{w.seamHint}</p>}
    </Section>
  );
}
