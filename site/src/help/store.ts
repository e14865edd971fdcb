// What the help shows: the word that is asked with the place it was asked from,
// and whether the list of all words is open. Apart from the job, so that asking
// touches nothing.
import { set } from "../state";
import type { TermId } from "./terms";

export interface Help {
  asked: { id: TermId; from: HTMLElement } | null;
  /** The window of help is open; scrolled to this word, if one is named. */
  open: boolean;
  at: TermId | null;
}

let state: Help = { asked: null, open: false, at: null };

export const help = (): Help => state;

export function put(patch: Partial<Help>): void {
  state = { ...state, ...patch };
  set({});
}
