// Words about keeping work: versions, the saved-or-not mark, damaged files, and
// what is under way.

import type { keep as en } from "../en/keep";
import type { Like } from "../like";
import { ofSource, page } from "./page";

export const keep: Like<typeof en> = {
  versions: "Versions", versionsTitle: "Versions gardées dans ce navigateur",
  versionsHint: "La page garde les dernières versions de chaque pot, d’autant plus rapprochées qu’elles sont récentes. Le navigateur peut les jeter ; un fichier enregistré reste.",
  none: "Rien n’est encore gardé. Le premier changement d’un pot commence sa série.",
  refused: "Ce navigateur ne garde rien d’une visite à l’autre. Enregistrer le projet dans un fichier.",
  onBench: "Sur l’établi", nameless: "Un pot sans nom",
  take: "Reprendre", takeOf: (name, when) => `Reprendre ${name}, ${when}`,
  toFile: "enregistrée dans un fichier", otherTab: "d’un autre onglet ou d’une autre visite", noVerdict: "pas encore calculée", isHere: "comme sur l’établi",
  keptHere: "Non enregistré dans un fichier ; gardé dans ce navigateur", keptNowhere: "Enregistré nulle part",
  full: "Ce navigateur n’a plus de place pour garder le travail, ou le refuse. L’enregistrer dans un fichier.",
  unread: (name, why) => `Le projet de la dernière visite (${name}) ne se lit pas : ${why} Il reste parmi les versions ; ce qui était gardé avant est sur l’établi.`,
  strange: {
    empty: (from) => `Vide : ${page.source(from)}. Le pot sur l’établi n’a pas changé.`,
    page: (from) => `${page.large(from)} est une page web, non un projet. Ouvrir cette page, y choisir Enregistrer, et ouvrir le fichier qu’elle donne.`,
    zip: (from) => `${page.large(from)} est un dossier compressé. Le décompresser d’abord, puis ouvrir ce qu’il contient.`,
    pdf: (from) => `${page.large(from)} est un PDF. Une feuille ne redevient pas un projet ; ouvrir le projet enregistré, ou une image du pot.`,
    mesh: (from) => `${page.large(from)} est un maillage. Une forme vient d’un projet enregistré, de lignes de rayons et de hauteurs, d’un dessin (SVG) ou d’une image.`,
    words: (from) => `${page.large(from)} contient des mots, mais pas de nombres. Une forme vient d’un projet enregistré, de lignes de rayons et de hauteurs, d’un dessin (SVG) ou d’une image.`,
    binary: (from) => `${page.large(from)} ne contient pas de texte lisible. C’est peut-être abîmé, ou d’un autre programme. Le pot sur l’établi n’a pas changé.`,
  },
  damagedTitle: (from) => `Contenu abîmé : ${page.source(from)}`,
  damagedRows: (n) => `${n} lignes de son contour sont lisibles.`,
  damagedSure: "Regarder le contour avant de s’y fier : on ne peut pas savoir ce qui manque.",
  damagedLost: "Ce qui a été perdu ou rétabli",
  damagedTake: "Le mettre sur l’établi", damagedLeave: "Le laisser",
  damagedStep: (from) => `ouverture de ce qui est lisible ${ofSource(from)}`,
};
