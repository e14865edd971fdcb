// Words of the help in place: each word of the trade in one to three sentences,
// the forms in which the page writes it, and where it stands in the job on the
// bench. Several speak of a practice of workshops, none claims a source.

import type { help as en } from "../en/help";
import type { Like } from "../like";

export const help: Like<typeof en> = {
  open: "Aide",
  title: "Aide",
  ask: (word) => `Qu’est-ce que « ${word} » ?`,
  here: "Sur l’établi :",
  kinds: "Ce qu’elles sont :",
  allWords: "Tous les mots",
  wordsTitle: "Les mots du métier",
  wordsHint: "Un mot souligné de points, et tout point d’interrogation, peut se demander là où il est.",
  find: "Chercher un mot",
  foundNone: "Cette page n’emploie pas de mot pareil.",
  groups: { release: "Le démoulage", mold: "Parties du moule", kit: "Ce qui est imprimé", casting: "Plâtre, barbotine et pièce", form: "Forme et taille" },

  // where a word stands in this job; values come formatted, with their units
  hereAbove: (z) => `${z} au-dessus du pied`,
  hereBetween: (a, b) => `de ${a} à ${b} au-dessus du pied`,
  hereNone: "rien",
  hereNoSeam: "rien : le moule est d’une seule partie",
  hereParts: (n) => (n === 1 ? "une partie" : `${n} parties`),
  hereAsked: (draft) => `au moins ${draft} demandés`,
  hereDeepest: (depth, z) => `${depth} de profondeur, ${z} au-dessus du pied`,
  hereShare: (share, allowed) => `${share} de la partie la plus gênée, ${allowed} permis`,
  hereNatches: (n, across) => (n === 1 ? `un dôme, diamètre ${across}` : `${n} dômes, le premier de diamètre ${across}`),
  hereHigh: (h) => `hauteur ${h}`,
  hereAcross: (d) => `diamètre ${d}`,
  hereCount: (n) => (n === 1 ? "une pièce" : `${n} pièces`),
  hereStaves: (n) => (n === 1 ? "un autour de chaque positif" : `${n} autour de chaque positif`),
  hereWater: (n) => `${n} parts d’eau pour 100 de plâtre`,
  hereWall: (wall, minutes) => `${wall} humide, après ${minutes}`,
  hereBlock: (wall, base) => `paroi d’au moins ${wall}, fond ${base}`,
  hereTimes: (factor) => `${factor} fois la taille cuite`,
  hereForce: (force) => `elles tiennent contre ${force}`,
  hereLift: (mass) => `retenir avec au moins ${mass}`,
  hereHeld: (volume) => `${volume} retenus`,

  terms: {
    pull: {
      name: "tirage", forms: ["tirage", "tirages"],
      says: ["Le chemin droit par lequel une partie du moule quitte le pot. Une partie inférieure se tire vers le bas, une supérieure vers le haut, une latérale vers l’extérieur."],
    },
    draft: {
      name: "dépouille", forms: ["dépouille"],
      says: ["La pente qui laisse partir une partie : l’angle entre la paroi et le tirage. Au-dessus de 0° la partie se libère aussitôt, à 0° elle frotte, au-dessous de 0° elle est retenue.", "Usage courant pour du plâtre rigide sur un positif rigide : 1 à 2° voulus, 3 à 5° à l’aise."],
    },
    catch: {
      name: "accroche, contre-dépouille", forms: ["accroche", "accrochent", "contre-dépouille", "contre-dépouilles"],
      says: ["Un endroit où le pot gêne une partie qu’on tire. Sa profondeur est le décalage en travers du tirage qui libérerait le plâtre.", "Ni le plâtre ni l’impression ne cèdent : la forme doit y changer, ou une autre partie doit être tirée autrement."],
    },
    rub: {
      name: "frottement", forms: ["frotte", "frottent", "frotter"],
      says: ["Une paroi si droite que la partie racle le long d’elle au lieu de se libérer aussitôt. On dit qu’une partie frotte quand une trop grande part de sa paroi a moins que la dépouille minimale."],
    },
    trap: {
      name: "piège", forms: ["piège", "pièges"],
      says: ["Un espace contre le pot qu’aucun tirage ne libère, ni vers le bas, ni vers le haut, ni vers l’extérieur. Le plâtre qui y est ne peut jamais en sortir : la forme doit changer."],
    },
    letGo: {
      name: "retrait au démoulage", forms: ["consistance cuir"],
      says: ["Arrivée à consistance cuir, ferme mais encore humide, la pièce a eu un peu de retrait et s’est détachée du plâtre. Une accroche pas plus profonde est pardonnée ; le positif rigide ne pardonne rien."],
    },
    ripple: {
      name: "strie", forms: ["strie", "stries"],
      says: ["Une paroi imprimée est striée par ses couches, et chaque strie est une petite contre-dépouille. Des couches plus fines, un ponçage dans le sens du tirage ou quelques couches de bouche-pores la rendent lisse."],
    },
    ghost: {
      name: "forme la plus proche, ligne fantôme", forms: ["forme la plus proche", "ligne fantôme"],
      says: ["La forme la plus proche de la vôtre qui se démoule. Seuls les rayons changent, et aussi peu que possible. La ligne en tirets sur le dessin est cette forme."],
    },
    pocket: {
      name: "poche", forms: ["poche", "poches"],
      says: ["Un endroit qui garde de l’air quand on verse la barbotine, ou de la barbotine quand on retourne le moule. Incliner ou rouler le moule, ou y percer un évent."],
    },
    partingLine: {
      name: "ligne de joint", forms: ["ligne de joint", "lignes de joint", "hauteur de joint", "hauteurs de joint"],
      says: ["La ligne du pot où deux parties du moule se rencontrent : là finit un tirage et commence le suivant."],
    },
    seam: {
      name: "couture", forms: ["couture", "coutures"],
      says: ["Le joint entre deux parties, et l’arête qu’il laisse sur la pièce. Elle se voit toujours : la placer sur une arête de la forme, et l’ébarber tant que la terre est crue."],
    },
    lower: { name: "partie inférieure", forms: ["partie inférieure"], says: ["La partie du moule sous le pot. Elle se tire droit vers le bas."] },
    upper: { name: "partie supérieure", forms: ["partie supérieure"], says: ["La partie du moule au-dessus du pot. Elle se tire droit vers le haut."] },
    side: {
      name: "partie latérale", forms: ["partie latérale", "parties latérales"],
      says: ["L’une de deux parties ou plus qui entourent le pot, avec les lettres A, B, C. Chacune se tire vers l’extérieur, suivant le milieu de sa part du tour."],
    },
    core: { name: "noyau", forms: ["noyau"], says: ["La partie qui forme l’intérieur d’un pot coulé plein. Il s’en tire vers le haut."] },
    block: {
      name: "bloc", forms: ["bloc"],
      says: ["Le corps de plâtre que forment toutes les parties ensemble quand le moule est fermé. Un plâtre partout de même épaisseur absorbe partout de même."],
    },
    natch: {
      name: "clé et logement", forms: ["clé", "clés", "logement", "logements"],
      says: ["Un dôme dans la face d’une partie et, dans la face de l’autre, le creux pour lui, le logement. Ils sont inégalement espacés, pour que le moule ne se ferme que d’une façon."],
    },
    spare: {
      name: "réserve", forms: ["réserve"],
      says: ["De la place au-dessus du bord pour plus de barbotine, pour que le bord reste couvert pendant que le niveau baisse. La terre qui s’y forme est coupée."],
    },
    trimLine: {
      name: "ligne de coupe", forms: ["ligne de coupe"],
      says: ["Là où la terre de la réserve se coupe, au niveau du bord : après la vidange, quand le brillant est parti, et avant que la pièce quitte le moule."],
    },
    fillHole: {
      name: "trou de coulée", forms: ["trou de coulée"],
      says: ["L’entrée de la barbotine là où une forme n’a pas de bord ouvert. Sa paroi a de la dépouille, pour que la partie supérieure s’en soulève encore."],
    },
    drainHole: { name: "trou de vidange", forms: ["trou de vidange"], says: ["Un trou à travers le plâtre jusqu’au pied du pot, par où la barbotine s’écoule en bas."] },
    strap: {
      name: "gorges de sangle", forms: ["gorges de sangle", "gorge de sangle"],
      says: ["Des gorges autour des parties latérales, à l’extérieur. Les sangles y logent et ne peuvent glisser."],
    },
    positive: {
      name: "positif", forms: ["positif", "positifs"],
      says: ["Le corps imprimé sur lequel on coule le plâtre : la forme qu’une partie du moule doit prendre, agrandie du retrait."],
    },
    plug: {
      name: "bouchon", forms: ["bouchon"],
      says: ["Ce qui forme l’ouverture au-dessus du bord. Le plus souvent il fait corps avec le positif. Pour une réserve évasée dans une partie supérieure, c’est une pièce à part, calée sur le positif, qui se retire en premier, avant de soulever la partie."],
    },
    plate: {
      name: "plaque", forms: ["plaque"],
      says: ["La base plate d’un positif. Elle forme la face de joint de la partie, avec ses clés, et les éléments de coffrage se posent dans sa gorge."],
    },
    stave: {
      name: "élément de coffrage", forms: ["élément de coffrage", "éléments de coffrage", "coffrage", "coffrages"],
      says: ["Un morceau du coffrage, le mur qu’on dresse autour d’un positif pour tenir le plâtre frais. Un élément seul se tire vers le haut ; deux ou plus s’enlèvent de côté."],
    },
    collar: { name: "collerette", forms: ["collerette"], says: ["Un anneau qui coiffe le haut des éléments et les tient ensemble contre la poussée du plâtre frais."] },
    tray: {
      name: "bac", forms: ["bac"],
      says: ["Une forme imprimée pour une partie latérale, ouverte au dos. On y coule le plâtre et on l’arase ; des planches amovibles en ferment les bouts et les côtés."],
    },
    clearance: {
      name: "jeu", forms: ["jeu"],
      says: ["L’espace laissé entre des pièces qui s’emboîtent. Sur les imprimantes courantes, 0,2 à 0,3 mm par côté glisse, moins coince."],
    },
    consistency: {
      name: "rapport eau/plâtre", forms: ["rapport eau/plâtre"],
      says: ["Les parts d’eau pour 100 parts de plâtre, en poids. Plus d’eau fait un plâtre qui absorbe plus d’eau et qui est plus faible.", "Gâcher de même toutes les parties d’un moule, sinon la paroi de la pièce varie d’une partie à l’autre."],
    },
    slip: {
      name: "barbotine", forms: ["barbotine"],
      says: ["De la terre dans de l’eau, assez fluide pour être versée. Le plâtre en tire l’eau, et la terre se dépose sur la face du moule."],
    },
    cast: {
      name: "pièce coulée", forms: ["pièce coulée", "pièce"],
      says: ["La terre qui reste dans le moule quand le surplus de barbotine est versé : le pot avant séchage et cuisson."],
    },
    wall: {
      name: "paroi", forms: ["paroi"],
      says: ["L’épaisseur de la terre, mesurée humide. Elle croît comme la racine carrée du temps dans le moule : deux fois plus épaisse prend quatre fois plus longtemps."],
    },
    bands: {
      name: "sangles", forms: ["sangles", "sangle"],
      says: ["Ce qui tient fermé un moule de plusieurs parties tant que la barbotine est dedans, car elle les écarte. Les mettre avant de remplir."],
    },
    flotation: {
      name: "poussée vers le haut", forms: ["poussée"],
      says: ["Le plâtre frais soulève un positif creux comme l’eau soulève un bateau. Le fixer à sa plaque ou le charger avant de couler."],
    },
    shrinkage: {
      name: "retrait", forms: ["retrait"],
      says: ["La terre rapetisse au séchage puis encore à la cuisson. Le séchage se compte sur la longueur humide, la cuisson sur la longueur sèche ; les deux pourcentages ne s’additionnent donc pas simplement."],
    },
    oversize: {
      name: "agrandissement", forms: ["agrandissement", "à la taille cuite"],
      says: ["De combien le moule est plus grand que le pot cuit, pour que le pot soit à la bonne taille. Une terre à 12 % de retrait demande 113,6 %, non 112 %."],
    },
    testBar: {
      name: "barrette d’essai", forms: ["barrette d’essai", "barrettes d’essai", "barrette", "barrettes"],
      says: ["Une barrette de votre propre terre où une longueur est marquée, mesurée humide, sèche et cuite. Elle dit sur quel retrait compter."],
    },
    foot: { name: "pied", forms: ["pied"], says: ["Ce sur quoi le pot est posé. Toute hauteur se mesure depuis son endroit le plus bas."] },
    section: {
      name: "élévation et coupe", forms: ["élévation", "coupe"],
      says: ["À gauche de l’axe le pot vu de côté, à droite le pot et son moule comme coupés par le milieu."],
    },
    node: {
      name: "nœud", forms: ["nœud", "nœuds"],
      says: ["Un point par où passe le profil. Un angle est vif, un nœud lisse est rond ; entre deux angles la paroi est droite."],
    },
  },
};
