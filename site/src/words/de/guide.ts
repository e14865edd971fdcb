// Worte des geführten ersten Auftrags: was zu tun ist, und was zu sehen war, wenn es
// getan ist.

import type { guide as en } from "../en/guide";
import type { Like } from "../like";

export const guide: Like<typeof en> = {
  title: "Ein erster Auftrag",
  offer: "Neu hier? Ein erster Auftrag, Schritt für Schritt, dauert fünf Minuten. Vom Eigenen geht nichts verloren.",
  start: "Den ersten Auftrag beginnen", notNow: "Nicht jetzt",
  again: "Fünf Minuten, acht Schritte, auf der echten Seite. Das eigene Gefäß lässt sich am Ende zurückholen.",
  step: (i, n) => `Schritt ${i} von ${n}`,
  done: "Getan", show: "Zeigen, wo", skip: "Schritt auslassen", next: "Nächster Schritt", leave: "Verlassen", finish: "Fertig",
  over: "Das war ein ganzer Auftrag: Gefäß, Teile, Werkzeug, Gießen, Blätter und eine Datei, die alles zurückbringt.",
  left: "Der erste Auftrag ist verlassen.",
  back: (name) => `${name} zurückholen`, keep: "Behalten, was auf der Werkbank ist",
  broughtBack: "das Gefäß von vor dem ersten Auftrag zurückgeholt",
  steps: {
    pot: {
      todo: "Den Schilfbecher auf die Werkbank stellen: „Muster“ öffnen und ihn wählen.",
      seen: "Die Zeile über der Zeichnung ist das Urteil: ein Teil, und frei. Es gilt immer für das Gefäß auf der Werkbank.",
    },
    move: {
      todo: "Den Rand nach innen ziehen: Seinen Knoten auf der Zeichnung zur Achse ziehen, oder ihn wählen und − neben seinem r drücken (mit Tasten: Umschalt und Pfeil nach links), bis ein Teil nicht mehr reicht.",
      seen: "Die Wand neigt sich am Rand jetzt nach innen. Ein Unterteil allein würde dort haken oder schleifen, deshalb verlangt das Urteil mehr Teile.",
    },
    free: {
      todo: "Dafür sorgen, dass sich das Gefäß wieder löst: „Lösen“ öffnen, die nächste Gestalt suchen, die sich in einem Teil löst, und sie übernehmen; oder „Rückgängig“ drücken.",
      seen: "Ein Teil reicht wieder. Die nächste Gestalt ändert die Radien so wenig wie möglich.",
    },
    apart: {
      todo: "„Teile“ öffnen und die Form auseinandernehmen: Den Regler unter der Zeichnung ganz durchziehen.",
      seen: "Der Gips geht in Zugrichtung ab und trifft auf nichts. Wo er festsitzt, hält der Regler an und sagt es.",
    },
    tooling: {
      todo: "„Werkzeug“ öffnen.",
      seen: "Das sind die Stücke, die für diese Form zu drucken sind. Jedes druckt sich ohne Stützen, und jedes gibt es als Datei.",
    },
    wall: {
      todo: "„Gießen“ öffnen und eine andere Wand des Gussstücks eintippen, etwa 5 mm.",
      seen: "Die Zeit in der Form hat sich mit geändert, mit dem Quadrat der Wand. Gips und Wasser zum Abwiegen stehen darüber.",
    },
    sheet: {
      todo: "„Blätter“ öffnen und eines als PDF herunterladen.",
      seen: "Mit 100 % drucken und ein Lineal an die Balken legen, bevor man ihm traut.",
    },
    save: {
      todo: "Den Auftrag speichern.",
      seen: "Die Datei enthält den ganzen Auftrag. Hier oder auf jedem anderen Gerät öffnen, um weiterzumachen.",
    },
  },
};
