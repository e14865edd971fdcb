// Worte der Karte „Blätter“.

import type { sheets as en } from "../en/sheets";
import type { Like } from "../like";

export const sheets: Like<typeof en> = {
  paper: "Papier", getPdf: "PDF herunterladen", getSvg: "SVG herunterladen",
  pages: (n) => `${n} ${n === 1 ? "Seite" : "Seiten"}`,
  making: "Das Blatt wird gezeichnet …",

  sheets: {
    profile: ["Profil, wahre Größe", "Das Gefäß, eine Schiene oder das Positiv darauflegen."],
    template: ["Schablone, wahre Größe", "Aus Karton schneiden und an Ton oder Gips halten."],
    section: ["Schnitt der geschlossenen Form", "Teile, Nähte, Züge und Maße, im Maßstab."],
    report: ["Formbericht", "Das Urteil, warum nicht weniger, Werte und ihre Quellen."],
    workshop: ["Werkstattkarte", "Eine Seite für die Wand: Ansätze, Zeiten, Reihenfolge, Bänder."],
  },
  whichSheet: "Blatt", lines: "Linie", linesFired: "gebranntes Maß", linesWet: "nasses Maß, wie in der Form", linesBoth: "beide",
  shape: "Umriss", half: "Halbprofil", full: "ganze Silhouette",
  summaryOnly: "Nur die erste Seite",
  beforePrint: "Mit 100 % drucken, „Originalgröße“, nie „an Seite anpassen“. Dann ein Lineal an die Balken legen.",
  scaleTitle: "Die Balken sind nicht 100 mm lang?",
  scaleHint: "Eintippen, was das Lineal sagt. Das Blatt wird um so viel größer oder kleiner gezeichnet, dass der nächste Druck stimmt; die Druckeinstellungen beibehalten.",
  barAcross: "Balken quer über die Seite", barUp: "Balken längs der Seite",
  scaleOn: (x, y) => `Gezeichnet für einen Drucker, der aus 100 mm quer ${x} und längs ${y} macht.`,
  scaleOff: "Zurück zu 100 mm", scaleBad: "Das ist kein Balken von 100 mm. Noch einmal von Ende zu Ende messen; 90 bis 110 mm lassen sich ausgleichen.",
  pageOf: (i, n) => `Seite ${i} von ${n}`,
  svgOf: (i) => `SVG von Seite ${i}`,
  zoomed: "Größer öffnen", pageAlt: (sheet, i, n) => `${sheet}, Seite ${i} von ${n}. Größer öffnen.`,
};
