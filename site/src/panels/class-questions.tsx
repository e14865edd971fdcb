// The questions of the set in their order: look at one, move it, draw another in
// its place, take it out.
import { put, room } from "../class/room";
import { change, drawOther, move } from "../class/teacher";
import { w } from "../words";

export function ClassQuestions() {
  const { questions, looked } = room();
  const last = questions.length - 1;
  return (
    <ol class="set-list">
      {questions.map((q, i) => {
        const level = q.own ? w.class.onBench : w.class.levels[q.ref.difficulty ?? 1]!;
        return (
          <li key={`${i} ${q.code} ${q.name} ${q.ref.seed}`} class={looked === i ? "on" : ""}>
            <button type="button" class="look" aria-pressed={looked === i} onClick={() => put({ looked: looked === i ? null : i })}>
              <span class="n">{i + 1}</span>
              <span><b>{q.title}</b><span class="hint">{w.class.about(q.name, level)}{q.code && <> · <span class="code">{q.code}</span></>}</span></span>
            </button>
            <span class="acts">
              <button type="button" class="small" aria-label={w.class.otherOf(i + 1)} title={w.class.other} onClick={() => drawOther(i)}>⟳</button>
              <button type="button" class="small" aria-label={w.class.up(i + 1)} disabled={i === 0} onClick={() => move(i, -1)}>↑</button>
              <button type="button" class="small" aria-label={w.class.down(i + 1)} disabled={i === last} onClick={() => move(i, 1)}>↓</button>
              <button type="button" class="small" aria-label={w.class.drop(i + 1)} onClick={() => change(i)}>−</button>
            </span>
          </li>
        );
      })}
    </ol>
  );
}
