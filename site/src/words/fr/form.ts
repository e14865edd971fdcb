// Words of the Form panel.

import type { form as en } from "../en/form";
import type { Like } from "../like";

export const form: Like<typeof en> = {
  size: "Les longueurs sont celles", fired: "du pot cuit", wet: "de la pièce humide (taille du moule)", sizeStep: "changement de taille des longueurs",
  sizeLine: (h, d) => `hauteur ${h}, largeur ${d}`,
  sizeFired: "Cuit", sizeWet: "Humide, comme dans le moule",
  capacity: "Contenance, cuit, à ras bord",
  nodesEarlier: "Nœuds précédents", nodesLater: "Nœuds suivants", nodesShown: (a, b, n) => `Nœuds ${a} à ${b} sur ${n}`,
  nodes: "Coordonnées", radius: "Rayon, mm", height: "Hauteur, mm", kind: "Nœud",
  nodesHint: "De l’axe sous le pied vers l’extérieur, puis en montant jusqu’au bord ; retour à l’axe pour une forme fermée.",
  rowsTitle: "Taper ou coller des lignes",
  rowsHint: "Un nœud par ligne, deux nombres : distance à l’axe, puis hauteur. Séparer par des tabulations, virgules, points-virgules ou espaces ; 12,5 et 12.5 sont pareils.",
  rowsUnits: "Les lignes sont en", rowsAsk: "choisir", rowsAcross: "Le premier nombre est",
  acrossRadius: "le rayon", acrossDiameter: "le diamètre",
  rowsUse: "Prendre ces lignes", rowsStep: "lignes tapées",
  rowsNeedUnit: "Choisir l’unité des lignes : mm, cm ou in.",
  atLine: (n) => `Ligne ${n}`,
  inner: "Surface intérieure",
  innerIs: "L’intérieur du pot est",
  innerSlip: "ce que forme la barbotine",
  innerOwn: "le sien, avec un noyau",
  innerBegins: "Une surface à lui commence comme l’intérieur de la pièce vidée, à cette paroi, rentrée là où un noyau ne sortirait pas ; ensuite on déplace ses nœuds.",
  innerHint: "De l’axe, à l’intérieur du fond, vers l’extérieur, vers le haut et jusqu’au bord. Le noyau K la forme ; le pot se remplit par son pied.",
  innerClosed: "Une forme fermée n’a pas d’ouverture pour un noyau : son intérieur est ce que forme la barbotine.",
  innerFull: "Cette paroi ne laisse pas d’intérieur d’où une surface pourrait partir. Amincir la paroi de la pièce.",
  innerGiven: "surface intérieure propre", innerTaken: "surface intérieure retirée",
  shrinkage: "Retrait de la terre", drying: "Séchage", firing: "Cuisson", atRelease: "Au démoulage",
  shrinkageHint: "En pour cent de la longueur. Le séchage se mesure sur la longueur humide, la cuisson sur la longueur sèche.",
  enlarged: (f) => `Le moule est fait ${f} fois à la taille cuite.`,
};
