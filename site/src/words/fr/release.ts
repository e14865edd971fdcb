// Words of the Release panel.

import type { release as en } from "../en/release";
import type { Like } from "../like";
import { partName } from "./verdict";

export const release: Like<typeof en> = {
  pullTitle: "Tirage à regarder", pullGroup: "Tirage",
  pullOfPart: (part) => `${partName(part)[0]!.toUpperCase()}${partName(part).slice(1)}`,
  pullWhole: ["Paroi entière, bas", "Paroi entière, haut", "Paroi entière, côté"],
  pullNoBands: "Aucune découpe ne tient la paroi entière sous ce tirage ; le dessin montre sa dépouille et où elle accroche.",
  stretch: "Étirer les écarts de rayon", stretchBy: (n) => (n === 1 ? "vrai" : `×${n}`),
  stretchLine: "mesurés depuis", stretchEnds: "une droite du pied au bord", stretchUpright: "une verticale au plus large",
  stretchHint: "Un demi-millimètre décide si une paroi se démoule. La moitié gauche du dessin montre de combien la paroi s’écarte de cette ligne, agrandi d’autant.",
  stretchCaption: (n) => `rayons ×${n}`, stretchDescribed: (most, z, least, zl) =>
    `De cette ligne, la paroi s’écarte de ${most} en dehors à ${z}, et de ${least} en dedans à ${zl}.`,
  leastDraft: "Dépouille minimale", rubShare: "Peut frotter sur",
  rubShareHint: "de la paroi d’une partie avant qu’on dise qu’elle frotte", rulesTitle: "Ce qui compte comme libre",
  draftTitle: "Dépouille de la paroi", draftRange: (a, b) => `${a} à ${b}`,
  underDraft: "sous 0°, contre-dépouille", area: "Surface", catchesTitle: "Où cela accroche", trapsTitle: "Ce qu’aucun tirage ne libère",
  noCatch: "Rien ne la gêne.",
  catchLine: (where, d, by) => `Elle accroche de ${d} au plus ${where} au-dessus du pied ; la paroi à ${by} gêne.`,
  clayLeft: (d) => `La terre en pardonne une part : il reste ${d} pour la pièce.`,
  clayNone: "La terre n’en pardonne rien.",
  forgiven: (d) => `La terre pardonne les ${d} entiers ; seul le positif rigide accroche.`,
  trapLine: (a, b, d, v) => `Entre ${a} et ${b} : ${d} de profondeur, ${v}.`,
  trapInside: (a, b, d, v) => `À l’intérieur, entre ${a} et ${b} : ${d} de profondeur, ${v}.`,
  leastOnPart: (min, share, least) => `Dépouille minimale sur cette partie : ${min}. ${share} en a moins de ${least}.`,
  draftLegend: "Dépouille",
  findings: "À savoir avant d’imprimer", showPlace: "Montrer", showPlaceOf: (t) => `Montrer sur le dessin : ${t}`,
  nearTitle: "La forme la plus proche qui se démoule",
  nearHint: "Seuls les rayons changent, et aussi peu que possible. La ligne fantôme sur le dessin est cette forme.",
  nearIn: { one: "En une partie", two: "En une partie inférieure et une supérieure" },
  nearChange: (most, z, rms) => `Plus grand changement ${most}, ${z} au-dessus du pied ; ${rms} sur le tout (moyenne quadratique).`,
  nearNone: "Elle se démoule comme elle est.", nearTake: "Adopter cette forme", nearTakeIn: { one: "Adopter cette forme : en une partie", two: "Adopter cette forme : en une partie inférieure et une supérieure" },
  nearSteps: { one: "forme la plus proche adoptée, en une partie", two: "forme la plus proche adoptée, en une partie inférieure et une supérieure" },
  nearGhost: "Ligne fantôme", ghosts: { one: "une partie", two: "deux parties", none: "aucune" }, nearWait: "Calcul en cours…", ghost: "forme la plus proche",
  remediesTitle: "Petits changements qui économisent une partie", remediesFind: "Chercher de petits changements",
  remediesNone: "Aucun changement d’un seul endroit n’économise une partie.", remedyTake: "Faire ce changement", remedyStep: (s) => `petit changement fait : ${s}`,
  remedyCodes: { taper: "dépouille", tiltFoot: "paroi du pied inclinée", moveParting: "joint déplacé" },
  flowTitle: "Remplir et vider", flowDrains: "Retournée, la pièce se vide entièrement.",
  flowFills: "Si l’on remplit lentement, aucun air ne reste.",
  flowAir: (v, a, b) => `De l’air reste sous la voûte quand on verse la barbotine : ${v}, entre ${a} et ${b}. Incliner le moule en remplissant, ou percer un évent à cet endroit.`,
  flowSlip: (v, a) => `Retournée, la pièce garde ${v} de barbotine, jusqu’à ${a} au-dessus du pied. Rouler le moule pendant qu’il se vide.`,
  flowFull: "La paroi remplit l’intérieur : la barbotine ne peut pas être reversée.",
  flowSolid: "Rien n’est vidé : la pièce est coulée pleine entre les parties extérieures et le noyau.",
  airMark: (v) => `air ${v}`, slipMark: (v) => `barbotine ${v}`,
};
