// One question under work: its drawing with the handles it needs, the answer,
// Check, the help that may be had, and the way on.
import { useState } from "preact/hooks";
import { unbroken } from "../numbers";
import { say } from "../state";
import { useRested } from "../rested";
import { w } from "../words";
import { AnswerField } from "./answer";
import { Asked } from "./asked";
import { Feedback, MarkLine, pictures } from "./feedback";
import { FormNodes, Marks, Seam } from "./handles";
import { heightOf, highest, typedHeight } from "./height";
import { useLive, useShape } from "./live";
import { Plane } from "./plane";
import type { Session, Work } from "./room";
import { another, check, done, draft, full, goTo, hint, maySolve, open, solve } from "./session";
import type { Answer, Marked, Question } from "./types";
import { nearest } from "./wall";

/** How far from the wall a touch still means it, px. */
const REACH = 34;

export function QuestionPage({ s, q, work }: { s: Session; q: Question; work: Work }) {
  const [node, pick] = useState(1), [still, hold] = useState(false);
  const types = q.answer.map((f) => f.type), saves = types.includes("job");
  const job = saves ? work.draft.job ?? q.job : null;
  const live = useLive(q, job), solved = useShape(saves ? work.solution?.answer.job ?? null : null);
  // what is drafted at the moment of an event, which may be ahead of what is drawn
  const latest = (): Answer => open()?.work.draft ?? work.draft;
  const marksNow = () => latest().marks ?? [], jobNow = () => latest().job ?? q.job;
  const marks = work.draft.marks ?? [], answer = work.draft, practice = s.practice !== null, last = s.at === s.questions.length - 1;
  const list = saves && !work.solution ? live.marked?.pictures ?? [] : pictures(work);
  const line = work.solution ? typedHeight(work.solution.answer) : null;
  const height = types.includes("number") && q.drawing.show.includes("handles");
  const tap = types.includes("marks") ? (r: number, z: number, v: { k: number }) => {
    const p = nearest(q.drawing.contour, r, z);
    if (p.off * v.k > REACH) return say(w.class.touchWall);
    if (marksNow().length < (q.answer[0]?.most ?? Infinity)) draft({ marks: [...marksNow(), { r: p.r, z: p.z }], choices: {} });
  } : undefined;
  const move = (i: number, r: number, z: number) => {
    const of = jobNow();
    draft({ job: { ...of, form: { ...of.form, outer: of.form.outer.map((o, k) => (k === i ? { ...o, r: Math.max(0, r), z } : o)) } } });
  };
  return (
    <main class="exercise">
      <div class="exercise-text"><Asked q={q} heading={practice ? w.class.practice : w.class.question(s.at + 1, s.questions.length)} /></div>
      <div class="exercise-drawing">
        <Plane
          shape={q.drawing} name={q.name} wall={saves ? live.shape?.contour : undefined} pulls={answer.choices} still={still}
          heights={work.hints[work.hints.length - 1]?.heights ?? []} picture={list[work.picture] ?? list[0]} tap={tap}
        >
          {(v) => (
            <>
              {solved && <path class="ghost" d={`M${solved.contour.map(([r, z]) => `${v.x0 + r * v.k} ${v.y0 - z * v.k}`).join("L")}`} />}
              {height && line !== null && <path class="solved" d={`M${v.x0 - v.block * v.k} ${v.y0 - line * v.k}H${v.x0 + v.block * v.k}`} />}
              {height && <Seam v={v} z={typedHeight(answer)} now={() => typedHeight(latest())} high={highest(q)} hold={hold} set={(z) => draft(heightOf(z))} />}
              {saves && live.shape && <FormNodes v={v} shape={live.shape} job={job!} now={jobNow} node={node} pick={pick} move={move} hold={hold} />}
              {work.solution?.answer.marks && <Marks v={v} wall={q.drawing.contour} marks={work.solution.answer.marks} />}
              {types.includes("marks") && <Marks v={v} wall={q.drawing.contour} marks={marks} change={(f) => draft({ marks: f(marksNow()) })} />}
            </>
          )}
        </Plane>
      </div>
      <div class="exercise-work">
        <form onSubmit={(e) => { e.preventDefault(); void check(); }}>
          {q.answer.map((f) => <AnswerField key={f.id} field={f} answer={answer} question={q} node={node} pick={pick} />)}
          {saves && (work.tries.length === 0 || work.tries[work.tries.length - 1]?.job !== answer.job) && <LiveLine live={live} />}
          <details class="counts"><summary>{w.class.tolerance}</summary><p>{unbroken(q.tolerance)}</p></details>
          <Buttons s={s} q={q} work={work} />
        </form>
        <Feedback work={work} />
        <div class="actions on">
          {practice ? <button type="button" onClick={() => goTo(s.at)}>{w.class.backTo(s.at + 1)}</button>
            : s.at > 0 && <button type="button" onClick={() => goTo(s.at - 1)}>{w.class.previous}</button>}
          {(done(work) || work.tries.length > 0) && <button type="button" onClick={() => void another()}>{w.class.another}</button>}
          {!practice && <button type="button" class={done(work) ? "primary" : ""} onClick={() => goTo(s.at + 1)}>{last ? w.class.finish : w.class.next}</button>}
        </div>
      </div>
    </main>
  );
}

function Buttons({ s, q, work }: { s: Session; q: Question; work: Work }) {
  const open = maySolve(work), hints = work.hints.length;
  return (
    <div class="actions">
      <button type="submit" class={done(work) ? "" : "primary"} aria-disabled={done(work) || full(work)}>{w.class.check}</button>
      {s.set.hints && <button type="button" disabled={hints >= q.hints} onClick={() => void hint()}>{w.class.hint(hints + 1, q.hints)}</button>}
      {s.set.solutions && <button type="button" disabled={!open || work.solution !== null} onClick={() => void solve()}>{open ? w.class.solution : w.class.solutionAfter}</button>}
      {full(work) && <p class="hint">{w.class.mostTries}</p>}
    </div>
  );
}

/** The judgement of the form as it stands: seen at once, said once it rests. */
function LiveLine({ live }: { live: { marked: Marked | null; bad: string } }) {
  const said = useRested(live.bad || live.marked?.words || "");
  return (
    <section class="live-line">
      <div aria-hidden="true">
        <b class="hint">{w.class.live}</b>
        {live.bad ? <p class="bad">{live.bad}</p> : live.marked ? <MarkLine marked={live.marked} live /> : <p class="hint">{w.class.working}</p>}
      </div>
      <p class="away" role="status">{said && w.pair(w.class.live, said)}</p>
    </section>
  );
}
