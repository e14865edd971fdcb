// Input fields. A number field keeps what was typed while it is no number yet,
// says so under the field, and passes every good number on at once; leaving the
// field ends the step of undo. A fault of the core that names the field shows
// under it too.
import type { ComponentChildren } from "preact";
import { useState } from "preact/hooks";
import type { Job } from "./contract";
import { useId } from "./ids";
import { plain, read } from "./numbers";
import { edit, now, settle } from "./state";
import { following, w } from "./words";

interface NumberProps {
  label: string;
  value: number | null;
  unit?: string;
  /** Path in the job, as faults name it. */
  field: string;
  set: (j: Job, x: number) => void;
  /** Where an empty field means something: what, and how to say it to the job. */
  empty?: { words: string; set: (j: Job) => void };
  length?: boolean;
  hint?: string;
  bare?: boolean;
}

export function NumberField(p: NumberProps) {
  const id = useId();
  const [draft, setDraft] = useState<string | null>(null);
  const bad = draft !== null && !(draft.trim() === "" && p.empty) && read(draft, p.length) === null;
  const fault = now().faults.find((f) => f.field === p.field)?.message ?? null;
  const message = bad ? w.notNumber : fault;
  const label = following(p.label), words = () => w.changed(label());
  const input = (
    <span class="field-box">
      <input
        id={id} type="text" inputMode="decimal" autocomplete="off" size={6}
        value={draft ?? (p.value === null ? "" : plain(p.value))}
        placeholder={p.empty?.words ?? ""}
        aria-label={p.bare ? p.label : undefined}
        aria-invalid={message ? "true" : undefined}
        aria-describedby={message ? id + "m" : p.hint ? id + "h" : undefined}
        onInput={(e) => {
          const text = e.currentTarget.value;
          setDraft(text);
          if (text.trim() === "" && p.empty) return edit(words, p.field, p.empty.set);
          const x = read(text, p.length);
          if (x !== null) edit(words, p.field, (j) => p.set(j, x));
        }}
        onBlur={() => { if (!bad) setDraft(null); settle(); }}
        onKeyDown={(e) => { if (e.key === "Escape") setDraft(null); }}
      />
      {p.unit && <span class="unit">{p.unit}</span>}
    </span>
  );
  const note = message && <span class="bad" id={id + "m"}>{message}</span>;
  if (p.bare) return <>{input}{note}</>;
  return (
    <div class="field">
      <label for={id}>{p.label}</label>
      {input}
      {p.hint && <span class="hint" id={id + "h"}>{p.hint}</span>}
      {note}
    </div>
  );
}

interface ChoiceProps<T extends string> {
  label: string;
  value: T;
  options: readonly (readonly [T, string])[];
  pick: (v: T) => void;
}

export function Choice<T extends string>(p: ChoiceProps<T>) {
  const id = useId();
  return (
    <div class="field">
      <label for={id}>{p.label}</label>
      <select id={id} value={p.value} onChange={(e) => p.pick(e.currentTarget.value as T)}>
        {p.options.map(([v, words]) => <option key={v} value={v} selected={v === p.value}>{words}</option>)}
      </select>
    </div>
  );
}

export function Check(p: { label: string; hint?: string; value: boolean; pick: (v: boolean) => void }) {
  const id = useId();
  return (
    <div class="field check">
      <input id={id} type="checkbox" checked={p.value} onChange={(e) => p.pick(e.currentTarget.checked)} />
      <label for={id}>{p.label}{p.hint && <span class="hint">{p.hint}</span>}</label>
    </div>
  );
}

export function Section(p: { title: string; children: ComponentChildren }) {
  return <section class="group"><h3>{p.title}</h3>{p.children}</section>;
}
