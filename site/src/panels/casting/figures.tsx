// Casting figures as the core words them: label, value, unit, and a small "how"
// that opens formula, source and how far to trust it. Labels and sources come
// with the rows; values come with the plan, so that no figure is ever shown of
// another job than the rest of the page.
import { useEffect, useState } from "preact/hooks";
import type { Figures, Job, Row } from "../../contract";
import { useId } from "../../ids";
import { mass, show, volume, withUnit } from "../../numbers";
import { coreOf, parse } from "../../state";
import { language, w } from "../../words";

interface Of { rows: Row[]; casting: Figures }

let last: Row[] = [];

/** The rows of a job; those of the last one until they are there. */
export function useRows(job: Job): Row[] {
  const [rows, setRows] = useState(last);
  useEffect(() => {
    let gone = false;
    void coreOf().ask("figures", { job }).then((a) => {
      const reply = a && parse<{ rows: Row[] }>(a.reply);
      if (!gone && reply && !("error" in reply)) setRows(last = reply.rows);
    });
    return () => { gone = true; };
  }, [job, language]);
  return rows;
}

const valueOf = (r: Row, casting: Figures): number => (typeof casting[r.key] === "number" ? casting[r.key] as number : r.value);

function text(r: Row, x: number): string {
  if (r.unit === "") return show(x, r.digits);
  if (r.unit === "×") return `× ${show(x, r.digits)}`;
  return withUnit(x, r.unit, r.digits);
}

/** The figures of these keys, in this order, as far as they apply. */
export function Figs({ rows, casting, keys }: Of & { keys: string[] }) {
  const list = keys.flatMap((k) => rows.filter((r) => r.key === k));
  if (list.length === 0) return null;
  return <dl class="figures">{list.map((r) => <Fig key={r.key} r={r} value={text(r, valueOf(r, casting))} />)}</dl>;
}

function Fig({ r, value }: { r: Row; value: string }) {
  const [open, setOpen] = useState(false);
  const id = useId();
  return (
    <div>
      <dt>{r.label}</dt>
      <dd>{value}<button type="button" class="how-button" aria-expanded={open} aria-controls={id} aria-label={w.howOf(r.label)} onClick={() => setOpen(!open)}>{w.how}</button></dd>
      <dd class="how-text" id={id} hidden={!open}>
        <span>{r.formula}</span>
        <span>{w.pair(w.figureSource, r.source)}. <b>{r.status}</b></span>
      </dd>
    </div>
  );
}

/** The rest of a group, folded away. */
export function More({ rows, casting, group, but }: Of & { group: string; but: string[] }) {
  const rest = rows.filter((r) => r.group === group && !but.includes(r.key));
  if (rest.length === 0) return null;
  return (
    <details class="more">
      <summary>{w.pair(rest[0]!.heading, w.more(rest.length))}</summary>
      <Figs rows={rows} casting={casting} keys={rest.map((r) => r.key)} />
    </details>
  );
}

const large: Record<string, (x: number) => string> = { g: mass, ml: volume };

/** The few figures to have in mind, large. */
export function Glance({ rows, casting, keys }: Of & { keys: string[] }) {
  const list = keys.flatMap((k) => rows.filter((r) => r.key === k));
  return (
    <dl class="figures glance" aria-label={w.glance}>
      {list.map((r) => {
        const x = valueOf(r, casting);
        const digits = r.unit === "min" ? 0 : r.digits;
        return <div key={r.key}><dt>{w.glanceNames[r.key]}</dt><dd>{large[r.unit]?.(x) ?? text({ ...r, digits }, x)}</dd></div>;
      })}
    </dl>
  );
}
