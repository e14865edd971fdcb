// Where questions come from: drawn by kind, asked about the pot on the bench, or
// called up by their code.
import { useState } from "preact/hooks";
import { Choice } from "../fields";
import { useId } from "../ids";
import { addBench, addCode, drawQuestions } from "../class/teacher";
import { now } from "../state";
import { w } from "../words";

const counts = ["1", "2", "3", "4", "5", "6"].map((n) => [n, n] as const);

export function ClassDraw() {
  const [on, setOn] = useState<string[]>(["catch", "count", "where"]);
  const [level, setLevel] = useState("1"), [each, setEach] = useState("1"), [own, setOwn] = useState("catch"), [code, setCode] = useState("");
  const id = useId(), n = on.length * Number(each);
  const kinds = Object.keys(w.class.kinds), levels = [1, 2, 3].map((n) => [String(n), w.class.levels[n]!] as const);
  const pickOwn = kinds.map((k) => [k, w.class.kinds[k]![0]] as const);
  return (
    <>
      <fieldset class="class-kinds">
        <legend>{w.class.whichKinds}</legend>
        {kinds.map((k) => (
          <label key={k} class="tick">
            <input type="checkbox" checked={on.includes(k)} onChange={() => setOn(kinds.filter((o) => (o === k) !== on.includes(o)))} />
            <span>{w.class.kinds[k]![0]} <span class="hint">{w.class.kinds[k]![1]}</span></span>
          </label>
        ))}
      </fieldset>
      <div class="row ends">
        <Choice label={w.class.difficulty} value={level} options={levels} pick={setLevel} />
        <Choice label={w.class.each} value={each} options={counts} pick={setEach} />
        <button type="button" class="primary" disabled={n === 0} onClick={() => void drawQuestions(on, Number(level), Number(each))}>{w.class.add(n)}</button>
      </div>
      <details class="rows">
        <summary>{w.class.bench}</summary>
        <div class="row ends">
          <Choice label={w.class.askOf(now().job.name)} value={own} options={pickOwn} pick={setOwn} />
          <button type="button" onClick={() => void addBench(own, Number(level))}>{w.class.addBench}</button>
        </div>
      </details>
      <details class="rows">
        <summary>{w.class.byCode}</summary>
        <form class="row ends" onSubmit={(e) => { e.preventDefault(); void addCode(code).then((ok) => { if (ok) setCode(""); }); }}>
          <div class="field">
            <label for={id}>{w.class.code}</label>
            <input id={id} type="text" size={12} value={code} autocomplete="off" spellcheck={false} placeholder="C2-0A7K-X" onInput={(e) => setCode(e.currentTarget.value)} />
          </div>
          <button type="submit" disabled={!code.trim()}>{w.class.addCode}</button>
          <p class="hint">{w.class.drawHint}</p>
        </form>
      </details>
    </>
  );
}
