// The controls of an answer, one for each field that a question asks for. What
// can be dragged on the drawing can be typed here.
import { useState } from "preact/hooks";
import { Length } from "./fields";
import { useId } from "../ids";
import { useNudge } from "../nudge";
import { hundredth } from "../numbers";
import { w } from "../words";
import { heightOf, highest, typedHeight } from "./height";
import { draft } from "./session";
import type { Answer, Field, Place, Question } from "./types";

interface Props { field: Field; answer: Answer; question: Question; node: number; pick: (i: number) => void }

export function AnswerField(p: Props) {
  switch (p.field.type) {
    case "marks": return <MarksField {...p} />;
    case "number": return <NumberAnswer {...p} />;
    case "choice": return <ChoiceField {...p} />;
    case "job": return <FormField {...p} />;
  }
}

const round = (m: Place): Place => ({ ...(m.r === undefined ? {} : { r: hundredth(m.r) }), z: hundredth(m.z) });

function MarksField({ field, answer }: Props) {
  const marks = answer.marks ?? [], none = answer.choices?.[field.id] === "none";
  const [z, setZ] = useState<number | null>(null), [r, setR] = useState<number | null>(null);
  const set = (change: (m: Place[]) => Place[]) => draft((now) => ({ marks: change(now.marks ?? []).map(round) }));
  const full = marks.length >= (field.most ?? Infinity);
  const put = (i: number, m: Partial<Place>) => set((all) => all.map((o, k) => (k === i ? { ...o, ...m } : o)));
  return (
    <fieldset class="marks-field">
      <legend>{field.words}</legend>
      <p class="hint">{w.class.marksHint}</p>
      {marks.length > 0 && (
        <div class="put-list">
          {marks.map((m, i) => (
            <div key={i} role="group" aria-label={w.class.mark(i + 1)}>
              <b>{i + 1}</b>
              <Length label={w.class.heightZ} unit="mm" value={m.z} set={(x) => { if (x !== null) put(i, { z: x }); }} />
              <Length label={w.class.radiusR} unit="mm" value={m.r ?? null} placeholder="" set={(x) => set((all) => all.map((o, k) => (k !== i ? o : x === null ? { z: o.z } : { r: x, z: o.z })))} />
              <button type="button" class="small" aria-label={w.class.removeMark(i + 1)} onClick={() => set((all) => all.filter((_, k) => k !== i))}>−</button>
            </div>
          ))}
        </div>
      )}
      <details class="type-mark">
        <summary>{w.class.typeMark}</summary>
        <div class="row">
          <Length label={w.class.heightZ} unit="mm" value={z} set={setZ} />
          <Length label={w.class.radiusEmpty} unit="mm" value={r} set={setR} />
          <button
            type="button" disabled={z === null || full}
            onClick={() => { set((all) => [...all, r === null ? { z: z! } : { r, z: z! }]); setZ(null); setR(null); }}
          >{w.class.addMark}</button>
        </div>
      </details>
      {full && <p class="hint">{w.class.fullMarks}</p>}
      {field.options?.map((o) => (
        <label key={o.id} class="tick"><input
          type="checkbox" checked={none}
          onChange={(e) => { const on = e.currentTarget.checked; draft((now) => ({ choices: on ? { ...now.choices, [field.id]: o.id } : {} })); }}
        />{o.words}</label>
      ))}
    </fieldset>
  );
}

function NumberAnswer({ field, answer, question }: Props) {
  const id = useId(), drags = question.drawing.show.includes("handles");
  const most = highest(question); // empty, it begins halfway: the line lies at the foot, many clicks away
  const stepper = useNudge(drags ? { words: [w.nudgeDown, w.nudgeUp], least: 0, most, start: Math.round(most / 2) } : undefined, typedHeight(answer), (z) => draft(heightOf(z)));
  return (
    <div class="number-answer">
      <label for={id}>{field.words}</label>
      <div class="actions">
        {stepper(-1, "−")}
        <input
          id={id} type="text" inputMode="text" autocomplete="off" size={8} value={answer.value ?? ""}
          aria-describedby={drags ? id + "h" : undefined} onInput={(e) => draft({ value: e.currentTarget.value })}
        />
        {stepper(1, "+")}
        <select aria-label={w.class.unit} value={answer.unit ?? ""} onChange={(e) => draft({ unit: e.currentTarget.value })}>
          <option value="">{w.class.unitAsk}</option>
          {field.units?.map((u) => <option key={u} value={u} selected={answer.unit === u}>{u}</option>)}
        </select>
      </div>
      {drags && <p class="hint" id={id + "h"}>{w.class.heightHint}</p>}
    </div>
  );
}

function ChoiceField({ field, answer }: Props) {
  const short = (field.options ?? []).filter((o) => o.words.length < 3).length > 2, name = useId();
  return (
    <fieldset class={`choice-answer${short ? " short" : ""}`}>
      <legend>{field.words}</legend>
      {field.options?.map((o) => (
        <label key={o.id} class="tick"><input
          type="radio" name={name} checked={answer.choices?.[field.id] === o.id}
          onChange={() => draft((now) => ({ choices: { ...now.choices, [field.id]: o.id } }))}
        />{o.words}</label>
      ))}
    </fieldset>
  );
}

/** The node to change, typed. */
function FormField({ field, answer, question, node, pick }: Props) {
  const job = answer.job ?? question.job, outer = job.form.outer, n = outer[node] ?? outer[0]!, id = useId();
  const move = (to: { r?: number; z?: number }) => draft(({ job: now = question.job }) => ({ job: { ...now, form: { ...now.form, outer: now.form.outer.map((o, i) => (i === node ? { ...o, ...to } : o)) } } }));
  return (
    <fieldset class="form-answer">
      <legend>{field.words}</legend>
      <p class="hint">{w.class.formHint}</p>
      <div class="row">
        <span class="asked-length">
          <label for={id}>{w.class.pickNode}</label>
          <select id={id} value={String(node)} onChange={(e) => pick(Number(e.currentTarget.value))}>
            {outer.map((_, i) => <option key={i} value={String(i)} selected={i === node}>{i + 1}</option>)}
          </select>
        </span>
        <Length key={`r${node}`} label={w.class.radiusR} unit="mm" value={n.r} nudge={{ words: [w.nudgeIn, w.nudgeOut], least: 0 }} set={(x) => { if (x !== null) move({ r: Math.max(0, x) }); }} />
        <Length key={`z${node}`} label={w.class.heightZ} unit="mm" value={n.z} nudge={{ words: [w.nudgeDown, w.nudgeUp] }} set={(x) => { if (x !== null) move({ z: x }); }} />
      </div>
      <div class="actions"><button type="button" class="small" disabled={!answer.job} onClick={() => draft({ job: question.job })}>{w.class.formBack}</button></div>
    </fieldset>
  );
}
