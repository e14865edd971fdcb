// What stands on the bench while the Class panel is open: the question that the
// teacher looks at, with its answer when asked for, or the table of results.
import { useEffect, useState } from "preact/hooks";
import { typed } from "../numbers";
import { w } from "../words";
import { exercise } from "./ask";
import { Asked } from "./asked";
import { sentence } from "./feedback";
import { Marks } from "./handles";
import { Plane } from "./plane";
import { room } from "./room";
import { Sign } from "./sign";
import type { Question, Solution, Table } from "./types";

/** Whether there is anything of the class to show in place of the drawing. */
export const onClassBench = (): boolean => {
  const { looked, table, questions } = room();
  return looked === "table" ? table !== null : looked !== null && questions[looked] !== undefined;
};

export function ClassBench() {
  const { looked, table, questions } = room();
  if (looked === "table" && table) return <Results table={table} />;
  const q = typeof looked === "number" ? questions[looked] : undefined;
  return q ? <Looked key={`${q.code} ${q.name} ${q.kind} ${q.ref.seed}`} q={q} n={(looked as number) + 1} of={questions.length} /> : null;
}

function Looked({ q, n, of }: { q: Question; n: number; of: number }) {
  const [key, setKey] = useState<Solution | null>(null), [on, show] = useState(false);
  useEffect(() => {
    if (on && !key) void exercise<Solution>({ do: "solve", ...q.ref, key: true }).then((s) => { if (!("error" in s)) setKey(s); });
  }, [on]);
  const seen = on ? key : null;
  return (
    <section class="class-look" aria-label={w.class.question(n, of)}>
      <Asked q={q} heading={w.class.question(n, of)} />
      <Plane shape={q.drawing} name={q.name} pulls={seen?.answer.choices} picture={seen?.pictures[0]}>
        {(v) => seen?.answer.marks && <Marks v={v} wall={q.drawing.contour} marks={seen.answer.marks} />}
      </Plane>
      <div class="class-key">
        <button type="button" aria-expanded={on} onClick={() => show(!on)}>{on ? w.class.hideKey : w.class.showKey}</button>
        {seen && <p><b>{sentence(seen.short)}</b> {seen.steps[seen.steps.length - 1]}</p>}
      </div>
    </section>
  );
}

function Results({ table: t }: { table: Table }) {
  const { files } = room(), read = files.filter((_, i) => t.bad.every((b) => b.index !== i)), codes = t.columns.every((c, i) => c !== String(i + 1));
  return (
    <section class="results" aria-label={w.class.table}>
      <h2>{w.class.table}</h2>
      <p role="status">{w.class.collected(t.rows.length)}</p>
      {t.bad.length > 0 && (
        <div class="bad-files" role="alert">
          <b>{w.class.bad(t.bad.length)}</b>
          <ul class="plainlist">{t.bad.map((b) => <li key={b.index}>{w.pair(w.source(files[b.index]!.from), b.fault?.message ?? "")}</li>)}</ul>
        </div>
      )}
      {t.rows.length > 0 && (
        <div class="wide" tabIndex={0} role="region" aria-label={w.class.table}>
          <table>
            <thead>
              <tr>
                <th scope="col">{w.class.student}</th>
                <th scope="col" class="num">{w.class.score}</th>
                {t.columns.map((c, i) => <th key={i} scope="col">{i + 1}{codes && <span class="code">{c}</span>}</th>)}
              </tr>
            </thead>
            <tbody>
              {t.rows.map((r, i) => (
                <tr key={i}>
                  <th scope="row">{r.student || w.source(read[i]!.from)}{r.notes.map((n, k) => <span key={k} class="hint">{n}</span>)}</th>
                  <td class="num">{w.class.of(typed(r.score), r.of)}</td>
                  {t.columns.map((_, k) => {
                    const c = r.cells[k];
                    return (
                      <td key={k}>{c && (
                        <span class={`cell ${c.mark}`}><Sign mark={c.mark} /><span>{w.class.marks[c.mark]}
                          <span class="hint">{[c.tries > 0 && w.class.tries(c.tries), c.hints > 0 && w.class.hintsTaken(c.hints), !codes && c.label].filter(Boolean).join(", ")}</span></span></span>
                      )}</td>
                    );
                  })}
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
      <p class="honest">{t.honest}</p>
    </section>
  );
}
