// The plan of the sample that a first visit opens on, as the core gave it when the
// page was built, in every language: it is drawn while the core is still being
// unpacked. Replies differ between languages in what they say alone, so what they
// have in common stands in the page once. The live core is asked as for any job,
// and its reply, which has the same bytes, takes this one's place.
import type { Language } from "./words";

/** What lies between the words that differ, one piece more than these; and those
 *  words in each language, as JSON writes them. */
export interface FirstPlan { common: string[]; says: Record<Language, string[]> }

/** The core's reply in one language. */
export function replyIn(language: Language, { common, says }: FirstPlan): string {
  return common.map((piece, i) => piece + (says[language][i] ?? "")).join("");
}
