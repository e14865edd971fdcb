// Worte von Kopf, Fuß und Meldungen; und die, die auf jeder Karte stehen. Fachworte
// aus dem Gedächtnis, ohne Quelle. „Form“ ist die Gipsform; was die Form abbildet,
// heißt Gefäß oder Gestalt.

import type { page as en } from "../en/page";
import type { From } from "../from";
import type { Like } from "../like";

const ways = { link: "Link", drop: "Abgelegtes", paste: "Eingefügtes" };
const heads = { link: "Der Link", drop: "Das Abgelegte", paste: "Das Eingefügte" };
/** Was geöffnet wurde, als Name hinter einem Doppelpunkt und am Kopf eines Satzes. */
const source = (from: From): string => (typeof from === "string" ? ways[from] : from.file);
const large = (from: From): string => (typeof from === "string" ? heads[from] : from.file);

export const page: Like<typeof en> = {
  title: "Moldwright",
  skip: "Zu den Karten springen",
  language: "Sprache",
  noScript: "Moldwright berechnet die Form auf dieser Seite selbst und braucht dafür JavaScript. Es wird nichts verschickt.",
  tabs: {
    form: "Gefäß", release: "Lösen", parts: "Teile", tooling: "Werkzeug", casting: "Gießen", sheets: "Blätter", class: "Klasse",
  },
  ownPot: "Mein Gefäß", potName: "Name des Gefäßes",
  undo: "Rückgängig", redo: "Wiederholen", open: "Öffnen", save: "Speichern", link: "Link",
  undoStep: (s) => `Rückgängig: ${s}`,
  redoStep: (s) => `Wiederholen: ${s}`,
  undone: (s) => `Zurückgenommen: ${s}.`,
  redone: (s) => `Wiederholt: ${s}.`,
  saved: "Gespeichert", notSaved: "Ungespeichert",
  noStorage: "Dieser Browser behält zwischen Besuchen nichts. Den Auftrag in einer Datei speichern.",
  linkCopied: "Link kopiert. Er enthält den ganzen Auftrag und wird niemandem geschickt.",
  linkShown: "Der Link steht jetzt in der Adresszeile. Er enthält den ganzen Auftrag.",
  badLink: "Der Link enthält keinen ganzen Auftrag; vielleicht wurde er abgeschnitten. Noch einmal danach fragen.",
  source, large,
  stepOpened: (from) => `Geöffnet: ${source(from)}`,
  notOpened: (from, why) => `${large(from)} wurde nicht geöffnet: ${why} Das Gefäß auf der Werkbank ist unverändert.`,
  dropHere: "Ein Bild, einen gespeicherten Auftrag, eine Zeichnung oder Koordinaten hier ablegen",
  rowsWait: "Die Zeilen warten auf der Karte „Gefäß“. Dort angeben, in welcher Einheit sie sind.",
  close: "Schließen", stop: "Anhalten", working: "Arbeitet",

  // der Rechenkern
  coreStopped: "Angehalten. Vom Auftrag ging nichts verloren.",
  coreTooMuch: "Das war zu viel für den Rechenkern. Der Auftrag ist erhalten; das zuletzt Getane ändern.",
  coreNoStart: "Der Rechenkern startet in diesem Browser nicht. Den Auftrag speichern und die Seite in einem aktuellen Browser öffnen; startete sie hier schon einmal, ist wohl ihre Datei beschädigt: Sie neu holen.",
  browserSays: (why) => `Wörtlich sagt der Browser: „${why}“`,

  // Felder
  notNumber: "Eine Zahl schreiben, etwa 12,5 oder 12.5.",
  changed: (label) => `${label} geändert`,
  pair: (a, b) => `${a}: ${b}`,
};
