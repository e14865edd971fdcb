// Small inputs of the class that belong to no job: a number that is passed on as
// soon as it reads, and a line of text.
import { useState } from "preact/hooks";
import { useId } from "../ids";
import { type Nudge, useNudge } from "../nudge";
import { typed, read } from "../numbers";
import { w } from "../words";

interface NumberProps { label: string; value: number | null; unit: string; placeholder?: string; nudge?: Nudge; set: (x: number | null) => void }

/** A length in mm; empty is null. */
export function Length(p: NumberProps) {
  const id = useId();
  const [draft, setDraft] = useState<string | null>(null);
  const bad = draft !== null && draft.trim() !== "" && read(draft, true) === null;
  const stepper = useNudge(p.nudge, p.value, (x) => { setDraft(null); p.set(x); });
  return (
    <span class="asked-length">
      <label for={id}>{p.label}</label>
      <span class="field-box">
        {stepper(-1, "−")}
        <input
          id={id} type="text" inputMode="decimal" autocomplete="off" size={6} placeholder={p.placeholder ?? ""}
          value={draft ?? (p.value === null || !Number.isFinite(p.value) ? "" : typed(p.value))}
          aria-invalid={bad ? "true" : undefined} aria-describedby={bad ? id + "m" : undefined}
          onInput={(e) => {
            const text = e.currentTarget.value;
            setDraft(text);
            if (text.trim() === "") return p.set(null);
            const x = read(text, true);
            if (x !== null) p.set(x);
          }}
          onBlur={() => { if (!bad) setDraft(null); }}
        />
        {stepper(1, "+")}
        <span class="unit">{p.unit}</span>
      </span>
      {bad && <span class="bad" id={id + "m"}>{w.notNumber}</span>}
    </span>
  );
}

interface TextProps { label: string; hint?: string; value: string; most: number; set: (v: string) => void; bad?: string; autocomplete?: string }

export function Line(p: TextProps) {
  const id = useId();
  return (
    <div class="field line">
      <label for={id}>{p.label}</label>
      <input
        id={id} type="text" value={p.value} maxLength={p.most} autocomplete={p.autocomplete ?? "off"}
        aria-invalid={p.bad ? "true" : undefined} aria-describedby={p.bad ? id + "m" : p.hint ? id + "h" : undefined}
        onInput={(e) => p.set(e.currentTarget.value)}
      />
      {p.hint && <span class="hint" id={id + "h"}>{p.hint}</span>}
      {p.bad && <span class="bad" id={id + "m"} role="alert">{p.bad}</span>}
    </div>
  );
}
