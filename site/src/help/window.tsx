// The window of help: the guided first job, and all words of the trade in their
// groups, which can be searched.
import { useEffect, useRef, useState } from "preact/hooks";
import { room } from "../class/room";
import { beside, closed } from "../dialogs";
import { Icon } from "../icons";
import { w } from "../words";
import { Explained } from "./card";
import { guided, start } from "./guide";
import { help, put } from "./store";
import { groupIds, groups, type TermId } from "./terms";

export function HelpButton() {
  return <button type="button" aria-haspopup="dialog" onClick={() => put({ open: true, at: null })}><Icon name="help" />{w.help.open}</button>;
}

export function HelpWindow() {
  const { open, at } = help(), box = useRef<HTMLDialogElement>(null), [sought, seek] = useState("");
  useEffect(() => {
    const el = box.current!;
    if (open && !el.open) {
      seek("");
      el.showModal();
    }
    if (open && at) {
      const word = document.getElementById(`word-${at}`);
      word?.scrollIntoView({ block: "start" });
      word?.focus({ preventScroll: true });
    }
  }, [open, at]);
  // at the key already: the event of the closing may come after the next opening
  const shut = () => put({ open: false, at: null });
  const found = (id: TermId) => {
    const t = w.help.terms[id], s = sought.trim().toLowerCase();
    return s === "" || [t.name, ...t.forms, ...t.says].some((x) => x.toLowerCase().includes(s));
  };
  const shown = groupIds.map((g) => [g, groups[g].filter(found)] as const).filter(([, ids]) => ids.length > 0);
  return (
    <dialog ref={box} class="help-window" aria-labelledby="help-title" onCancel={shut} onClose={closed(shut)} onClick={beside}>
      {open && (
        <div class="group">
          <div class="head"><h2 id="help-title">{w.help.title}</h2><button type="button" onClick={() => box.current?.close()}>{w.close}</button></div>
          {!guided() && !room().inside && (
            <div class="offer">
              <p><b>{w.guide.title}.</b> {w.guide.again}</p>
              <div class="actions"><button type="button" class="primary" onClick={() => { box.current?.close(); start(); }}>{w.guide.start}</button></div>
            </div>
          )}
          <div class="head">
            <h3>{w.help.wordsTitle}</h3>
            <input type="text" aria-label={w.help.find} placeholder={w.help.find} value={sought} onInput={(e) => seek(e.currentTarget.value)} />
          </div>
          <p class="hint">{w.help.wordsHint}</p>
          {shown.map(([g, ids]) => (
            <section key={g}>
              <h4>{w.help.groups[g]}</h4>
              <ul class="words">
                {ids.map((id) => (
                  <li key={id} id={`word-${id}`} tabIndex={-1}><h5>{w.help.terms[id].name}</h5><Explained id={id} /></li>
                ))}
              </ul>
            </section>
          ))}
          <p role="status">{shown.length === 0 ? w.help.foundNone : ""}</p>
        </div>
      )}
    </dialog>
  );
}
