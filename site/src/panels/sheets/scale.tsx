// A printer that makes 100 mm into something else: the measured lengths of the
// two bars go to the core, which draws the sheet larger or smaller by as much.
import { useState } from "preact/hooks";
import { useId } from "../../ids";
import { typed, read, withUnit } from "../../numbers";
import { w } from "../../words";

const LEAST = 90, MOST = 110;

export function PrintScale({ x, y, put }: { x: number; y: number; put: (x: number, y: number) => void }) {
  const on = x !== 100 || y !== 100;
  return (
    <details class="rows" open={on || undefined}>
      <summary>{w.scaleTitle}</summary>
      <p class="hint">{w.scaleHint}</p>
      <div class="row">
        <BarField label={w.barAcross} value={x} put={(v) => put(v, y)} />
        <BarField label={w.barUp} value={y} put={(v) => put(x, v)} />
      </div>
      <p role="status">{on && w.scaleOn(withUnit(x, "mm", 1), withUnit(y, "mm", 1))}</p>
      {on && <button type="button" class="small" onClick={() => put(100, 100)}>{w.scaleOff}</button>}
    </details>
  );
}

function BarField({ label, value, put }: { label: string; value: number; put: (v: number) => void }) {
  const id = useId();
  const [draft, setDraft] = useState<string | null>(null);
  const of = (t: string) => { const v = read(t, true); return v !== null && v >= LEAST && v <= MOST ? v : null; };
  const bad = draft !== null && of(draft) === null;
  return (
    <div class="field">
      <label for={id}>{label}</label>
      <span class="field-box">
        <input
          id={id} type="text" inputMode="decimal" autocomplete="off" size={6} value={draft ?? typed(value)}
          aria-invalid={bad ? "true" : undefined} aria-describedby={bad ? id + "m" : undefined}
          onInput={(e) => { setDraft(e.currentTarget.value); const v = of(e.currentTarget.value); if (v !== null) put(v); }}
          onBlur={() => { if (!bad) setDraft(null); }}
        />
        <span class="unit">mm</span>
      </span>
      {bad && <span class="bad" id={id + "m"}>{w.scaleBad}</span>}
    </div>
  );
}
