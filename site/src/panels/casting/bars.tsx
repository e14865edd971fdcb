// Shrinkage from test bars: lengths in, percents out by the core, and one button
// to put them into the job. The lengths are a slip of paper beside the job and
// are kept while the page is open.
import { useEffect, useState } from "preact/hooks";
import { useId } from "../../ids";
import { show, read, withUnit } from "../../numbers";
import { coreOf, edit, now, parse, say, settle } from "../../state";
import { language, w } from "../../words";

const marks = ["wet", "dry", "fired"] as const;
type Bar = Record<(typeof marks)[number], string>;
interface Shrinkage { drying: number; firing: number; total: number; spread: number }

let kept: Bar[] = [{ wet: "", dry: "", fired: "" }];

/** A bar's lengths as numbers; null while one is missing or is none. */
function lengths(b: Bar): Record<keyof Bar, number> | null {
  const [wet, dry, fired] = marks.map((m) => read(b[m]));
  return wet != null && dry != null && fired != null ? { wet, dry, fired } : null;
}

export function Bars() {
  const { clay } = now().job;
  const [bars, setBars] = useState(kept);
  const [out, setOut] = useState<{ of: string; sum: Shrinkage | null; bad: { message: string; bar: number; mark: string } | null } | null>(null);
  const id = useId();
  const whole = bars.map(lengths).filter((b) => b !== null);
  const asked = JSON.stringify(whole);
  const put = (next: Bar[]) => setBars(kept = next);
  useEffect(() => {
    if (asked === "[]") return setOut(null);
    let gone = false;
    void coreOf().ask("bars", { bars: JSON.parse(asked) as object }).then((a) => {
      if (gone || !a) return;
      const reply = parse<Shrinkage>(a.reply);
      if ("error" in reply) {
        const bar = bars.flatMap((b, i) => (lengths(b) ? [i] : []))[(reply.error.line ?? 1) - 1] ?? 0;
        setOut({ of: asked, sum: null, bad: { message: reply.error.message, bar, mark: reply.error.field?.split(".").pop() ?? "" } });
      } else setOut({ of: asked, sum: reply, bad: null });
    });
    return () => { gone = true; };
  }, [asked, language]);
  const sum = out?.of === asked ? out.sum : null, bad = out?.of === asked ? out.bad : null;
  const same = sum && Math.abs(sum.drying - clay.dryingShrinkage) < 0.005 && Math.abs(sum.firing - clay.firingShrinkage) < 0.005;
  const use = () => {
    if (!sum) return;
    edit(() => w.barsUsed, "", (j) => {
      j.clay.dryingShrinkage = Math.round(sum.drying * 100) / 100;
      j.clay.firingShrinkage = Math.round(sum.firing * 100) / 100;
    });
    settle();
    say(w.barsSaid, true);
  };
  return (
    <div class="bars">
      <p class="hint">{w.barsHint}</p>
      <table class="trials">
        <thead><tr><td />{marks.map((m) => <th key={m} scope="col">{w.barNames[m]}</th>)}<td /></tr></thead>
        <tbody>
          {bars.map((b, i) => (
            <tr key={i}>
              <th scope="row">{w.bar(i + 1)}</th>
              {marks.map((m) => {
                const wrong = (b[m].trim() !== "" && read(b[m]) === null) || (bad?.bar === i && bad.mark === m);
                return (
                  <td key={m}><span class="field-box"><input
                    type="text" inputMode="decimal" autocomplete="off" size={5} aria-label={w.barLength(i + 1, w.barNames[m])} value={b[m]}
                    aria-invalid={wrong ? "true" : undefined} aria-describedby={wrong ? id : undefined}
                    onInput={(e) => put(bars.map((x, k) => (k === i ? { ...x, [m]: e.currentTarget.value } : x)))}
                  /></span></td>
                );
              })}
              <td class="num">{bars.length > 1 && <button type="button" class="small" aria-label={w.removeBar(i + 1)} onClick={() => put(bars.filter((_, k) => k !== i))}>−</button>}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <div class="actions">
        <button type="button" class="small" onClick={() => put([...bars, { wet: bars.at(-1)!.wet, dry: "", fired: "" }])}>{w.addBar}</button>
        {sum && !same && <button type="button" class="small primary" onClick={use}>{w.barsUse}</button>}
      </div>
      <p id={id} role="status" class={bad ? "bad" : ""}>
        {bad ? w.pair(w.bar(bad.bar + 1), bad.message) : sum && (
          <>
            {w.barsResult(withUnit(sum.drying, "%", 2), withUnit(sum.firing, "%", 2), withUnit(sum.total, "%", 2))}
            {whole.length > 1 && ` ${w.barsSpread(show(sum.spread, 2) + "\u00a0%", whole.length)}`}
            {same && ` ${w.barsInUse}`}
          </>
        )}
      </p>
    </div>
  );
}
