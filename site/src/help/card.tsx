// The card that explains one word beside the place it was asked from: words, a
// picture, and where it stands in this job. Escape and a press elsewhere close
// it, and the focus goes back; on a narrow screen it is a sheet at the foot.
import { useLayoutEffect, useRef } from "preact/hooks";
import { room } from "../class/room";
import { now } from "../state";
import { w } from "../words";
import { pictures } from "./pictures";
import { Sketch } from "./sketch";
import { help, put } from "./store";
import { here, type TermId } from "./terms";

const GAP = 8, NARROW = "(max-width: 37.5em)";

/** The words, the picture and the place of one word. */
export function Explained({ id }: { id: TermId }) {
  const { job, plan, planned } = now(), t = w.help.terms[id];
  const at = plan && planned === job && !room().inside ? here(id, job, plan) : null;
  return (
    <div class="explained">
      <Sketch id={`sketch-${id}`}>{pictures[id](`sketch-${id}`)}</Sketch>
      <div>
        {t.says.map((s) => <p key={s}>{s}</p>)}
        {at && <p class="here"><b>{w.help.here}</b> {at}</p>}
      </div>
    </div>
  );
}

export function HelpCard() {
  const { asked } = help(), box = useRef<HTMLDivElement>(null), shown = useRef(asked);
  useLayoutEffect(() => {
    const el = box.current!;
    shown.current = asked;
    if (!asked) {
      if (el.matches(":popover-open")) el.hidePopover();
      return;
    }
    el.showPopover();
    place(el, asked.from);
    el.focus({ preventScroll: true });
    const again = () => place(el, asked.from);
    addEventListener("resize", again);
    return () => removeEventListener("resize", again);
  }, [asked]);
  useLayoutEffect(() => {
    const el = box.current!;
    const toggled = (e: Event) => {
      if ((e as ToggleEvent).newState !== "closed") return;
      const { asked } = help();
      if (document.activeElement === document.body) asked?.from.focus({ preventScroll: true });
      // the event comes a task after the closing: another word may have been asked by then
      if (asked && asked === shown.current) put({ asked: null });
    };
    el.addEventListener("toggle", toggled);
    return () => el.removeEventListener("toggle", toggled);
  }, []);
  return (
    <div ref={box} class="help-card" popover="auto" role="dialog" tabIndex={-1} aria-labelledby="help-word">
      {asked && (
        <>
          <div class="head">
            <h2 id="help-word">{w.help.terms[asked.id].name}</h2>
            <button type="button" class="small" onClick={() => box.current!.hidePopover()}>{w.close}</button>
          </div>
          <Explained id={asked.id} />
          <button type="button" class="small" onClick={() => { const at = asked.id; box.current!.hidePopover(); put({ asked: null, open: true, at }); }}>{w.help.allWords}</button>
        </>
      )}
    </div>
  );
}

/** Under the word, or above it where there is no room; within the window. */
function place(el: HTMLElement, from: HTMLElement): void {
  if (matchMedia(NARROW).matches) {
    el.style.left = el.style.top = "";
    const under = from.getBoundingClientRect().bottom + GAP - (innerHeight - el.offsetHeight);
    if (under > 0) scrollBy(0, under);
    return;
  }
  const at = from.getBoundingClientRect(), { offsetWidth: wide, offsetHeight: high } = el;
  const left = Math.max(GAP, Math.min(at.left - 12, innerWidth - wide - GAP));
  const below = at.bottom + GAP, above = at.top - GAP - high;
  el.style.left = `${left}px`;
  el.style.top = `${below + high <= innerHeight - GAP || above < GAP ? Math.max(GAP, Math.min(below, innerHeight - high - GAP)) : above}px`;
}
