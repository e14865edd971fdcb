// Words of the tables that tell what a drawing shows.

import type { reading as en } from "../en/reading";
import type { Like } from "../like";

export const reading: Like<typeof en> = {
  view: "Tableau", ask: "Lire en tableau", title: "Ce que montre le dessin, en tableaux",
  parts: "Parties du moule", part: "Partie", pull: "Tirage", from: "De, mm", to: "À, mm", verdict: "Verdict", where: "Maintenant",
  closed: "en place", moved: (share) => `à ${share} du chemin`, off: "hors du moule", held: (d) => `retenue de ${d}`,
  places: "Endroits", place: "Endroit", height: "Hauteur au-dessus du pied, mm", measure: "Mesure",
  seam: "couture", trimLine: "ligne de coupe", natch: "clé", atAxis: (r, deg) => `à ${r} de l’axe, à ${deg} autour de lui`,
  catches: (part) => `accroche, ${part}`, deep: (d) => `${d} de profondeur`, trap: "piège", air: "air retenu", slip: "barbotine retenue", ghost: "plus grand changement vers la forme la plus proche",
  wall: "Paroi, à la taille du moule", wallHeight: "Hauteur, mm", radius: "Rayon, mm", draft: (pull) => `Dépouille, tirage ${pull}`, offLine: "Écart à la ligne, mm",
  none: "Rien n’est marqué.",
  figure: "Contour de la figure", point: "demandé ici",
};
