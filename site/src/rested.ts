// What a screen reader is told of words that change many times a second while
// somebody drags or types: only what stands once they rest, and nothing while a
// pointer is held down.
import { useEffect, useState } from "preact/hooks";

const REST = 700;

let held = false;
addEventListener("pointerdown", () => { held = true; }, true);
const free = () => { held = false; };
for (const end of ["pointerup", "pointercancel"]) addEventListener(end, free, true);
addEventListener("blur", free); // of the window alone

/** The words as they were when they last rested. */
export function useRested(words: string): string {
  const [said, say] = useState("");
  useEffect(() => {
    let wait = 0;
    const rested = () => { if (held) later(); else say(words); };
    const later = () => { wait = window.setTimeout(rested, REST); };
    later();
    return () => clearTimeout(wait);
  }, [words]);
  return said;
}
