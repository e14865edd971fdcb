// Words of tracing a picture and of reading a drawing; in the table under trace.

import type { trace as en } from "../en/trace";
import type { Like } from "../like";
import { ofSource } from "./page";

export const trace: Like<typeof en> = {
  // where a form comes from
  sourceTitle: "D’après une image ou un dessin",
  photoPick: "Choisir une image", photoTake: "Prendre une photo", svgPick: "Ouvrir un dessin (SVG)",
  sourceHint: "Une photo prise de face, un scan ou un croquis sur papier. Reculer de dix fois le plus grand rayon, zoomer, et tenir l’objectif à mi-hauteur du pot. L’image reste dans cette page ; elle n’est envoyée à personne.",
  outTitle: "Sortir le profil", outSvg: "Profil en SVG", outRows: "Coordonnées en texte",

  // tracing
  traceTitle: "Relever une image",
  opening: "L’image s’ouvre…", outlining: "Recherche du contour…", tracing: "Relevé en cours…",
  notPicture: (name) => `${name} n’est pas une image que ce navigateur sait lire. Prendre un fichier JPEG, PNG ou WebP. Le pot sur l’établi n’a pas changé.`,
  pictureHuge: (name, mp) => `${name} a ${mp} millions de pixels ; au-delà de 100 millions rien n’est ouvert. La réduire et essayer encore. Le pot sur l’établi n’a pas changé.`,
  pictureScaled: (a, b) => `L’image de ${a} pixels a été réduite à ${b} ; c’est bien assez pour un contour.`,
  otherPicture: "Autre image", leaveTrace: "Quitter", backToPicture: "Retour à l’image",
  lengthTitle: "Une longueur connue",
  lengthOf: { height: "Hauteur, du pied au bord", maxDiameter: "Plus grande largeur", rimDiameter: "Largeur du bord", bar: "Entre deux points" },
  lengthMM: "Mesure",
  barHint: "Cliquer sur les deux bouts d’une chose de longueur connue, comme une règle à côté du pot.",
  barFront: "Devant le milieu du pot, à",
  takeForm: "Adopter cette forme", traceStep: (name) => `forme relevée de ${name}`,
  noLength: "Le contour est là. Donner une longueur connue, et le profil suit.",
  nextLength: "Taper une longueur connue ; le profil suit.",
  nextTake: "Adopter cette forme, ou corriger d’abord le contour.",
  nextFault: "Voir à côté de l’image ce qui ne va pas, et l’y corriger.",
  resultSize: (h, d, n) => `Hauteur ${h}, largeur ${d}, ${n} nœuds.`,
  band: (b) => `Les rayons sont justes à environ ${b}.`,
  fit: (rms, most) => `La courbe reste à ${rms} du contour en tout (moyenne quadratique), à ${most} au plus.`,
  sides: (d) => `Gauche et droite diffèrent de ${d}.`,
  lean: (d) => `Une inclinaison de ${d} a été corrigée.`,
  cameraLine: (d, from, h, hf) => `Perspective corrigée pour un objectif à ${d} (${from}), ${h} au-dessus de la table (${hf}).`,
  cameraNone: "La perspective n’a pas été corrigée.",
  cameraFrom: {
    given: "comme tapé", focal: "d’après la focale dans le fichier", row: "d’après sa ligne dans l’image", ellipses: "vu au bord et au pied",
    middle: "pris à mi-hauteur du pot", none: "inconnue",
  },
  notSeenTitle: "Ce que l’appareil n’a pas vu",
  notSeen: (a, b, why) => `De ${a} à ${b} au-dessus du pied : ${why}.`,
  warnTitle: "À examiner",

  // marks on the picture
  marksTitle: "Si le contour est faux", tool: "Ce que fait un toucher sur l’image",
  tools: { pot: "Ce pot", crop: "Cadrer", away: "Effacer", back: "Remettre", edge: "Points du bord", axis: "Axe", bar: "Longueur connue" },
  toolHints: {
    pot: "Toucher le bon pot, s’il y en a plusieurs. Faire glisser l’image pour se déplacer une fois de près.",
    crop: "Tracer un cadre autour du pot, ou toucher deux coins opposés.",
    away: "Peindre ce qui n’est pas le pot : une anse, une main, une ombre. Laisser le bord du pot découvert là où il est bon.",
    back: "Peindre ce qui est du pot mais a été laissé de côté.",
    edge: "Toucher quelques points le long d’un bord, du pied au haut, ou tout autour. Entre eux la ligne se cale sur le bord.",
    axis: "Toucher deux points de l’axe du pot, loin l’un de l’autre.",
    bar: "Toucher les deux bouts de la longueur connue.",
  },
  brushSize: "Pinceau, part de la largeur", edgeAround: "Les points font tout le tour du pot",
  markUndo: "Reprendre la dernière marque", markClear: "Effacer toutes les marques",
  pictureKeys: "Les flèches déplacent la croix, avec Maj à plus grands pas ; Entrée la pose, comme un toucher. Plus et moins : zoom ; 0 : vue entière.",
  pictureBench: (tool) => `Image avec le contour trouvé dessus. ${tool}`,
  howTitle: "Comment elle a été prise",
  mode: "L’image est", modes: { photo: "une photo", sketch: "un croquis sur papier" },
  side: "Profil pris", sidesOf: { mean: "des deux côtés", left: "du côté gauche", right: "du côté droit" },
  top: "Le haut est", tops: { auto: "comme le contour le montre", open: "ouvert, avec un bord", closed: "fermé" },
  cameraTitle: "Où était l’appareil", distance: "De l’objectif au milieu du pot", lens: "Objectif au-dessus de la table",
  cameraHint: "Facultatif. À peu près suffit pour la distance ; plus de soin pour la hauteur.", cameraEmpty: "inconnue",
  tolerance: "Courbe à moins de", toleranceEmpty: "auto",

  // drawings
  svgTitle: "Quelle ligne est le profil ?", svgFrom: (from) => `Tiré ${ofSource(from)}.`,
  svgUnits: "Le dessin est en", svgUnitsAsk: "choisir", svgUnit: { mm: "mm", cm: "cm", in: "pouces", px: "px (96 par pouce)" },
  svgUnitHint: "Un dessin qui donne sa propre taille en mm, cm ou in la garde.",
  svgAsk: "Choisir l’unité du dessin.",
  svgPath: (i, id) => (id ? `Ligne ${i}, ${id}` : `Ligne ${i}`),
  svgSize: (wd, h) => `largeur ${wd}, hauteur ${h}`,
  svgNot: (why) => `Pas de profil. ${why}`, svgMore: (n) => (n === 1 ? "1 ligne de plus, plus petite, n’est pas montrée." : `${n} lignes de plus, plus petites, ne sont pas montrées.`),
  svgAxis: "Axe à x du dessin", svgAxisEmpty: "trouvé",
  svgAxisHint: "À droite ou à gauche de l’axe, c’est le même pot : une moitié gauche est retournée.",
  svgUse: "Adopter cette ligne", svgStep: (from) => `forme tirée ${ofSource(from)}`, svgLeave: "Quitter",
};
