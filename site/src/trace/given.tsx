// A field for a number that is said of the picture, not of the job: kept as
// typed while it is no number yet; empty means not known.
import { useId, useState } from "preact/hooks";
import { typed, read } from "../numbers";
import { w } from "../words";

interface Props {
  label: string; value: number | null; put: (x: number | null) => void;
  unit?: string; empty?: string; hint?: string; autofocus?: boolean; big?: boolean;
}

export function Given(p: Props) {
  const id = useId();
  const [draft, setDraft] = useState<string | null>(null);
  const parsed = draft === null || draft.trim() === "" ? null : read(draft, p.unit === "mm");
  const bad = draft !== null && draft.trim() !== "" && parsed === null;
  return (
    <div class={`field${p.big ? " big" : ""}`}>
      <label for={id}>{p.label}</label>
      <span class="field-box">
        <input
          id={id} type="text" inputMode="decimal" autocomplete="off" size={8} placeholder={p.empty ?? ""}
          value={draft ?? (p.value === null ? "" : typed(p.value))}
          aria-invalid={bad ? "true" : undefined} aria-describedby={bad ? id + "m" : p.hint ? id + "h" : undefined}
          onInput={(e) => {
            const text = e.currentTarget.value;
            setDraft(text);
            if (text.trim() === "") return p.put(null);
            const x = read(text, p.unit === "mm");
            if (x !== null) p.put(x);
          }}
          onBlur={() => { if (!bad) setDraft(null); }}
        />
        {p.unit && <span class="unit">{p.unit}</span>}
      </span>
      {p.hint && <span class="hint" id={id + "h"}>{p.hint}</span>}
      {bad && <span class="bad" id={id + "m"}>{w.notNumber}</span>}
    </div>
  );
}
