// Exercise mode: the page shows one exercise and nothing of the bench. First the
// title and a name, then question after question, then the sheet to hand in.
import { useEffect, useRef, useState } from "preact/hooks";
import { Icon } from "../icons";
import { LanguageSwitch } from "../language-switch";
import { w } from "../words";
import { Line } from "./fields";
import { HandIn } from "./handin";
import { QuestionPage } from "./question";
import { room, type Session } from "./room";
import { goTo, keptHere, leave, open, start, title } from "./session";
import { Sign } from "./sign";

export function ExerciseMode() {
  const { session: s } = room();
  if (!s) return <><header class="exercise-head"><h1>{w.title}</h1></header><main class="exercise-start"><p>{w.class.opening}</p></main></>;
  const o = open();
  return (
    <>
      <header class="exercise-head">
        <h1>{title(s.set)}</h1>
        {s.trial ? <span class="hint">{w.class.trial}</span> : s.at >= 0 && <span class="hint">{s.student}</span>}
        <LanguageSwitch />
        <button type="button" onClick={leave}>{s.trial ? w.class.leavePreview : w.class.leave}</button>
      </header>
      {s.at >= 0 && <Progress s={s} />}
      {s.at < 0 ? <Start s={s} /> : o ? <QuestionPage key={`${s.at} ${o.question.code} ${o.question.ref.seed}`} s={s} q={o.question} work={o.work} /> : <HandIn s={s} />}
      <FocusOn at={`${s.at} ${s.practice?.question.code ?? ""}`} />
    </>
  );
}

/** On every new page of the exercise its heading is where the keyboard stands. */
function FocusOn({ at }: { at: string }) {
  const first = useRef(true);
  useEffect(() => {
    if (!first.current) document.getElementById("asked")?.focus({ preventScroll: true });
    first.current = false;
  }, [at]);
  return null;
}

function Start({ s }: { s: Session }) {
  const [name, setName] = useState(""), [bad, setBad] = useState("");
  const before = keptHere();
  const begin = () => {
    if (!name.trim()) return setBad(w.class.nameWanted);
    void start(name.trim(), null);
  };
  return (
    <main class="exercise-start">
      {s.set.note && <p class="note">{s.set.note}</p>}
      <p>{w.class.count(s.questions.length)} {w.class.helps(s.set.hints, s.set.solutions)} {w.class.noTimer}</p>
      {before.length > 0 && (
        <div class="actions">
          {before.map((k, i) => <button key={k.key} type="button" class={i ? "wraps" : "wraps primary"} onClick={() => void start(k.what.student, k)}>{w.class.resume(k.what.student)}<Icon name="next" /></button>)}
        </div>
      )}
      {before.length > 0 && <p class="hint">{w.class.anew}</p>}
      <form onSubmit={(e) => { e.preventDefault(); begin(); }}>
        <Line label={w.class.name} hint={w.class.nameHint} value={name} most={80} autocomplete="name" bad={bad} set={(v) => { setName(v); setBad(""); }} />
        <button type="submit" class={before.length ? "" : "primary"}>{w.class.start}</button>
      </form>
      <p class="honest">{s.honest}</p>
    </main>
  );
}

function Progress({ s }: { s: Session }) {
  const n = s.questions.length;
  return (
    <nav class="exercise-progress" aria-label={w.class.progress}>
      <ol>
        {s.work.map((k, i) => {
          const mark = k.marked?.mark ?? "none";
          return (
            <li key={i}>
              <button type="button" aria-current={s.at === i ? "step" : undefined} aria-label={w.class.toQuestion(i + 1, w.class.marks[mark]!)} onClick={() => goTo(i)}>
                {i + 1}<Sign mark={mark} size={14} />
              </button>
            </li>
          );
        })}
        <li><button type="button" aria-current={s.at === n ? "step" : undefined} onClick={() => goTo(n)}>{w.class.toSheet}</button></li>
      </ol>
    </nav>
  );
}
