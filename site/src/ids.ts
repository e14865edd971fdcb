// Ids that tie labels, hints and messages to their fields. The library's own ids
// start again whenever the page is drawn anew from its root, so that a field that
// is added later could carry the id of one that stands there.
import { useState } from "preact/hooks";

let made = 0;

/** An id that no other element of the page has, the same for as long as the
 *  component stands. */
export function useId(): string {
  return useState(() => `i${++made}`)[0];
}
