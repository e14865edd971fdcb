// Words of the Casting panel.

import type { casting as en } from "../en/casting";
import type { Like } from "../like";

const nth = ["Premier", "Deuxième", "Troisième", "Quatrième", "Cinquième", "Sixième", "Septième", "Huitième"];

export const casting: Like<typeof en> = {
  // figures
  how: "calcul", howOf: (label) => `D’où vient « ${label} »`, figureSource: "Source",
  more: (n) => (n === 1 ? "Un chiffre de plus" : `${n} chiffres de plus`),
  caution: "Prudence", cautionsHere: "Prudence",
  defaultIs: (v) => `sauf mesure : ${v}`,
  noneSet: "aucun",

  // settings
  part: "Partie", plaster: "Plâtre", water: "Eau",
  consistency: "Rapport eau/plâtre", consistencyHint: "parts d’eau pour 100 de plâtre, en poids",
  wall: "Paroi de la pièce, humide", slipDensity: "Poids de la barbotine", solidsDensity: "Poids de la terre, sèche et pleine",

  // panel
  glance: "En bref",
  glanceNames: {
    mixPlaster: "Plâtre", mixWater: "Eau", minutes: "Temps en moule", slipFill: "Barbotine", castsPerDay: "Coulages/jour", liftFull: "Moule plein",
  },
  mix: "Le plâtre, dans l’ordre de gâchage",
  mixHint: "Une gâchée par ligne. L’eau d’abord, puis y tamiser le plâtre. La perte est comptée.",
  bucketsOf: "Seaux", inEach: "chacun",
  total: "Ensemble",
  castTitle: "La barbotine et son temps dans le moule",
  wallsTitle: "Paroi selon le temps", wallsFaces: "Paroi sur chacune des deux faces selon le temps", wanted: "voulue",
  afterMinutes: "Quelle paroi après",
  laterTitle: "Coulages d’une journée",
  laterLine: (i, m) => `${nth[i] ?? `${i + 1}e`} coulage : ${m}`,
  laterNone: "Un coulage mouille trop ce moule pour un second le même jour.",
  slipIn: "Pesée en", slipUnits: { ml: "g par ml", litre: "g par litre", pint: "oz par pinte impériale" },
  trialsTitle: "Vos coulages d’essai",
  trialsHint: "Couper un essai en travers et mesurer sa paroi humide. S’il y en a plusieurs, la vitesse est ajustée sur tous et leur écart est donné.",
  trial: (i) => `Essai ${i}`, trialWall: "Paroi, mm", trialMinutes: "Temps, min",
  addTrial: "Ajouter un essai", removeTrial: (i) => `Supprimer l’essai ${i}`,
  trialAdded: "essai ajouté", trialRemoved: "essai supprimé",
  potTitle: "La pièce et le pot",
  forceTitle: "Sangles et levage",
  shrinkTitle: "Retrait, d’après des barrettes d’essai",
  barsHint: "Marquer une longueur sur une barrette et la mesurer humide, sèche et cuite, dans une même unité. L’ASTM C326 demande dix barrettes ; une vaut mieux qu’aucune.",
  bar: (i) => `Barrette ${i}`, barLength: (i, when) => `Barrette ${i}, ${when}`, barNames: { wet: "Humide", dry: "Sèche", fired: "Cuite" },
  addBar: "Ajouter une barrette", removeBar: (i) => `Supprimer la barrette ${i}`,
  barsResult: (d, f, t) => `Séchage ${d}, cuisson ${f}, total ${t}.`,
  barsSpread: (s, n) => `Les totaux de ${n} barrettes diffèrent de ${s}.`,
  barsUse: "Prendre ces retraits", barsUsed: "retrait d’après les barrettes", barsSaid: "Le retrait des barrettes d’essai est utilisé.",
  barsInUse: "Ce sont les retraits utilisés.",
  ownTitle: "Vos propres mesures",
  ownHint: "Tout fonctionne avec ce qui est ici. Mettre son propre chiffre une fois mesuré.",
  ownGroups: {
    clay: "Terre et pièce", mix: "Gâchage du plâtre", data: "De la fiche du fabricant de plâtre", water: "Eau et séchage",
    pot: "Le pot en usage", bands: "Sangles", lift: "Le levage",
  },
  own: {
    castMoisture: ["Eau d’une pièce fraîche", "% de la masse humide"], lossOnIgnition: ["Perte au feu", "% de la masse sèche"],
    waste: ["Plâtre pour la perte", "%"], bucket: ["Le seau contient", "ml"], bucketFill: ["Rempli au plus à", "%"],
    publishedWetDensity: ["Densité du mélange", "g/ml"], absorption: ["Le plâtre sec absorbe", "% de la masse sèche"],
    settingExpansion: ["Expansion de prise", "%"],
    halfRateWater: ["Tire moitié moins vite à", "% de la masse sèche"], dryingRate: ["Sèche de", "g/cm² min"],
    laterCastSlowdown: ["Chaque coulage suivant", "% plus long"],
    glaze: ["Épaisseur de l’émail cuit", "mm"], glazeDensity: ["Densité de l’émail cuit", "g/ml"], fillLine: ["Niveau de remplissage sous le bord", "mm"],
    bandTension: ["Une sangle tire", "N"], bandSafety: ["Sécurité des sangles", "fois"],
    reach: ["Mains depuis les chevilles", "cm"], hands: ["Mains au-dessus du sol", "cm"], travel: ["Hauteur du levage", "cm"], twist: ["Rotation du corps", "°"],
  },
};
