// How class documents come in: by link, by file, dropped or pasted. A set opens
// as an exercise, results go to the table; in an exercise nothing else is taken.
import { fromLink } from "../files";
import { say } from "../state";
import { w } from "../words";
import type { From } from "../words/from";
import { goOn, keep, keptHere, openExercise, resumeKept } from "./session";
import { kept, onOthers, own } from "./kept";
import { put, room } from "./room";
import { collect, keepHeld, resumeSet } from "./teacher";
import { returns } from "../keep/tab";

/** The format that a text names, damaged or not. */
const format = (text: string): string => /^\s*\{\s*"format"\s*:\s*"([^"]*)"/.exec(text)?.[1] ?? "";

/** Takes class documents among the files; true when they are settled with. */
export function takeClass(files: { from: From; text: string }[]): boolean {
  const kinds = files.map((f) => format(f.text));
  if (room().inside) {
    if (kinds[0] === "moldwright-class") void openExercise(files[0]!.text, files[0]!.from);
    else say(w.class.leaveFirst);
    return true;
  }
  if (kinds.includes("moldwright-result")) void collect(files);
  else if (kinds[0] === "moldwright-class") void openExercise(files[0]!.text, files[0]!.from);
  else return false;
  return true;
}

export const onLink = (): boolean => location.hash.startsWith("#class=");

/** Before the core runs: whether the page will open on an exercise. */
export function foresee(): void {
  if (onLink() || (!location.hash && own("exercise")?.what.inside)) put({ opening: true });
  onOthers(() => put({ left: kept("exercise") }), (kind) => (kind === "class" ? keepHeld() : keep()));
}

/** Opens the exercise of the link, or of an earlier visit; then brings back the
 *  set that a teacher was making. */
export async function openClass(): Promise<void> {
  if (onLink()) {
    const text = await fromLink("class", location.hash);
    if (text === null) say(w.class.badLink);
    else {
      await openExercise(text, "link");
      // a new visit is asked, since somebody else may have answered here before
      const k = returns ? own("exercise") : undefined;
      if (k?.what.inside && keptHere().some((o) => o.key === k.key)) await goOn(k);
    }
  } else await resumeKept(!location.hash);
  put({ opening: false });
  await resumeSet();
}
