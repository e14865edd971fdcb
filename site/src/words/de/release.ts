// Worte der Karte „Lösen“.

import type { release as en } from "../en/release";
import type { Like } from "../like";
import { partName } from "./verdict";

export const release: Like<typeof en> = {
  pullTitle: "Welcher Zug", pullGroup: "Zug",
  pullOfPart: partName,
  pullWhole: ["Ganze Wand, nach unten", "Ganze Wand, nach oben", "Ganze Wand, seitlich"],
  pullNoBands: "Keine Teilung fasst bei diesem Zug die ganze Wand; die Zeichnung zeigt ihre Formschräge und wo sie hakt.",
  stretch: "Radiale Unterschiede strecken", stretchBy: (n) => (n === 1 ? "wahr" : `×${n}`),
  stretchLine: "gemessen von", stretchEnds: "einer Geraden, Fuß bis Rand", stretchUpright: "einer Senkrechten an der weitesten Stelle",
  stretchHint: "Ein halber Millimeter entscheidet, ob eine Wand sich löst. Die linke Hälfte der Zeichnung zeigt so vielfach vergrößert, wie weit die Wand von dieser Linie absteht.",
  stretchCaption: (n) => `Radien ×${n}`, stretchDescribed: (most, z, least, zl) =>
    `Von dieser Linie steht die Wand bei ${z} um ${most} nach außen ab und bei ${zl} um ${least} nach innen.`,
  leastDraft: "Kleinste Formschräge", rubShare: "Darf schleifen auf",
  rubShareHint: "der Wand eines Teils, bevor es als schleifend gilt", rulesTitle: "Was als frei gilt",
  draftTitle: "Formschräge der Wand", draftRange: (a, b) => `${a} bis ${b}`,
  underDraft: "unter 0°, Hinterschnitt", area: "Fläche", catchesTitle: "Wo es hakt", trapsTitle: "Was kein Zug löst",
  noCatch: "Nichts steht im Weg.",
  catchLine: (where, d, by) => `Es hakt um bis zu ${d}, ${where} über dem Fuß; die Wand bei ${by} ist im Weg.`,
  clayLeft: (d) => `Der Ton gibt teils nach: ${d} bleiben für das Gussstück.`,
  clayNone: "Der Ton gibt nicht nach.",
  forgiven: (d) => `Der Ton gibt um alle ${d} nach; nur das starre Positiv hakt.`,
  trapLine: (a, b, d, v) => `Zwischen ${a} und ${b}: ${d} tief, ${v}.`,
  trapInside: (a, b, d, v) => `Innen, zwischen ${a} und ${b}: ${d} tief, ${v}.`,
  leastOnPart: (min, share, least) => `Kleinste Formschräge an diesem Teil: ${min}. ${share} davon haben weniger als ${least}.`,
  draftLegend: "Formschräge",
  findings: "Vor dem Drucken zu wissen", showPlace: "Zeigen", showPlaceOf: (t) => `Auf der Zeichnung zeigen: ${t}`,
  nearTitle: "Die nächste Gestalt, die sich löst",
  nearHint: "Nur Radien ändern sich, so wenig wie möglich. Die Schattenlinie auf der Zeichnung ist diese Gestalt.",
  nearIn: { one: "In einem Teil", two: "In Unter- und Oberteil" },
  nearChange: (most, z, rms) => `Größte Änderung ${most}, ${z} über dem Fuß; im Ganzen ${rms} (quadratisches Mittel).`,
  nearNone: "Sie löst sich, wie sie ist.", nearTake: "Gestalt übernehmen", nearTakeIn: { one: "Diese Gestalt übernehmen: in einem Teil", two: "Diese Gestalt übernehmen: in Unter- und Oberteil" },
  nearSteps: { one: "nächste Gestalt übernommen, in einem Teil", two: "nächste Gestalt übernommen, in Unter- und Oberteil" },
  nearGhost: "Schattenlinie", ghosts: { one: "ein Teil", two: "zwei Teile", none: "keine" }, nearWait: "Wird gerechnet …", ghost: "nächste Gestalt",
  remediesTitle: "Kleine Änderungen, die ein Teil sparen", remediesFind: "Kleine Änderungen suchen",
  remediesNone: "Keine Änderung an nur einer Stelle spart ein Teil.", remedyTake: "So ändern", remedyStep: (s) => `kleine Änderung: ${s}`,
  remedyCodes: { taper: "Schräge", tiltFoot: "Fußwand geneigt", moveParting: "Teilung verschoben" },
  flowTitle: "Füllen und Ablaufen", flowDrains: "Umgedreht läuft das Gussstück ganz leer.",
  flowFills: "Langsam gefüllt, bleibt keine Luft zurück.",
  flowAir: (v, a, b) => `Beim Eingießen bleibt Luft unter dem Dach: ${v}, zwischen ${a} und ${b}. Die Form beim Füllen kippen oder die Stelle entlüften.`,
  flowSlip: (v, a) => `Umgedreht behält das Gussstück ${v} Schlicker, bis hinab zu ${a} über dem Fuß. Die Form beim Ablaufen rollen.`,
  flowFull: "Die Wand füllt das Innere: Der Schlicker kann nicht ausgegossen werden.",
  flowSolid: "Nichts wird ausgegossen: Das Gefäß wird zwischen den äußeren Teilen und dem Kern voll gegossen.",
  airMark: (v) => `Luft ${v}`, slipMark: (v) => `Schlicker ${v}`,
};
