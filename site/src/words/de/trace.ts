// Worte zum Nachzeichnen eines Bildes und zum Lesen einer Zeichnung; in der
// Tabelle unter trace.

import type { trace as en } from "../en/trace";
import type { Like } from "../like";
import { page } from "./page";

export const trace: Like<typeof en> = {
  // woher eine Gestalt kommt
  sourceTitle: "Aus einem Bild oder einer Zeichnung",
  photoPick: "Bild wählen", photoTake: "Foto aufnehmen", svgPick: "Zeichnung öffnen (SVG)",
  sourceHint: "Ein Foto gerade von vorn, ein Scan oder eine Skizze auf Papier. Zehnmal den größten Radius zurücktreten, heranzoomen und das Objektiv auf halber Höhe des Gefäßes halten. Das Bild bleibt auf dieser Seite; es wird niemandem geschickt.",
  outTitle: "Das Profil mitnehmen", outSvg: "Profil als SVG", outRows: "Koordinaten als Text",

  // Nachzeichnen
  traceTitle: "Ein Bild nachzeichnen",
  opening: "Das Bild wird geöffnet …", outlining: "Der Umriss wird gesucht …", tracing: "Wird nachgezeichnet …",
  notPicture: (name) => `${name} ist kein Bild, das dieser Browser lesen kann. JPEG, PNG oder WebP nehmen. Das Gefäß auf der Werkbank ist unverändert.`,
  pictureHuge: (name, mp) => `${name} hat ${mp} Millionen Pixel; mehr als 100 Millionen werden nicht geöffnet. Das Bild verkleinern und noch einmal versuchen. Das Gefäß auf der Werkbank ist unverändert.`,
  pictureScaled: (a, b) => `Das Bild mit ${a} Pixeln wurde auf ${b} verkleinert; das reicht für einen Umriss gut aus.`,
  otherPicture: "Anderes Bild", leaveTrace: "Verlassen", backToPicture: "Zurück zum Bild",
  lengthTitle: "Eine bekannte Länge",
  lengthOf: { height: "Höhe, Fuß bis Rand", maxDiameter: "Größte Breite", rimDiameter: "Breite des Randes", bar: "Zwischen zwei Punkten" },
  lengthMM: "Maß",
  barHint: "Beide Enden von etwas anklicken, dessen Länge bekannt ist, etwa eines Lineals neben dem Gefäß.",
  barFront: "Es steht vor der Mitte des Gefäßes um",
  takeForm: "Gestalt übernehmen", traceStep: (name) => `Gefäß nachgezeichnet: ${name}`,
  noLength: "Der Umriss steht. Eine bekannte Länge angeben, und das Profil folgt.",
  nextLength: "Eine bekannte Länge eintippen; das Profil folgt.",
  nextTake: "Diese Gestalt übernehmen oder erst den Umriss richten.",
  nextFault: "Neben dem Bild steht, was nicht stimmt; dort richten.",
  resultSize: (h, d, n) => `${h} hoch, ${d} breit, ${n} Knoten.`,
  band: (b) => `Die Radien stimmen auf etwa ${b}.`,
  fit: (rms, most) => `Die Kurve weicht im Ganzen ${rms} vom Umriss ab (quadratisches Mittel), höchstens ${most}.`,
  sides: (d) => `Links und rechts unterscheiden sich um ${d}.`,
  lean: (d) => `Eine Neigung von ${d} wurde ausgeglichen.`,
  cameraLine: (d, from, h, hf) => `Perspektive herausgerechnet für ein Objektiv in ${d} Abstand (${from}), ${h} über dem Tisch (${hf}).`,
  cameraNone: "Die Perspektive wurde nicht herausgerechnet.",
  cameraFrom: {
    given: "wie eingetippt", focal: "aus der Brennweite in der Datei", row: "aus seiner Bildzeile", ellipses: "an Rand und Fuß gesehen",
    middle: "halbe Gefäßhöhe angenommen", none: "nicht bekannt",
  },
  notSeenTitle: "Was die Kamera nicht sah",
  notSeen: (a, b, why) => `Von ${a} bis ${b} über dem Fuß: ${why}.`,
  warnTitle: "Zu prüfen",

  // Marken auf dem Bild
  marksTitle: "Wenn der Umriss nicht stimmt", tool: "Was eine Berührung des Bildes tut",
  tools: { pot: "Dieses Gefäß", crop: "Zuschneiden", away: "Wegwischen", back: "Zurückholen", edge: "Kantenpunkte", axis: "Achse", bar: "Bekannte Länge" },
  toolHints: {
    pot: "Bei mehreren Gefäßen das gemeinte berühren. Vergrößert lässt sich das Bild durch Ziehen verschieben.",
    crop: "Einen Kasten um das Gefäß ziehen oder zwei gegenüberliegende Ecken berühren.",
    away: "Übermalen, was nicht das Gefäß ist: einen Henkel, eine Hand, einen Schatten. Die Kante des Gefäßes frei lassen, wo sie gut ist.",
    back: "Übermalen, was zum Gefäß gehört, aber ausgelassen wurde.",
    edge: "Einige Punkte an einer Kante berühren, vom Fuß bis zum Rand, oder ringsum. Dazwischen fängt die Linie die Kante.",
    axis: "Zwei Punkte auf der Achse des Gefäßes berühren, weit auseinander.",
    bar: "Beide Enden der bekannten Länge berühren.",
  },
  brushSize: "Pinsel, Anteil der Breite", edgeAround: "Die Punkte gehen rings um das Gefäß",
  markUndo: "Letzte Marke zurück", markClear: "Alle Marken weg",
  pictureKeys: "Pfeiltasten bewegen das Kreuz, mit Umschalt in größeren Schritten; Eingabe setzt es ab, das ist wie eine Berührung. Plus und Minus zoomen, 0 zeigt das Ganze.",
  pictureBench: (tool) => `Bild mit dem darauf gefundenen Umriss. ${tool}`,
  howTitle: "Wie es aufgenommen wurde",
  mode: "Das Bild ist", modes: { photo: "ein Foto", sketch: "eine Skizze auf Papier" },
  side: "Profil von", sidesOf: { mean: "beiden Seiten", left: "der linken Seite", right: "der rechten Seite" },
  top: "Oben ist es", tops: { auto: "wie der Umriss zeigt", open: "offen, mit Rand", closed: "geschlossen" },
  cameraTitle: "Wo die Kamera stand", distance: "Objektiv bis Gefäßmitte", lens: "Objektiv über dem Tisch",
  cameraHint: "Muss nicht sein. Beim Abstand genügt ungefähr; bei der Höhe genauer sein.", cameraEmpty: "unbekannt",
  tolerance: "Kurve genau auf", toleranceEmpty: "auto",

  // Zeichnungen
  svgTitle: "Welche Linie ist das Profil?", svgFrom: (from) => `Aus: ${page.source(from)}.`,
  svgUnits: "Die Zeichnung ist in", svgUnitsAsk: "wählen", svgUnit: { mm: "mm", cm: "cm", in: "Zoll", px: "px (96 je Zoll)" },
  svgUnitHint: "Eine Zeichnung, die ihre Größe selbst in mm, cm oder in nennt, behält sie.",
  svgAsk: "Die Einheit der Zeichnung wählen.",
  svgPath: (i, id) => (id ? `Linie ${i}, ${id}` : `Linie ${i}`),
  svgSize: (wd, h) => `${wd} breit, ${h} hoch`,
  svgNot: (why) => `Kein Profil. ${why}`, svgMore: (n) => `${n} weitere Linien sind kleiner und nicht gezeigt.`,
  svgAxis: "Achse bei x der Zeichnung", svgAxisEmpty: "gefunden",
  svgAxisHint: "Rechts oder links der Achse ist es dasselbe Gefäß: Eine linke Hälfte wird gespiegelt.",
  svgUse: "Diese Linie übernehmen", svgStep: (from) => `Gefäß aus Zeichnung: ${page.source(from)}`, svgLeave: "Verlassen",
};
