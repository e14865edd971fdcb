// Worte der Karte „Gefäß“.

import type { form as en } from "../en/form";
import type { Like } from "../like";

export const form: Like<typeof en> = {
  size: "Die Längen sind die vom", fired: "gebrannten Gefäß", wet: "nassen Gussstück (Formmaß)", sizeStep: "Bezug der Längen geändert",
  sizeLine: (h, d) => `${h} hoch, ${d} breit`,
  sizeFired: "Gebrannt", sizeWet: "Nass, wie in der Form",
  capacity: "Fasst, gebrannt und randvoll",
  nodesEarlier: "Frühere Knoten", nodesLater: "Spätere Knoten", nodesShown: (a, b, n) => `Knoten ${a} bis ${b} von ${n}`,
  nodes: "Koordinaten", radius: "Radius, mm", height: "Höhe, mm", kind: "Knoten ist",
  nodesHint: "Von der Achse unter dem Fuß hinaus, hinauf und zum Rand; bei einem geschlossenen Gefäß zurück zur Achse.",
  rowsTitle: "Zeilen tippen oder einfügen",
  rowsHint: "Ein Knoten je Zeile, zwei Zahlen: Abstand von der Achse, dann Höhe. Dazwischen Tabulator, Komma, Semikolon oder Leerzeichen; 12,5 und 12.5 sind dasselbe.",
  rowsUnits: "Die Zeilen sind in", rowsAsk: "wählen", rowsAcross: "Die erste Zahl ist der",
  acrossRadius: "Radius", acrossDiameter: "Durchmesser",
  rowsUse: "Zeilen übernehmen", rowsStep: "Zeilen eingegeben",
  rowsNeedUnit: "Die Einheit der Zeilen wählen: mm, cm oder Zoll (in).",
  atLine: (n) => `Zeile ${n}`,
  inner: "Innenfläche",
  innerIs: "Das Innere des Gefäßes ist",
  innerSlip: "was der Schlicker aufbaut",
  innerOwn: "eine eigene Fläche, mit Kern",
  innerBegins: "Eine eigene Fläche beginnt als Inneres des ausgegossenen Gussstücks, bei dieser Wand, eingezogen, wo ein Kern nicht herauskäme; dann werden ihre Knoten verschoben.",
  innerHint: "Von der Achse innen am Boden nach außen, hinauf und zum Rand. Der Kern K bildet sie; gefüllt wird das Gefäß durch seinen Fuß.",
  innerClosed: "Eine geschlossene Form hat keine Öffnung für einen Kern; ihr Inneres ist, was der Schlicker aufbaut.",
  innerFull: "Diese Wand lässt kein Inneres, mit dem eine eigene Fläche beginnen könnte. Die Wand des Gussstücks dünner machen.",
  innerGiven: "eigene Innenfläche", innerTaken: "Innenfläche weggenommen",
  shrinkage: "Schwindung des Tons", drying: "Trocknen", firing: "Brennen", atRelease: "Beim Lösen aus der Form",
  shrinkageHint: "Prozent der Länge. Trocknen bezieht sich auf die nasse Länge, Brennen auf die trockene.",
  enlarged: (f) => `Die Form wird mit dem ${f}-Fachen des gebrannten Maßes gemacht.`,
};
