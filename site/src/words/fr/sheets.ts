// Words of the Sheets panel.

import type { sheets as en } from "../en/sheets";
import type { Like } from "../like";

export const sheets: Like<typeof en> = {
  paper: "Papier", getPdf: "Télécharger le PDF", getSvg: "Télécharger le SVG",
  pages: (n) => `${n} page${n <= 1 ? "" : "s"}`,
  making: "La feuille se dessine…",

  sheets: {
    profile: ["Profil, vraie taille", "Y poser le pot, une estèque ou le positif."],
    template: ["Gabarit, vraie taille", "Le découper dans du carton et le tenir contre terre ou plâtre."],
    section: ["Coupe du moule fermé", "Parties, coutures, tirages et cotes, à l’échelle."],
    report: ["Rapport de moule", "Le verdict, pourquoi pas moins, les chiffres et leurs sources."],
    workshop: ["Fiche d’atelier", "Une page pour le mur : gâchées, temps, ordre, sangles."],
  },
  whichSheet: "Feuille", lines: "Ligne", linesFired: "taille cuite", linesWet: "taille humide, comme dans le moule", linesBoth: "les deux",
  shape: "Forme", half: "demi-profil", full: "silhouette entière",
  summaryOnly: "Première page seule",
  beforePrint: "Imprimer à 100 %, « taille réelle », jamais « ajuster à la page ». Puis poser une règle sur les barres.",
  scaleTitle: "Les barres ne font pas 100 mm ?",
  scaleHint: "Taper ce que dit la règle. La feuille est dessinée d’autant plus grande ou plus petite, pour que la prochaine soit juste ; garder les mêmes réglages d’imprimante.",
  barAcross: "Barre en travers de la page", barUp: "Barre en hauteur",
  scaleOn: (x, y) => `Dessinée pour une imprimante qui fait de 100 mm ${x} en largeur et ${y} en hauteur.`,
  scaleOff: "Revenir à 100 mm", scaleBad: "Ce n’est pas une barre de 100 mm. Mesurer encore d’un bout à l’autre ; de 90 à 110 mm, cela se compense.",
  pageOf: (i, n) => `Page ${i} sur ${n}`,
  svgOf: (i) => `SVG de la page ${i}`,
  zoomed: "Ouvrir en grand", pageAlt: (sheet, i, n) => `${sheet}, page ${i} sur ${n}. Ouvrir en grand.`,
};
