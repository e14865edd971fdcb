// The sheet of a student: every question with its mark, the score, and the file
// to hand in.
import { useEffect, useState } from "preact/hooks";
import { download, fileName } from "../files";
import { Icon } from "../icons";
import { typed } from "../numbers";
import { w } from "../words";
import { exercise } from "./ask";
import type { Session } from "./room";
import { goTo, resultRequest, saveResult, title } from "./session";
import { Sign } from "./sign";
import { sheet } from "./teacher";
import type { Result } from "./types";

export function HandIn({ s }: { s: Session }) {
  const [result, setResult] = useState<Result | null>(null), [pdf, setPdf] = useState<Uint8Array[] | null>(null);
  useEffect(() => {
    void exercise<{ result: Result; text: string }>(resultRequest(s)).then((r) => {
      if ("error" in r) return;
      setResult(r.result);
      void sheet("result", { result: r.result }).then(setPdf);
    });
  }, [s.work]);
  return (
    <main class="exercise-sheet">
      <h2 id="asked" tabIndex={-1}>{s.student ? w.class.sheetOf(s.student) : w.class.sheet}</h2>
      <p>{title(s.set)}</p>
      {result && <p class="score">{w.class.scoreLine(typed(result.score), result.of)}</p>}
      <p class="hint">{w.class.scoreHint}</p>
      <ol class="sheet-list">
        {s.questions.map((q, i) => {
          const k = s.work[i]!, mark = result?.answers[i]?.mark ?? k.marked?.mark ?? "none";
          return (
            <li key={i}>
              <Sign mark={mark} size={22} />
              <div>
                <b>{i + 1}. {q.title}</b>
                <span class="hint">{q.code || q.name}</span>
                <span>{w.class.marks[mark]}{k.tries.length > 0 && `, ${w.class.tries(k.tries.length)}`}{k.hints.length > 0 && `, ${w.class.hintsTaken(k.hints.length)}`}{k.seen && `, ${w.class.seen}`}</span>
                {k.marked && mark !== "none" && <span class="hint why">{k.marked.words}</span>}
              </div>
              {mark !== "right" && <button type="button" class="small" aria-label={w.pair(w.class.toAnswer, w.class.question(i + 1, s.questions.length))} onClick={() => goTo(i)}>{w.class.toAnswer}</button>}
            </li>
          );
        })}
      </ol>
      <div class="actions">
        <button type="button" onClick={() => goTo(s.questions.length - 1)}>{w.class.previous}</button>
        <button type="button" class="primary" onClick={() => void saveResult()}><Icon name="save" />{w.class.saveResult}</button>
        {pdf?.map((b, i) => <button key={i} type="button" onClick={() => download(fileName({ name: `${s.student} ${title(s.set)}` }, ".pdf"), b as BlobPart, "application/pdf")}>{w.class.resultPdf}</button>)}
        <button type="button" onClick={() => print()}>{w.class.print}</button>
      </div>
      <p class="screen-only">{w.class.handIn}</p>
      <p class="honest">{s.honest}</p>
    </main>
  );
}
