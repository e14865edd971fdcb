// Words of the Tooling panel.

import type { tooling as en } from "../en/tooling";
import type { Like } from "../like";
import { thePart } from "./verdict";

export const tooling: Like<typeof en> = {
  layer: "Couche", clearance: "Jeu", shell: "Coque", staves: "Éléments de coffrage",
  noPrints: "Il n’y a encore rien à imprimer pour cette découpe.",

  printsTitle: "Pièces à imprimer",
  printsHint: "Chaque pièce est tournée comme elle s’imprime, sa face utile se démoulant vers le haut.",
  forPart: (part) => `Pour ${thePart(part)}`,
  fits: "tient sur le plateau", fitsNot: "plus grande que le plateau",
  bedLine: (s) => `Pour un plateau d’imprimante de ${s}.`, bedChange: "Changer", bedChangeAsk: "Changer le plateau de l’imprimante",
  bedPicture: (fit) => `Emprise sur le plateau : ${fit}`,
  weighs: (m, l, overhang) => `${m} imprimée pleine, ${l} de filament ; ${overhang}`,
  overhang: (d) => `surplomb le plus fort ${d}, sans supports`, overhangHigh: (d) => `surplomb le plus fort ${d}, demande des supports`,
  noOverhang: "sans surplomb",
  stl: "STL", stlOf: (name) => `Télécharger ${name} en STL`,
  allPrints: "Toutes les pièces (3MF)", everything: "Tout (zip)",
  everythingHint: "Le zip contient chaque pièce, les parties de plâtre et la pièce coulée, les feuilles et le projet, avec une liste de tout.",
  bodiesTitle: "Parties de plâtre et pièce coulée", bodiesHint: "Là où elles sont dans le moule fermé, à regarder ou à vérifier ; rien de cela ne s’imprime.",
  castName: "pièce coulée", dryMass: (m) => `${m} à sec`, making3d: "Construction des maillages…",
  printerTitle: "Imprimante", blockTitle: "Bloc de plâtre", kitTitle: "Moule et outillage",
  bedAxis: (a) => `Plateau ${a}`, nozzle: "Buse", solidPositive: "Positifs imprimés pleins", solidHint: "au lieu de creux par-dessous",
  outside: "Extérieur du bloc", outsideRound: "rond", outsideStraight: "à côtés droits",
  outsideHint: "Un moule à parties latérales a de toute façon des côtés droits.",
  spareOn: "Réserve au-dessus de la ligne de coupe", spareHint: "un réservoir qui garde le bord couvert pendant que la barbotine baisse", spareHeight: "Hauteur de la réserve",
  spareFlared: "Réserve évasée aussi dans une partie supérieure", spareFlaredHint: "plus facile à verser ; un bouchon à part la forme, et sa terre est coupée avant de soulever la partie",
  strapGrooves: "Gorges de sangle", strapHint: "autour des parties latérales, pour y loger les sangles",
  ifNeeded: "s’il le faut",
  stavesHint: "Un seul élément se tire vers le haut ; deux ou plus s’enlèvent de côté.",
  printCautions: [
    "Le plastique fondu dégage des vapeurs et des particules fines : aérer la pièce, ou imprimer dans un caisson ventilé vers l’extérieur.",
    "La résine non durcie attaque la peau, les yeux et les poumons : gants, lunettes et air frais ; durcir les pièces et les résidus de rinçage avant de les jeter.",
    "La buse et le plateau restent chauds après l’impression ; poncer à l’eau, pour qu’aucune poussière ne vole. Suivre les fiches de sécurité des fabricants et les règles locales.",
  ],
};
