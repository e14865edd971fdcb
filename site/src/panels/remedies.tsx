// Small changes of one place that save a part: looked for when asked, each with
// what it does and a button that makes it.
import { useState } from "preact/hooks";
import type { Remedy } from "../contract";
import { Section } from "../fields";
import { coreOf, lookAt, make, now, parse, reveal, say } from "../state";
import { language, type Language, w } from "../words";

export function Remedies() {
  const { job, look } = now();
  const [found, setFound] = useState<{ of: unknown; in: Language; list: Remedy[] } | null>(null);
  const find = async () => {
    const a = await coreOf().ask("remedies", { job });
    const reply = a && parse<{ remedies: Remedy[] }>(a.reply);
    if (!reply) return;
    if ("error" in reply) say(reply.error.message);
    else setFound({ of: job, in: language, list: reply.remedies });
  };
  const list = found?.of === job && found.in === language ? found.list : null;
  return (
    <Section title={w.remediesTitle}>
      {list === null ? <div class="actions"><button type="button" onClick={() => void find()}>{w.remediesFind}</button></div>
        : list.length === 0 ? <p role="status">{w.remediesNone}</p> : (
          <ul class="findings">
            {list.map((r, i) => {
              const of = `remedy${i}`, on = look.place?.of === of;
              return (
                <li key={i}>
                  <p>{r.text} <b>{r.remedy}</b></p>
                  <div class="actions">
                    <button type="button" class="small" onClick={() => make(() => w.remedyStep(w.remedyCodes[r.code] ?? r.code), (j) => { Object.assign(j, r.job); })}>{w.remedyTake}</button>
                    <button type="button" class="small" aria-pressed={on} onClick={() => { lookAt({ place: on ? null : { zFrom: r.zFrom, zTo: r.zTo, of } }); if (!on) reveal(".drawing"); }}>{w.showPlace}</button>
                  </div>
                </li>
              );
            })}
          </ul>
        )}
    </Section>
  );
}
