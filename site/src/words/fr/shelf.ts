// Words of the sample shelf.

import type { shelf as en } from "../en/shelf";
import type { Like } from "../like";

export const shelf: Like<typeof en> = {
  shelf: "L’étagère d’exemples",
  shelfHint: "Les pots d’un atelier qui n’existe pas, un pour chaque découpe de moule. Le vôtre va sur l’établi de la même façon.",
  shelfAll: "Ce que montre chacun", shelfAway: "Ranger l’étagère",
  shelfOpen: "Exemples",
  samples: {
    "Harbour jar": ["Pot du port", "Deux parties, joint à la panse."],
    "Reed beaker": ["Gobelet des roseaux", "Une partie : il s’évase jusqu’au bord."],
    "Quay dish": ["Plat du quai", "Coulé plein : un noyau forme l’intérieur, on remplit par le pied."],
    "Skep pot": ["Pot ruche", "Une forme fermée : deux parties et un trou pour la remplir."],
    "Reed-cut cup": ["Tasse cannelée", "Des cannelures qui se démoulent encore en une partie."],
    "Slate lid": ["Couvercle d’ardoise", "Il s’ouvre vers le bas : il est coulé à l’envers, en une partie."],
    "Sand amphora": ["Amphore des sables", "Deux parties latérales et rien d’autre : elle n’a pas de pied."],
    "Heron vase": ["Vase du héron", "Une taille resserrée : deux parties latérales et une inférieure."],
    "Skiff vase": ["Vase de l’esquif", "Ovale en travers : deux parties latérales et une inférieure."],
    "Cone buoy": ["Bouée conique", "Un dessus plat : deux parties latérales et une supérieure."],
    "Trivet vase": ["Vase trépied", "Trois faces en travers : trois parties latérales et une inférieure."],
    "Hail beaker": ["Gobelet de grêle", "Des fossettes dans la paroi demandent une troisième partie latérale."],
    "Reel bottle": ["Bouteille bobine", "Plate aux deux bouts : deux parties latérales, une inférieure et une supérieure."],
    "Dovetail dish": ["Plat à queue d’aronde", "Un pied qu’aucun tirage ne libère : voir le piège, puis changer la forme."],
  },
  putOn: (name, line) => `${name} : ${line}`,
};
