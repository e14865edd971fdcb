// Words of the Parts panel, of the view in space and of the cut across the axis.

import type { parts as en } from "../en/parts";
import type { Like } from "../like";
import { ofPart, partName, thePart } from "./verdict";

const large = (s: string): string => s.charAt(0).toUpperCase() + s.slice(1);

export const parts: Like<typeof en> = {
  schemes: "Façons de découper cette forme", chosen: "choisie", auto: "Choisir pour moi",
  autoHint: "le moins de parties qui se tirent librement",
  whyTitle: "Pourquoi pas moins",
  moreParts: (n: number) => `${n} façons avec plus de parties`, moreFewer: (n: number) => `${n} autres avec moins de parties`,
  order: "Démonter le moule dans cet ordre", heights: "Hauteur de joint", heightOf: (i) => `Hauteur de joint ${i}`,
  sides: "Parties latérales", sidesAuto: "selon le plan", natches: "Clés",
  atFootShort: "pied",
  seamHandle: (i, n) => (n > 1 ? `Hauteur de joint ${i} sur ${n}` : "Hauteur de joint"),
  seamHint: "Faire glisser la couture sur le dessin, presser − ou +, y utiliser les flèches, ou taper sa hauteur.",
  seamFree: "Libérer la couture", seamStep: "joint déplacé", seamsFreed: "joint libéré",
  whyShow: "Montrer pourquoi sur le dessin",
  evidenceCatch: (part, d) => `${large(partName(part))} : ${ofPart(part, "retenu")} de ${d}`, evidenceRub: (part, share) => `${large(partName(part))} : frotte sur ${share}`,
  apartTitle: "Démonter le moule", apartFrom: "Les parties quittent",
  bodies: { positive: "le positif imprimé", cast: "la pièce coulée" },
  apartClosed: "Fermé.", apartMoving: (part, n, of) => `Étape ${n} sur ${of} : ${thePart(part)} s’éloigne.`,
  apartDone: "Toutes les parties sont enlevées.",
  apartSticks: (part, d, z) => `${large(thePart(part))} reste ${part === "core" ? "pris" : "prise"}, ${ofPart(part, "retenu")} de ${d} derrière ce qui est ${z} au-dessus du pied. Rien ne bouge au-delà.`,
  apartPulls: { down: "vers le bas", up: "vers le haut", out: "de côté" },
  heightsTitle: "Où les parties se joignent",
  views: "Vue de l’établi", viewDrawing: "Dessin", viewSpace: "En volume",
  spaceAlt: { mold: "Le moule en volume, ses parties dans leurs couleurs et la pièce dedans", kit: "Les pièces imprimées disposées en volume" },
  spaceKeys: "Les flèches tournent la vue, plus et moins approchent et éloignent, 0 la ramène au début.",
  spaceTurn: "Tourner la vue", turnLeft: "Tourner à gauche", turnRight: "Tourner à droite", turnUp: "Voir de plus haut", turnDown: "Voir de plus bas",
  nearer: "Plus près", farther: "Plus loin", turnHome: "Début",
  spaceWait: "Construction des solides…", spaceNone: "Ce navigateur ne peut pas dessiner en volume. Le tableau ci-dessous dit ce qui serait ici.",
  spaceNoStart: "La vue en volume n’a pas démarré.",
  spaceShows: "Ce qui est montré", spaceOf: { mold: "Moule et pièce", kit: "Pièces imprimées" }, cut: "Coupé", cutAt: "Où il est coupé",
  spaceTable: "Ce qui est ici, en tableau", spaceBody: "Corps", spacePull: "Tirage", spaceSize: "Taille, mm, et volume", spaceCast: "pièce",
  sectionTitle: "Coupe transversale", sectionKind: "Le pot est", sectionKinds: { round: "rond", oval: "ovale", polygon: "à facettes", flutes: "cannelé" },
  ratio: "Petite sur grande largeur", faces: "Faces", flutes: "Cannelures", rounding: "Arrondi des angles", depth: "Profondeur", ofRadius: "% du rayon",
  ofFace: "% de l’axe à la face",
  sectionHint: "Les rayons du profil sont les plus grands à chaque hauteur.",
  dimples: "Fossettes dans la paroi", dimplesAround: "Sur le tour", dimplesRows: "Rangées aux hauteurs, mm", dimplesAcross: "Diamètre",
  dimplesRowsBad: "Écrire les hauteurs séparées par des espaces, comme 40 60 80.",
  crossAlt: (kind, seams) => `Coupe transversale à l’endroit le plus large : ${kind}. ${seams}`,
  crossSeams: (n, turn) => `${n} parties latérales ; la coupe est tournée de ${turn} par rapport aux coutures.`, crossNoSeams: "Pas de coutures verticales.",
  crossTurn: (t) => `tournée de ${t}`,
  natchesHint: "dômes et logements dans les coutures, pour que le moule ne se ferme que d’une façon",
  spare: "Réserve au-dessus du bord", none: "aucune",
  plasterWall: "Plâtre, paroi minimale", plasterBase: "Plâtre, fond",
  fillHole: "Trou de coulée, diamètre", drainHole: "Trou de vidange, diamètre",
  advised: "conseillée", chose: (s) => `découpe : ${s}`, choseAuto: "découpe : choisie pour moi",
};
