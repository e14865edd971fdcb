// Words of the verdict line, of what to do next, and of the parts by name.

import type { partName as enPartName, verdict as en } from "../en/verdict";
import type { Like } from "../like";

const count = ["Aucune", "Une", "Deux", "Trois", "Quatre", "Cinq", "Six", "Sept"];

/** A part by its name in the plan. All are feminine but the core. */
export const partName: typeof enPartName = (name) => (
  name === "lower" ? "partie inférieure" : name === "upper" ? "partie supérieure" : name === "core" ? "noyau" : `partie latérale ${name}`);
/** The same with its article. */
export const thePart = (name: string): string => `${name === "core" ? "le" : "la"} ${partName(name)}`;
/** What is said of a part, in its gender: a participle in the masculine. */
export const ofPart = (name: string, said: string): string => (name === "core" ? said : `${said}e`);

export const verdict: Like<typeof en> = {
  starting: "L’établi se prépare…",
  parts: (n) => `${count[n] ?? n} partie${n <= 1 ? "" : "s"} :`,
  verdict: { clear: "Libre", rubs: "Frotte", catches: "Accroche" },
  partName,
  cannotPlan: "Pas encore de plan.", tryAgain: "Réessayer",
  stillShown: "Le dessin montre la dernière forme qui a pu être calculée.",
  next: "Ensuite",
  nextFault: "Corriger ce qui est nommé plus haut, ou annuler la dernière étape.",
  nextCatch: "Voir où cela accroche, et quel changement de forme libérerait la partie.",
  nextRub: "Voir où cela frotte, et y donner plus de dépouille à la paroi.",
  nextClear: "Imprimer ce autour de quoi on coule le plâtre.",
  nextTooling: "Peser le plâtre et la barbotine.",
  nextCasting: "Emporter les feuilles à l’établi.",
  nextSheets: "Enregistrer le projet, pour pouvoir y revenir.",
  go: (tab) => `Aller à ${tab}`,

  atHeight: (z) => `à ${z}`,
  betweenHeights: (a, b) => `entre ${a} et ${b}`,
  robustAny: "Valable, quelle que soit l’erreur des rayons.",
  robust: {
    fewer: (scheme, mm) => `Valable tant que chaque rayon est juste à ${mm} ; au-delà, cela pourrait aller avec ${scheme}.`,
    catches: (at, mm) => `Valable tant que chaque rayon est juste à ${mm} ; au-delà, la paroi pourrait accrocher ${at}.`,
    rubs: (at, mm) => `Valable tant que chaque rayon est juste à ${mm} ; au-delà, la paroi pourrait frotter ${at}.`,
  },
  robustNone: {
    fewer: (scheme) => `Tout juste valable : à la moindre erreur d’un rayon, cela pourrait aller avec ${scheme}.`,
    catches: (at) => `Tout juste valable : à la moindre erreur d’un rayon, la paroi pourrait accrocher ${at}.`,
    rubs: (at) => `Tout juste valable : à la moindre erreur d’un rayon, la paroi pourrait frotter ${at}.`,
  },
};
