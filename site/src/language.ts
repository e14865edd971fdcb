// The language of the page: that of the last visit, else the first of those the
// reader's browser asks for that the page speaks, else English. A change loses
// nothing: what stands on the page is drawn anew, and what the core has said is
// asked for anew.
import { inLanguage as classAnew } from "./class/anew";
import { anew } from "./state";
import { inLanguage as svgAnew } from "./trace/svg";
import { inLanguage as traceAnew } from "./trace/tracing";
import { language, type Language, languages, speak } from "./words";

const KEY = "moldwright.language";

const known = (code: string | null | undefined): code is Language => code !== null && code !== undefined && Object.hasOwn(languages, code);

/** The first language of a list such as navigator.languages that the page speaks. */
export function fitting(wanted: readonly string[]): Language {
  return wanted.map((tag) => tag.toLowerCase().split("-")[0]).find(known) ?? "en";
}

function kept(): Language | null {
  try {
    const code = localStorage.getItem(KEY);
    return known(code) ? code : null;
  } catch {
    return null;
  }
}

function use(l: Language): void {
  speak(l);
  document.documentElement.lang = l;
}

/** Chooses the language before the page is first drawn. */
export function beginLanguage(): void { use(kept() ?? fitting(navigator.languages)); }

export function change(l: Language): void {
  if (l === language) return;
  use(l);
  try {
    localStorage.setItem(KEY, l);
  } catch {
    // nothing is kept; this visit goes on in the language
  }
  anew();
  traceAnew();
  svgAnew();
  void classAnew();
}
