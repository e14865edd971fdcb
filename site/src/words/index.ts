// Every word on the page, in one table for each language, so that each can be
// read as one text. Words of the trade are those of the drawing, the report and
// the paper. Functions take values that are already formatted, parts of the mold
// by their names in the plan. w and its parts are live: they follow the language,
// so read them where they are shown and keep nothing of them.
import { de } from "./de";
import { en } from "./en";
import { es } from "./es";
import { fr } from "./fr";
import type { Readable, Words } from "./like";

/** The languages by their codes, each under its own name. */
export const languages = { en: "English", de: "Deutsch", fr: "Français", es: "Español" } as const;
export type Language = keyof typeof languages;

export const tables: Readonly<Record<Language, Readable<Words>>> = { en, de, fr, es };

export let language: Language = "en";
export let w: Readable<Words> = en;
/** The words of tracing, for the modules that use no others. */
export let tracing: Readable<Words>["trace"] = w.trace;

/** From here on all words are of this language. */
export function speak(l: Language): void {
  language = l;
  w = tables[l];
  tracing = w.trace;
}

/** A text of the table by what it says now, as a text that follows the language;
 *  any other text stays as it is. */
export function following(text: string): () => string {
  const path = find(w, text);
  return () => (path ? path.reduce<unknown>((at, key) => (at as Record<string, unknown>)[key], w) as string : text);
}

function find(table: object, text: string): string[] | null {
  for (const [key, value] of Object.entries(table)) {
    if (value === text) return [key];
    const path = typeof value === "object" ? find(value as object, text) : null;
    if (path) return [key, ...path];
  }
  return null;
}
