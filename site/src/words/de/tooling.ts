// Worte der Karte „Werkzeug“.

import type { tooling as en } from "../en/tooling";
import type { Like } from "../like";
import { thePart } from "./verdict";

export const tooling: Like<typeof en> = {
  layer: "Schicht", clearance: "Spiel", shell: "Schale", staves: "Schalungsteile",
  noPrints: "Für diese Teilung gibt es noch nichts zu drucken.",

  printsTitle: "Zu druckende Stücke",
  printsHint: "Jedes Stück liegt, wie es gedruckt wird, mit der formenden Seite nach oben frei.",
  forPart: (part) => `Für ${part === "core" ? "den Kern" : thePart(part)}`,
  fits: "passt aufs Bett", fitsNot: "größer als das Bett",
  bedLine: (s) => `Für ein Druckbett von ${s}.`, bedChange: "Ändern", bedChangeAsk: "Das Druckbett ändern",
  bedPicture: (fit) => `Grundriss auf dem Bett: ${fit}`,
  weighs: (m, l, overhang) => `${m} voll gedruckt, ${l} Filament; ${overhang}`,
  overhang: (d) => `steilster Überhang ${d}, ohne Stützen`, overhangHigh: (d) => `steilster Überhang ${d}, braucht Stützen`,
  noOverhang: "kein Überhang",
  stl: "STL", stlOf: (name) => `${name} als STL herunterladen`,
  allPrints: "Alle Stücke (3MF)", everything: "Alles (ZIP)",
  everythingHint: "Die ZIP-Datei enthält jedes Stück, die Gipsteile und das Gussstück, die Blätter und den Auftrag, dazu eine Liste, was was ist.",
  bodiesTitle: "Gipsteile und Gussstück", bodiesHint: "Wo sie in der geschlossenen Form stehen, zum Ansehen oder Prüfen; nichts davon wird gedruckt.",
  castName: "Gussstück", dryMass: (m) => `${m} trocken`, making3d: "Die Netze entstehen …",
  printerTitle: "Drucker", blockTitle: "Gipsblock", kitTitle: "Form und Druckteile",
  bedAxis: (a) => `Bett ${a}`, nozzle: "Düse", solidPositive: "Positive voll gedruckt", solidHint: "statt von unten hohl",
  outside: "Außenseite des Blocks", outsideRound: "rund", outsideStraight: "gerade Seiten",
  outsideHint: "Eine Form mit Seitenteilen hat immer gerade Seiten.",
  spareOn: "Gießrand über der Schnittlinie", spareHint: "ein Vorrat, der den Rand bedeckt hält, während der Schlicker sinkt", spareHeight: "Höhe des Gießrands",
  spareFlared: "Gießrand auch im Oberteil weit", spareFlaredHint: "gießt sich leichter; ein eigener Stopfen bildet ihn, und sein Ton wird herausgeschnitten, bevor das Teil abgehoben wird",
  strapGrooves: "Bandnuten", strapHint: "um die Seitenteile, damit die Spannbänder darin liegen",
  ifNeeded: "wenn nötig",
  stavesHint: "Ein einzelnes Schalungsteil muss nach oben abgezogen werden; zwei oder mehr gehen seitlich ab.",
  printCautions: [
    "Schmelzender Kunststoff gibt Dämpfe und feine Teilchen ab: Den Raum lüften oder in einem Gehäuse mit Abluft nach draußen drucken.",
    "Nicht ausgehärtetes Harz schadet Haut, Augen und Lunge: Handschuhe, Brille und frische Luft; Stücke und Spülreste vor dem Wegwerfen aushärten.",
    "Düse und Bett bleiben nach dem Druck heiß; nass schleifen, damit kein Staub fliegt. Die Sicherheitsblätter der Hersteller und die örtlichen Regeln befolgen.",
  ],
};
