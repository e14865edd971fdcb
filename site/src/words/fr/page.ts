// Words of the head, the foot and the messages; and those used on every panel.

import type { page as en } from "../en/page";
import type { From } from "../from";
import type { Like } from "../like";

const ways = { link: "le lien", drop: "ce qui a été déposé", paste: "ce qui a été collé" };
const genitives = { link: "du lien", drop: "de ce qui a été déposé", paste: "de ce qui a été collé" };
/** What was opened, in the middle of a sentence, at its head and after “de”. */
const source = (from: From): string => (typeof from === "string" ? ways[from] : from.file);
const large = (from: From): string => (typeof from === "string" ? ways[from].charAt(0).toUpperCase() + ways[from].slice(1) : from.file);
export const ofSource = (from: From): string => (typeof from === "string" ? genitives[from] : `de ${from.file}`);

export const page: Like<typeof en> = {
  title: "Moldwright",
  skip: "Aller aux volets",
  language: "Langue",
  noScript: "Moldwright calcule le moule dans cette page même et a besoin de JavaScript pour cela. Rien n’est envoyé.",
  tabs: {
    form: "Forme", release: "Démoulage", parts: "Parties", tooling: "Outils", casting: "Coulage", sheets: "Feuilles", class: "Classe",
  },
  ownPot: "Mon pot", potName: "Nom du pot",
  undo: "Annuler", redo: "Rétablir", open: "Ouvrir", save: "Enregistrer", link: "Lien",
  undoStep: (s) => `Annuler : ${s}`,
  redoStep: (s) => `Rétablir : ${s}`,
  undone: (s) => `Annulé : ${s}.`,
  redone: (s) => `Rétabli : ${s}.`,
  saved: "Enregistré", notSaved: "Non enregistré",
  noStorage: "Ce navigateur ne garde rien d’une visite à l’autre. Enregistrer le projet dans un fichier.",
  linkCopied: "Lien copié. Il contient tout le projet et n’est envoyé à personne.",
  linkShown: "Le lien est maintenant dans la barre d’adresse. Il contient tout le projet.",
  badLink: "Le lien ne contient pas de projet entier ; il a peut-être été coupé. Le redemander.",
  source, large,
  stepOpened: (from) => `ouverture ${ofSource(from)}`,
  notOpened: (from, why) => `${large(from)} n’a pas été ouvert : ${why} Le pot sur l’établi n’a pas changé.`,
  dropHere: "Déposer une image, un projet enregistré, un dessin ou des lignes de coordonnées",
  rowsWait: "Les lignes attendent dans le volet Forme. Dire dans quelle unité elles sont.",
  close: "Fermer", stop: "Arrêter", working: "En cours",

  // the core
  coreStopped: "Arrêté. Rien du projet n’est perdu.",
  coreTooMuch: "C’était trop pour le calcul. Le projet est gardé ; changer la dernière chose faite.",
  coreNoStart: "Le calcul ne démarre pas dans ce navigateur. Enregistrer le projet, puis ouvrir la page dans un navigateur récent ; si elle y démarrait déjà, son fichier est peut-être endommagé : aller le chercher de nouveau.",
  browserSays: (why) => `Le navigateur dit textuellement : « ${why} »`,

  // fields
  notNumber: "Écrire un nombre, comme 12,5 ou 12.5.",
  changed: (label) => `changement de « ${label} »`,
  pair: (a, b) => `${a} : ${b}`,
};
