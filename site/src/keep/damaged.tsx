// The window that offers what could be read of a damaged job: why it does not
// read, the rows that do, what was lost. Nothing is on the bench until it is taken.
import { useEffect, useRef } from "preact/hooks";
import { closed } from "../dialogs";
import { now, replace, say, set } from "../state";
import { w } from "../words";
import { Picture } from "./dialog";

export function DamagedFile() {
  const { damaged: d } = now();
  const box = useRef<HTMLDialogElement>(null);
  useEffect(() => { if (d) box.current?.showModal(); }, [d]);
  if (!d) return null;
  const take = () => {
    const words = () => w.keep.damagedStep(d.from);
    set({ damaged: null });
    say(words(), replace(d.job, words, "kept"));
  };
  return (
    <dialog ref={box} class="samples damaged" aria-labelledby="damaged" onClose={closed(() => set({ damaged: null }))}>
      <div class="group">
        <h2 id="damaged" tabIndex={-1} autofocus>{w.keep.damagedTitle(d.from)}</h2>
        <p class="bad">{d.fault.message}</p>
        <div class="found">
          <span class="stand"><Picture job={d.job} px={110} /></span>
          <p><b>{w.keep.damagedRows(d.job.form.outer.length)}</b> {w.keep.damagedSure}</p>
        </div>
        {d.notes.length > 0 && (
          <details class="more" open={d.notes.length < 4}>
            <summary>{w.keep.damagedLost}</summary>
            <ul class="plainlist">{d.notes.map((n, i) => <li key={i}>{n.message}</li>)}</ul>
          </details>
        )}
        <div class="actions">
          <button type="button" class="primary" onClick={take}>{w.keep.damagedTake}</button>
          <button type="button" onClick={() => set({ damaged: null })}>{w.keep.damagedLeave}</button>
        </div>
      </div>
    </dialog>
  );
}
