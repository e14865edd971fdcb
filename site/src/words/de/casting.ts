// Worte der Karte „Gießen“.

import type { casting as en } from "../en/casting";
import type { Like } from "../like";

const nth = ["Erster", "Zweiter", "Dritter", "Vierter", "Fünfter", "Sechster", "Siebter", "Achter"];

export const casting: Like<typeof en> = {
  // Werte
  how: "wie", howOf: (label) => `Wie berechnet: ${label}`, figureSource: "Quelle",
  more: (n) => (n === 1 ? "Ein weiterer Wert" : `${n} weitere Werte`),
  caution: "Vorsicht", cautionsHere: "Vorsicht",
  defaultIs: (v) => `wenn nicht gemessen: ${v}`,
  noneSet: "keine",

  // Einstellungen
  part: "Teil", plaster: "Gips", water: "Wasser",
  consistency: "Wasser-Gips-Wert", consistencyHint: "Teile Wasser auf 100 Teile Gips, nach Gewicht",
  wall: "Wand des Gussstücks, nass", slipDensity: "Schlicker wiegt", solidsDensity: "Ton wiegt, trocken und dicht",

  // Karte
  glance: "Kurz gesagt",
  glanceNames: {
    mixPlaster: "Gips", mixWater: "Wasser", minutes: "Schlicker bleibt", slipFill: "Schlicker zum Füllen", castsPerDay: "Güsse am Tag", liftFull: "Volle Form",
  },
  mix: "Gips, in der Reihenfolge des Anrührens",
  mixHint: "Ein Ansatz je Zeile. Erst das Wasser, dann den Gips einstreuen. Verlust ist eingerechnet.",
  bucketsOf: "Eimer", inEach: "je",
  total: "Zusammen",
  castTitle: "Schlicker und wie lange er bleibt",
  wallsTitle: "Wand über die Zeit", wallsFaces: "Wand an jeder der beiden Flächen über die Zeit", wanted: "gewünscht",
  afterMinutes: "Welche Wand nach",
  laterTitle: "Güsse eines Tages",
  laterLine: (i, m) => `${nth[i] ?? `${i + 1}.`} Guss ${m}`,
  laterNone: "Schon ein Guss macht diese Form für einen zweiten am selben Tag zu nass.",
  slipIn: "Gewogen in", slipUnits: { ml: "g je ml", litre: "g je Liter", pint: "oz je britischem Pint" },
  trialsTitle: "Eigene Probegüsse",
  trialsHint: "Einen Probeguss durchschneiden und die Wand nass messen. Bei mehreren wird die Rate an alle angepasst und ihre Streuung genannt.",
  trial: (i) => `Probeguss ${i}`, trialWall: "Wand, mm", trialMinutes: "Zeit, min",
  addTrial: "Probeguss hinzufügen", removeTrial: (i) => `Probeguss ${i} entfernen`,
  trialAdded: "Probeguss hinzugefügt", trialRemoved: "Probeguss entfernt",
  potTitle: "Gussstück und Gefäß",
  forceTitle: "Spannbänder und Heben",
  shrinkTitle: "Schwindung, von Schwindungsstäben",
  barsHint: "Auf einem Stab eine Länge markieren und sie nass, trocken und gebrannt messen, in einer beliebigen Einheit. ASTM C326 verlangt zehn Stäbe; einer ist besser als keiner.",
  bar: (i) => `Stab ${i}`, barLength: (i, when) => `Stab ${i}, ${when}`, barNames: { wet: "Nass", dry: "Trocken", fired: "Gebrannt" },
  addBar: "Stab hinzufügen", removeBar: (i) => `Stab ${i} entfernen`,
  barsResult: (d, f, t) => `Trocknen ${d}, Brennen ${f}, gesamt ${t}.`,
  barsSpread: (s, n) => `Die Summen der ${n} Stäbe streuen um ${s}.`,
  barsUse: "Diese Werte übernehmen", barsUsed: "Schwindung von Schwindungsstäben", barsSaid: "Die Schwindung der Schwindungsstäbe gilt jetzt.",
  barsInUse: "Diese Werte gelten.",
  ownTitle: "Eigene Messungen",
  ownHint: "Alles rechnet mit dem, was hier steht. Den eigenen Wert eintragen, sobald er gemessen ist.",
  ownGroups: {
    clay: "Ton und Gussstück", mix: "Gips anrühren", data: "Vom Datenblatt des Gipsherstellers", water: "Wasser und Trocknen",
    pot: "Gefäß im Gebrauch", bands: "Spannbänder", lift: "Das Heben",
  },
  own: {
    castMoisture: ["Wasser im frischen Gussstück", "% der Nassmasse"], lossOnIgnition: ["Verlust beim Brennen", "% der Trockenmasse"],
    waste: ["Gips für Verlust", "%"], bucket: ["Eimer fasst", "ml"], bucketFill: ["Gefüllt bis höchstens", "%"],
    publishedWetDensity: ["Dichte des Gipsbreis", "g/ml"], absorption: ["Trockener Gips nimmt auf", "% der Trockenmasse"],
    settingExpansion: ["Dehnt sich beim Abbinden", "%"],
    halfRateWater: ["Saugt halb so schnell bei", "% der Trockenmasse"], dryingRate: ["Trocknet um", "g/cm² min"],
    laterCastSlowdown: ["Jeder weitere Guss dauert", "% länger"],
    glaze: ["Gebrannte Glasur, Dicke", "mm"], glazeDensity: ["Gebrannte Glasur wiegt", "g/ml"], fillLine: ["Füllhöhe unter dem Rand", "mm"],
    bandTension: ["Ein Band zieht", "N"], bandSafety: ["Sicherheit der Bänder", "-fach"],
    reach: ["Hände von den Knöcheln", "cm"], hands: ["Hände über dem Boden", "cm"], travel: ["Hubhöhe", "cm"], twist: ["Drehung des Körpers", "°"],
  },
};
