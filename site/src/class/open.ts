// How class documents come in: by link, by file, dropped or pasted. A set opens
// as an exercise, results go to the table; in an exercise nothing else is taken.
import { fromLink } from "../files";
import { say } from "../state";
import { w } from "../words";
import type { From } from "../words/from";
import { goOn, openExercise, resumeKept } from "./session";
import { keptSession } from "./kept";
import { put, room } from "./room";
import { collect, resumeSet } from "./teacher";

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
  if (onLink() || (!location.hash && keptSession()?.inside)) put({ opening: true });
}

/** Opens the exercise of the link, or of an earlier visit; then brings back the
 *  set that a teacher was making. */
export async function openClass(): Promise<void> {
  if (onLink()) {
    const text = await fromLink("class", location.hash);
    if (text === null) say(w.class.badLink);
    else {
      await openExercise(text, "link");
      const s = room().session, k = keptSession();
      if (s && k?.inside && k.print === s.print && JSON.stringify(k.set) === JSON.stringify(s.set)) await goOn();
    }
  } else await resumeKept(!location.hash);
  put({ opening: false });
  await resumeSet();
}
