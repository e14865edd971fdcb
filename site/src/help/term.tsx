// A word that can be asked: in running text a dotted underline, after the label
// of a field, where a touch belongs to the field, a question mark.
import type { JSX } from "preact";
import { useRef } from "preact/hooks";
import { w } from "../words";
import { help, put } from "./store";
import type { TermId } from "./terms";

/** The word, or the mark after it. */
export function Term({ of, word, mark = false }: { of: TermId; word?: string; mark?: boolean }) {
  const { name } = w.help.terms[of], shown = word ?? name;
  // a press outside the card closes it, so that one on its own word must not open it again, though the page may be drawn anew meanwhile
  const wasOpen = useRef(false);
  return (
    <button
      type="button" class={mark ? "ask-mark" : "term"} aria-label={mark ? undefined : w.help.ask(shown)} aria-haspopup="dialog" data-term={of}
      onPointerDown={() => { wasOpen.current = help().asked?.id === of; }}
      onClick={(e) => {
        e.preventDefault();
        if (!wasOpen.current || e.detail === 0) put({ asked: { id: of, from: e.currentTarget } });
        wasOpen.current = false;
      }}
    >{mark ? <><span class="away">{w.help.ask(shown)}</span><span class="sign" aria-hidden="true">?</span></> : shown}</button>
  );
}

const letters = /[\p{L}\p{N}]/u;

/** Where one of the forms stands in the text as a word of its own, the longest
 *  form first. */
function find(text: string, forms: readonly string[]): [number, number] | null {
  const low = text.toLowerCase();
  for (const form of [...forms].sort((a, b) => b.length - a.length)) {
    for (let at = low.indexOf(form.toLowerCase()); at >= 0; at = low.indexOf(form.toLowerCase(), at + 1)) {
      const end = at + form.length;
      if (!letters.test(text[at - 1] ?? " ") && !letters.test(text[end] ?? " ")) return [at, end];
    }
  }
  return null;
}

/** Text in which the first standing of each of the words can be asked; a word
 *  that does not stand in it follows as a mark, if it must always be there. */
export function Told({ text, of, always = false }: { text: string; of: readonly TermId[]; always?: boolean }) {
  const marks = of.flatMap((id) => {
    const at = find(text, w.help.terms[id].forms);
    return at ? [{ id, from: at[0], to: at[1] }] : [];
  }).sort((a, b) => a.from - b.from);
  const out: (JSX.Element | string)[] = [];
  let done = 0;
  for (const m of marks) {
    if (m.from < done) continue;
    out.push(text.slice(done, m.from), <Term key={m.id} of={m.id} word={text.slice(m.from, m.to)} />);
    done = m.to;
  }
  const missing = always ? of.filter((id) => !marks.some((m) => m.id === id)) : [];
  if (missing.length === 0) return <>{out}{text.slice(done)}</>;
  const last = Math.max(done, text.lastIndexOf(" ") + 1); // a mark stands on one line with the word before it
  return <>{out}{text.slice(done, last)}<span class="marked">{text.slice(last)}{missing.map((id) => <Term key={id} of={id} mark />)}</span></>;
}
