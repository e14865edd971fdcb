// What is kept of a class in this browser: exercises that were left, each under
// its name, and the sets that are not on the panel. Taking one loses no other.
import { type Kept, otherSets } from "../class/kept";
import { room } from "../class/room";
import { goOn, title } from "../class/session";
import { takeSet } from "../class/teacher";
import { when } from "../keep/dialog";
import { w } from "../words";

export function KeptExercises() {
  const [last, ...more] = room().left;
  if (!last) return null;
  return (
    <>
      <Exercise k={last} />
      {more.length > 0 && <details class="rows"><summary>{w.class.keptExercises}</summary>{more.map((k) => <Exercise key={k.key} k={k} />)}</details>}
    </>
  );
}

function Exercise({ k }: { k: Kept<"exercise"> }) {
  const id = `left-${k.row}-${k.tab}`;
  return (
    <div class="actions">
      <button type="button" class="wraps" aria-describedby={id} onClick={() => void goOn(k)}>{w.class.goOn(title(k.what.set))}</button>
      <span class="hint" id={id}>{k.what.student}, {when(k.at)}</span>
    </div>
  );
}

export function KeptSets() {
  const others = otherSets(room().set);
  if (!others.length) return null;
  return (
    <details class="rows">
      <summary>{w.class.keptSets}</summary>
      {others.map((k) => {
        const name = title(k.what), at = when(k.at);
        return (
          <div class="actions" key={k.key}>
            <button type="button" aria-label={w.keep.takeOf(name, at)} onClick={() => void takeSet(k)}>{w.keep.take}</button>
            <span><b>{name}</b> <span class="hint">{w.class.count(k.what.questions.length)} {at}</span></span>
          </div>
        );
      })}
    </details>
  );
}
