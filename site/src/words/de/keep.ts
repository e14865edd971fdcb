// Worte zum Aufheben der Arbeit: Versionen, das Zeichen für gespeichert, beschädigte
// Dateien und was gerade geschieht.

import type { keep as en } from "../en/keep";
import type { Like } from "../like";
import { page } from "./page";

export const keep: Like<typeof en> = {
  versions: "Versionen", versionsTitle: "In diesem Browser aufbewahrte Versionen",
  versionsHint: "Die Seite bewahrt die letzten Versionen jedes Gefäßes auf, je neuer, desto dichter. Der Browser darf sie wegwerfen; eine gespeicherte Datei bleibt.",
  none: "Noch ist nichts aufbewahrt. Die erste Änderung eines Gefäßes beginnt seine Reihe.",
  refused: "Dieser Browser behält zwischen Besuchen nichts. Den Auftrag in einer Datei speichern.",
  onBench: "Auf der Werkbank", nameless: "Ein Gefäß ohne Namen",
  take: "Zurückholen", takeOf: (name, when) => `${name} zurückholen, ${when}`,
  toFile: "in Datei gespeichert", otherTab: "aus einem anderen Tab oder Besuch", noVerdict: "noch nicht geplant", isHere: "so auf der Werkbank",
  keptHere: "Nicht in einer Datei gespeichert; in diesem Browser aufbewahrt", keptNowhere: "Nirgends gespeichert",
  full: "Dieser Browser hat keinen Platz mehr für die Arbeit oder verweigert ihn. In einer Datei speichern.",
  unread: (name, why) => `Der Auftrag des letzten Besuchs (${name}) ist nicht lesbar: ${why} Er bleibt unter den Versionen; auf der Werkbank liegt, was davor aufbewahrt wurde.`,
  strange: {
    empty: (from) => `${page.large(from)} ist leer. Das Gefäß auf der Werkbank ist unverändert.`,
    page: (from) => `${page.large(from)} ist eine Webseite, kein Auftrag. Jene Seite öffnen, dort auf „Speichern“ drücken und die Datei öffnen, die sie gibt.`,
    zip: (from) => `${page.large(from)} ist ein gepackter Ordner. Erst entpacken, dann öffnen, was darin ist.`,
    pdf: (from) => `${page.large(from)} ist ein PDF. Aus einem Blatt wird kein Auftrag mehr; den gespeicherten Auftrag öffnen oder ein Bild des Gefäßes.`,
    mesh: (from) => `${page.large(from)} ist ein Netz. Eine Gestalt kommt aus einem gespeicherten Auftrag, Zeilen mit Radien und Höhen, einer Zeichnung (SVG) oder einem Bild.`,
    words: (from) => `${page.large(from)} enthält Wörter, aber keine Zahlen. Ein Gefäß kommt aus einem gespeicherten Auftrag, aus Zeilen mit Radien und Höhen, einer Zeichnung (SVG) oder einem Bild.`,
    binary: (from) => `${page.large(from)} enthält keinen lesbaren Text, ist vielleicht beschädigt oder von einem anderen Programm. Das Gefäß auf der Werkbank ist unverändert.`,
  },
  damagedTitle: (from) => `${page.large(from)} ist beschädigt`,
  damagedRows: (n) => `${n} Zeilen des Umrisses sind lesbar.`,
  damagedSure: "Den Umriss ansehen, bevor man ihm traut: Was fehlt, lässt sich nicht wissen.",
  damagedLost: "Was verloren ging oder gerichtet wurde",
  damagedTake: "Auf die Werkbank legen", damagedLeave: "Liegen lassen",
  damagedStep: (from) => `Geöffnet, was lesbar war: ${page.source(from)}`,
};
