// Words of the guided first job: what to do, and what was seen once it is done.

import type { guide as en } from "../en/guide";
import type { Like } from "../like";

export const guide: Like<typeof en> = {
  title: "Un premier projet",
  offer: "Première visite ? Un premier projet, pas à pas, prend cinq minutes. Rien de ce qui est là n’est perdu.",
  start: "Commencer", notNow: "Pas maintenant",
  again: "Cinq minutes, huit étapes, avec la vraie page. Votre pot peut être repris à la fin.",
  step: (i, n) => `Étape ${i} sur ${n}`,
  done: "Fait", show: "Montrer où", skip: "Passer l’étape", next: "Étape suivante", leave: "Quitter", finish: "Finir",
  over: "C’était un projet entier : forme, parties, outillage, coulage, feuilles, et un fichier qui redonne le tout.",
  left: "Le premier projet a été quitté.",
  back: (name) => `Reprendre ${name}`, keep: "Garder ce qui est sur l’établi",
  broughtBack: "reprise du pot d’avant le premier projet",
  steps: {
    pot: {
      todo: "Mettre le Gobelet des roseaux sur l’établi : ouvrir Exemples et le choisir.",
      seen: "La ligne au-dessus du dessin est le verdict : une partie, et libre. C’est toujours celui du pot sur l’établi.",
    },
    move: {
      todo: "Rentrer le bord : faire glisser son nœud vers l’axe sur le dessin, ou le choisir et presser − à côté de son r (au clavier : Maj et la flèche gauche), jusqu’à ce qu’une partie ne suffise plus.",
      seen: "La paroi penche maintenant vers l’intérieur près du bord. Une partie inférieure seule y accrocherait ou frotterait, le verdict demande donc plus de parties.",
    },
    free: {
      todo: "Faire que le pot se démoule de nouveau : ouvrir Démoulage, chercher la forme la plus proche qui se démoule en une partie et l’adopter ; ou choisir Annuler.",
      seen: "Une partie suffit de nouveau. La forme la plus proche change les rayons aussi peu que possible.",
    },
    apart: {
      todo: "Ouvrir Parties et démonter le moule : pousser le curseur sous le dessin jusqu’au bout.",
      seen: "Le plâtre s’en va suivant son tirage et ne rencontre rien. Là où il reste pris, le curseur s’arrête et le dit.",
    },
    tooling: {
      todo: "Ouvrir Outils.",
      seen: "Voici les pièces à imprimer pour ce moule. Chacune s’imprime sans supports, et chacune s’obtient en fichier.",
    },
    wall: {
      todo: "Ouvrir Coulage et taper une autre paroi de la pièce, par exemple 5 mm.",
      seen: "Le temps dans le moule a changé avec elle, comme le carré de la paroi. Le plâtre et l’eau à peser sont au-dessus.",
    },
    sheet: {
      todo: "Ouvrir Feuilles et en télécharger une en PDF.",
      seen: "L’imprimer à 100 % et poser une règle sur les barres avant de s’y fier.",
    },
    save: {
      todo: "Enregistrer le projet.",
      seen: "Le fichier contient tout le projet. L’ouvrir ici, ou sur toute autre machine, pour continuer.",
    },
  },
};
