// The guided first job in its place under the bench, where else the next step
// stands: what to do, whether it is done, the way on and the way out. It lies in
// the page's own flow and covers nothing; on a narrow screen it keeps to the foot.
import { useEffect, useRef } from "preact/hooks";
import { Icon } from "../icons";
import { now } from "../state";
import { w } from "../words";
import { bringBack, close, end, guided, next, notice, offering, pointed, refuse, start, steps } from "./guide";

export function GuideBar() {
  const g = guided(), box = useRef<HTMLElement>(null);
  useEffect(notice);
  useEffect(() => { if (g) box.current?.focus({ preventScroll: true }); }, [g !== null]);
  useEffect(() => {
    const el = pointed();
    if (!el) return;
    el.setAttribute("data-pointed", "");
    return () => el.removeAttribute("data-pointed");
  });
  if (!g) return null;
  const step = steps[g.at]!, words = w.guide.steps[step.id], n = steps.length, job = now().job;
  const said = g.ended ? w.guide[g.ended] : g.done ? words.seen : words.todo;
  return (
    <section class="guide" aria-label={w.guide.title} tabIndex={-1} ref={box}>
      <div role="status" aria-live="polite" aria-atomic="true">
        <p class="hint">{w.guide.title}{!g.ended && <> · {w.guide.step(g.at + 1, n)}</>}{g.done && !g.ended && <b class="tick"><Icon name="clear" />{w.guide.done}</b>}</p>
        <p>{said}</p>
      </div>
      {g.ended ? (
        <div class="actions">
          {job !== g.before && <button type="button" onClick={bringBack}>{w.guide.back(g.before.name)}</button>}
          <button type="button" class="primary" onClick={close}>{job !== g.before ? w.guide.keep : w.close}</button>
        </div>
      ) : (
        <div class="actions">
          {g.done ? <button type="button" class="primary" onClick={next}>{g.at + 1 < n ? w.guide.next : w.guide.finish}<Icon name="next" /></button>
            : <><button type="button" onClick={show}>{w.guide.show}</button><button type="button" onClick={next}>{w.guide.skip}</button></>}
          <button type="button" onClick={() => end("left")}>{w.guide.leave}</button>
        </div>
      )}
    </section>
  );
}

/** Takes the eye and the focus to what the step is about. */
function show(): void {
  const el = pointed() as HTMLElement | null;
  el?.scrollIntoView({ block: "center", inline: "nearest" });
  el?.focus({ preventScroll: true });
}

/** On a first visit, once: a quiet line at the head of the Form panel. */
export function GuideOffer() {
  if (!offering()) return null;
  return (
    <div class="offer">
      <p>{w.guide.offer}</p>
      <div class="actions">
        <button type="button" class="small" onClick={start}>{w.guide.start}</button>
        <button type="button" class="small" onClick={refuse}>{w.guide.notNow}</button>
      </div>
    </div>
  );
}
