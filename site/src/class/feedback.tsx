// What the core says of an answer: the mark in words with its reason, the
// pictures of what sticks, hints, and the worked solution. The region that holds
// the mark is always there, so that a screen reader hears what comes into it.
import { useEffect, useRef } from "preact/hooks";
import { unbroken } from "../numbers";
import { w } from "../words";
import type { Work } from "./room";
import { pickPicture } from "./session";
import { Sign } from "./sign";
import type { Marked, Picture } from "./types";

export function Feedback({ work }: { work: Work }) {
  const { marked, unread } = work, box = useRef<HTMLDivElement>(null);
  useSeen(box, "[role=status]", `${work.tries.length} ${unread}`);
  useSeen(box, ".hint-help:nth-last-child(1 of .hint-help)", work.hints.length);
  useSeen(box, ".help.solution", work.solution !== null);
  return (
    <div class="feedback" ref={box}>
      <div role="status" aria-live="polite">
        {unread ? <p class="unread">{unbroken(unread)}</p> : marked && <MarkLine marked={marked} key={work.tries.length} />}
      </div>
      <Pictures work={work} />
      {work.hints.map((h) => <section key={h.level} class="help hint-help"><h3>{w.class.hintTitle(h.level)}</h3><p>{unbroken(h.words)}</p></section>)}
      {work.solution && (
        <section class="help solution">
          <h3>{w.class.solutionTitle}</h3>
          <p><b>{unbroken(sentence(work.solution.short))}</b></p>
          <ol>{work.solution.steps.map((s, i) => <li key={i}>{unbroken(s)}</li>)}</ol>
          {work.solution.slips.length > 0 && (
            <details><summary>{w.class.slips}</summary><ul class="plainlist">{work.solution.slips.map((s, i) => <li key={i}>{unbroken(s)}</li>)}</ul></details>
          )}
        </section>
      )}
    </div>
  );
}

/** Brings what has just come into sight, wherever the page was scrolled to. */
function useSeen(box: { current: HTMLElement | null }, what: string, when: unknown): void {
  const first = useRef(true);
  useEffect(() => {
    if (!first.current) box.current?.querySelector(what)?.scrollIntoView({ block: "nearest" });
    first.current = false;
  }, [when]);
}

export function MarkLine({ marked, live = false }: { marked: Marked; live?: boolean }) {
  const word = w.class.marks[marked.mark]!;
  const said = marked.words.toLowerCase().startsWith(word);
  return (
    <div class={`mark-line ${marked.mark}${live ? " live" : ""}`}>
      <Sign mark={marked.mark} size={26} />
      <div>
        <p>{!said && <b>{sentence(word)} </b>}{unbroken(marked.words)}</p>
        {marked.details.length > 1 && (
          <ul>{marked.details.map((d, i) => <li key={i}><Sign mark={d.mark} size={14} /><span><span class="away">{w.pair(w.class.marks[d.mark]!, "")}</span>{unbroken(d.words)}</span></li>)}</ul>
        )}
      </div>
    </div>
  );
}

/** What stands alone as a sentence. */
export const sentence = (s: string): string => (s ? s[0]!.toUpperCase() + s.slice(1) + (/[.!?°%]$/.test(s) ? "" : ".") : "");

/** The pictures that may be drawn: those of the solution, else of the mark. */
export const pictures = (work: Work): Picture[] => (work.solution?.pictures.length ? work.solution.pictures : work.marked?.pictures ?? []);

function Pictures({ work }: { work: Work }) {
  const list = pictures(work), p = list[work.picture] ?? list[0];
  if (!p) return null;
  return (
    <section class="help">
      <h3>{w.class.picture}</h3>
      {list.length > 1 && (
        <div class="choices" role="group" aria-label={w.class.picture}>
          {list.map((q, i) => <button key={i} type="button" class="small" aria-pressed={q === p} onClick={() => pickPicture(i)}>{w.class.pictureOf(i + 1, list.length)}</button>)}
        </div>
      )}
      <p>{unbroken(p.words)}</p>
      <p class="hint key"><span class="swatch caught" aria-hidden="true" /> {w.class.legendCaught} <span class="swatch moved" aria-hidden="true" /> {w.class.legendMoved} <span class="swatch block" aria-hidden="true">×</span> {w.class.legendBlock}</p>
    </section>
  );
}
