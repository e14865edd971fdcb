// Worte des Musterregals: wie jedes Gefäß heißt und was es zeigt.

import type { shelf as en } from "../en/shelf";
import type { Like } from "../like";

export const shelf: Like<typeof en> = {
  shelf: "Das Musterregal",
  shelfHint: "Gefäße einer Werkstatt, die es nicht gibt, eines für jede Art, eine Form zu teilen. Das eigene kommt genauso auf die Werkbank.",
  shelfAll: "Was jedes zeigt", shelfAway: "Regal wegräumen",
  shelfOpen: "Muster",
  samples: {
    "Harbour jar": ["Hafendose", "Zwei Teile, geteilt am Bauch."],
    "Reed beaker": ["Schilfbecher", "Ein Teil: Er wird bis zum Rand immer weiter."],
    "Quay dish": ["Kaischale", "Voll gegossen: Ein Kern formt das Innere, gefüllt wird durch den Fuß."],
    "Skep pot": ["Bienenkorbtopf", "Geschlossen: zwei Teile und ein Loch zum Füllen."],
    "Reed-cut cup": ["Riefentasse", "Kanneluren, die sich noch in einem Teil lösen."],
    "Slate lid": ["Schieferdeckel", "Er öffnet sich nach unten und wird kopfüber gegossen, in einem Teil."],
    "Sand amphora": ["Sandamphore", "Zwei Seitenteile und sonst nichts: Sie hat keinen Fuß."],
    "Heron vase": ["Reihervase", "Eine Taille: zwei Seitenteile und ein Unterteil."],
    "Skiff vase": ["Kahnvase", "Ovaler Querschnitt: zwei Seitenteile und ein Unterteil."],
    "Cone buoy": ["Kegelboje", "Eine flache Oberseite: zwei Seitenteile und ein Oberteil."],
    "Trivet vase": ["Dreifußvase", "Dreikantiger Querschnitt: drei Seitenteile und ein Unterteil."],
    "Hail beaker": ["Hagelbecher", "Dellen in der Wand verlangen ein drittes Seitenteil."],
    "Reel bottle": ["Spulenflasche", "An beiden Enden flach: zwei Seitenteile, ein Unter- und ein Oberteil."],
    "Dovetail dish": ["Zinkenschale", "Ein Fuß, den kein Zug löst: Die Falle ansehen, dann das Gefäß ändern."],
  },
  putOn: (name, line) => `${name}: ${line}`,
};
