// Words of the drawing, and of what can be done on it.

import type { drawing as en } from "../en/drawing";
import type { Like } from "../like";

export const drawing: Like<typeof en> = {
  drawing: "Dessin du pot et de son moule : élévation à gauche, coupe à droite",
  axisUnit: "mm dans le moule",
  drawingHint: "Faire glisser un nœud, ou le choisir et presser − ou + dans la barre au-dessous, ou utiliser les flèches : 0,1 mm, avec Maj 1 mm, avec Alt 0,01 mm. Entrée change un angle en courbe et retour, Inser ajoute un nœud, Suppr en supprime un. Plus et moins : zoom ; 0 : vue entière.",
  nodeLabel: (i, n, r, z, kind) => `Nœud ${i} sur ${n}, rayon ${r}, hauteur ${z}, ${kind}`,
  node: (i) => `Nœud ${i}`,
  noNode: "Choisir un nœud sur le dessin ou dans le tableau pour le déplacer.",
  corner: "angle", smooth: "lisse", nodeTurn: (i, corner) => (corner ? `Nœud ${i} : angle, le rendre lisse` : `Nœud ${i} : lisse, en faire un angle`),
  nodeRadius: (i) => `Nœud ${i}, rayon, mm`, nodeHeight: (i) => `Nœud ${i}, hauteur, mm`,
  addAfter: "Ajouter après", remove: "Supprimer", addAfterNode: (i) => `Ajouter après ${i}`, removeNode: (i) => `Supprimer ${i}`,
  nudgeIn: "1 mm vers l’axe", nudgeOut: "1 mm vers l’extérieur", nudgeDown: "1 mm plus bas", nudgeUp: "1 mm plus haut",
  moved: (i) => `nœud ${i} déplacé`, added: (i) => `nœud ajouté après ${i}`,
  removed: (i) => `nœud ${i} supprimé`, turned: (i) => `nœud ${i} angle ou lisse`,
  thickest: (d) => `Paroi la plus épaisse : ${d}, où la terre prend en dernier.`, thickestPlace: "paroi la plus épaisse",
  elevation: "élévation", section: "coupe", trimLine: "ligne de coupe",
  seam: (z) => `couture ${z}`,
  catchMark: (d) => `accroche ${d}`, trapMark: (d) => `piège ${d}`,

  // the editor
  zoom: "Zoom", zoomIn: "Plus près", zoomOut: "Plus loin", zoomWhole: "Entier",
  panLeft: "Montrer à gauche", panRight: "Montrer à droite", panUp: "Montrer plus haut", panDown: "Montrer plus bas",
  firstNode: "Choisir le nœud 1", nodeBefore: "Nœud d’avant", nodeAfter: "Nœud d’après",
  toward: (k) => `vers le nœud ${k}`, straight: "droit", upright: "vertical", level: "de niveau", snap: "Caler",
  straightened: (i, k) => `tronçon du nœud ${i} au nœud ${k} redressé`,
  linedUp: (i, k, how) => `nœud ${i} mis ${how === "upright" ? "à l’aplomb" : "au niveau"} du nœud ${k}`,
  behind: "Image derrière le profil", behindShow: "Montrer l’image", behindHow: "Intensité",
};
