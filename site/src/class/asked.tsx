// A question as it is put: its text, what is given and what counts; also as a
// teacher looks at it.
import { Told } from "../help/term";
import { unbroken } from "../numbers";
import { w } from "../words";
import type { Question } from "./types";

export function Asked({ q, heading }: { q: Question; heading: string }) {
  return (
    <section class="asked-text">
      <p class="hint heading">{heading}{q.code && <> · <span class="code">{q.code}</span></>}</p>
      <h2 id="asked" tabIndex={-1}>{q.title}</h2>
      <p class="text"><Told text={unbroken(q.text)} of={["catch", "rub", "draft", "trap", "partingLine", "seam", "pull", "slip", "shrinkage", "foot"]} /></p>
      {q.given.length > 0 && <ul class="plainlist given">{q.given.map((g, i) => <li key={i}>{unbroken(g)}</li>)}</ul>}
    </section>
  );
}

export const nameOf = (q: Question): string => (q.own ? `${q.name} (${w.class.onBench})` : q.name);
