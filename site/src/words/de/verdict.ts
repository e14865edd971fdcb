// Worte der Urteilszeile, des nächsten Schritts und der Teile bei Namen.

import type { verdict as en } from "../en/verdict";
import type { Like } from "../like";

const count = ["Kein", "Ein", "Zwei", "Drei", "Vier", "Fünf", "Sechs", "Sieben"];

/** Ein Teil nach seinem Namen im Plan. */
export const partName = (name: string): string => ({ lower: "Unterteil", upper: "Oberteil", core: "Kern" })[name] ?? `Seitenteil ${name}`;
/** Dasselbe mit Artikel, im Nominativ. */
export const thePart = (name: string): string => ({ lower: "das Unterteil", upper: "das Oberteil", core: "der Kern" })[name] ?? partName(name);
/** Dasselbe am Kopf eines Satzes. */
export const largePart = (name: string): string => thePart(name).charAt(0).toUpperCase() + thePart(name).slice(1);

export const verdict: Like<typeof en> = {
  starting: "Die Werkbank wird eingerichtet …",
  parts: (n) => `${count[n] ?? n} ${n === 1 || n === 0 ? "Teil" : "Teile"}:`,
  verdict: { clear: "Frei", rubs: "Schleift", catches: "Hakt" },
  partName,
  cannotPlan: "Noch kein Plan.", tryAgain: "Nochmals versuchen",
  stillShown: "Die Zeichnung zeigt das letzte Gefäß, das sich planen ließ.",
  next: "Weiter",
  nextFault: "Berichtigen, was oben genannt ist, oder den letzten Schritt zurücknehmen.",
  nextCatch: "Ansehen, wo es hakt und welche Änderung des Gefäßes es löst.",
  nextRub: "Ansehen, wo es schleift, und der Wand dort mehr Formschräge geben.",
  nextClear: "Drucken, worum der Gips gegossen wird.",
  nextTooling: "Gips und Schlicker abwiegen.",
  nextCasting: "Die Blätter an die Werkbank mitnehmen.",
  nextSheets: "Den Auftrag speichern, um später daran weiterzuarbeiten.",
  go: (tab) => `Zu: ${tab}`,

  atHeight: (z) => `bei ${z}`,
  betweenHeights: (a, b) => `zwischen ${a} und ${b}`,
  robustAny: "Gilt, wie weit die Radien auch danebenliegen.",
  robust: {
    fewer: (scheme, mm) => `Gilt, solange jeder Radius auf ${mm} stimmt; darüber hinaus ginge vielleicht auch: ${scheme}.`,
    catches: (at, mm) => `Gilt, solange jeder Radius auf ${mm} stimmt; darüber hinaus könnte die Wand ${at} haken.`,
    rubs: (at, mm) => `Gilt, solange jeder Radius auf ${mm} stimmt; darüber hinaus könnte die Wand ${at} schleifen.`,
  },
  robustNone: {
    fewer: (scheme) => `Steht auf der Kippe: Beim kleinsten Fehler eines Radius ginge vielleicht auch: ${scheme}.`,
    catches: (at) => `Steht auf der Kippe: Beim kleinsten Fehler eines Radius könnte die Wand ${at} haken.`,
    rubs: (at) => `Steht auf der Kippe: Beim kleinsten Fehler eines Radius könnte die Wand ${at} schleifen.`,
  },
};
