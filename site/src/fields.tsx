// Input fields. A number field keeps what was typed while it is no number yet,
// says so under the field, and passes every good number on at once; leaving the
// field ends the step of undo. A fault of the core that names the field shows
// under it too.
import type { ComponentChildren } from "preact";
import { useState } from "preact/hooks";
import type { Job } from "./contract";
import { Term, Told } from "./help/term";
import type { TermId } from "./help/terms";
import { useId } from "./ids";
import { type Nudge, useNudge } from "./nudge";
import { typed, read } from "./numbers";
import { edit, now, settle } from "./state";
import { following, w } from "./words";

interface NumberProps {
  label: string;
  value: number | null;
  unit?: string;
  /** The label in the language of the page when it is asked, where a value stands in it. */
  named?: () => string;
  /** Path in the job, as faults name it. */
  field: string;
  set: (j: Job, x: number) => void;
  /** Where an empty field means something: what, and how to say it to the job. */
  empty?: { words: string; set: (j: Job) => void };
  length?: boolean;
  hint?: string;
  bare?: boolean;
  /** Where its like is dragged on the drawing: buttons beside it. */
  nudge?: Nudge;
  /** The word of the trade that its label stands for. */
  ask?: TermId | undefined;
}

export function NumberField(p: NumberProps) {
  const id = useId();
  const [draft, setDraft] = useState<string | null>(null);
  const bad = draft !== null && !(draft.trim() === "" && p.empty) && read(draft, p.length) === null;
  const fault = now().faults.find((f) => f.field === p.field)?.message ?? null;
  const message = bad ? w.notNumber : fault;
  /** What a step of undo is called: the table of words is searched when one is made. */
  const said = () => { const label = p.named ?? following(p.label); return () => w.changed(label().replace(/, mm$/, "")); };
  const stepper = useNudge(p.nudge, p.value, (x) => { setDraft(null); edit(said(), p.field, (j) => p.set(j, x)); }, settle);
  const input = (
    <span class="field-box">
      {stepper(-1, "−")}
      <input
        id={id} type="text" inputMode="decimal" autocomplete="off" size={6}
        value={draft ?? (p.value === null ? "" : typed(p.value))}
        placeholder={p.empty?.words ?? ""}
        aria-label={p.bare ? p.label : undefined}
        aria-invalid={message ? "true" : undefined}
        aria-describedby={message ? id + "m" : p.hint ? id + "h" : undefined}
        onInput={(e) => {
          const text = e.currentTarget.value;
          setDraft(text);
          if (text.trim() === "" && p.empty) return edit(said(), p.field, p.empty.set);
          const x = read(text, p.length);
          if (x !== null) edit(said(), p.field, (j) => p.set(j, x));
        }}
        onBlur={() => { if (!bad) setDraft(null); settle(); }}
        onKeyDown={(e) => { if (e.key === "Escape") setDraft(null); }}
      />
      {stepper(1, "+")}
      {p.unit && <span class="unit">{p.unit}</span>}
    </span>
  );
  const note = message && <span class="bad" id={id + "m"}>{message}</span>;
  if (p.bare) return <>{input}{note}</>;
  return (
    <div class="field">
      <Label id={id} label={p.label} ask={p.ask} />
      {input}
      {p.hint && <span class="hint" id={id + "h"}>{p.hint}</span>}
      {note}
    </div>
  );
}

/** A label, with the mark by which its word can be asked. */
function Label({ id, label, ask }: { id: string; label: string; ask?: TermId | undefined }) {
  if (!ask) return <label for={id}>{label}</label>;
  return <span class="labelled"><label for={id}>{label}</label><Term of={ask} word={label} mark /></span>;
}

interface ChoiceProps<T extends string> {
  label: string;
  value: T;
  options: readonly (readonly [T, string])[];
  pick: (v: T) => void;
  ask?: TermId;
}

export function Choice<T extends string>(p: ChoiceProps<T>) {
  const id = useId();
  return (
    <div class="field">
      <Label id={id} label={p.label} ask={p.ask} />
      <select id={id} value={p.value} onChange={(e) => p.pick(e.currentTarget.value as T)}>
        {p.options.map(([v, words]) => <option key={v} value={v} selected={v === p.value}>{words}</option>)}
      </select>
    </div>
  );
}

export function Check(p: { label: string; hint?: string; value: boolean; pick: (v: boolean) => void; ask?: TermId }) {
  const id = useId();
  return (
    <div class="field check">
      <input id={id} type="checkbox" checked={p.value} onChange={(e) => p.pick(e.currentTarget.checked)} />
      <label for={id}>{p.label}{p.hint && <span class="hint">{p.hint}</span>}</label>
      {p.ask && <Term of={p.ask} word={p.label} mark />}
    </div>
  );
}

/** A part of a panel under its title, in which words of the trade can be asked. */
export function Section(p: { title: string; of?: readonly TermId[]; children: ComponentChildren }) {
  return <section class="group">{p.of ? <h3 aria-label={p.title}><Told text={p.title} of={p.of} always /></h3> : <h3>{p.title}</h3>}{p.children}</section>;
}
