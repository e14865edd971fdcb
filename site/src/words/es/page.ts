// Spanish words of the head, the foot and the messages; and those used on every
// panel.

import type { From } from "../from";

const ways = { link: "el enlace", drop: "lo soltado aquí", paste: "lo pegado" };
/** What was opened, in the middle of a sentence and at its head. */
const source = (from: From): string => (typeof from === "string" ? ways[from] : from.file);
const large = (from: From): string => (typeof from === "string" ? ways[from].charAt(0).toUpperCase() + ways[from].slice(1) : from.file);

export const page = {
  title: "Moldwright",
  skip: "Saltar a los paneles",
  language: "Idioma",
  noScript: "Moldwright calcula el molde en esta misma página, y para ello necesita JavaScript. No se envía nada a ninguna parte.",
  tabs: {
    form: "Forma", release: "Desmolde", parts: "Partes", tooling: "Utillaje", casting: "Colada", sheets: "Hojas", class: "Clase",
  },
  ownPot: "Mi vasija", potName: "Nombre de la vasija",
  undo: "Deshacer", redo: "Rehacer", open: "Abrir", save: "Guardar", link: "Enlace",
  undoStep: (s: string) => `Deshacer: ${s}`,
  redoStep: (s: string) => `Rehacer: ${s}`,
  undone: (s: string) => `Deshecho: ${s}.`,
  redone: (s: string) => `Rehecho: ${s}.`,
  saved: "Guardado", notSaved: "Sin guardar",
  noStorage: "Este navegador no conserva nada entre visitas. Guarde el trabajo en un archivo.",
  linkCopied: "Enlace copiado. Lleva el trabajo entero y no se envía a nadie.",
  linkShown: "El enlace está ahora en la barra de direcciones. Lleva el trabajo entero.",
  badLink: "El enlace no lleva un trabajo entero; quizá se cortó. Pídalo de nuevo.",
  source, large,
  stepOpened: (from: From) => `Abierto: ${source(from)}`,
  notOpened: (from: From, why: string) => `${large(from)} no se abrió: ${why} La vasija del banco no ha cambiado.`,
  dropHere: "Suelte una imagen, un trabajo guardado, un dibujo o filas de coordenadas",
  rowsWait: "Las filas esperan en el panel Forma. Diga en qué unidad están.",
  close: "Cerrar", stop: "Parar", working: "Calculando",

  // the core
  coreStopped: "Parado. No se ha perdido nada del trabajo.",
  coreTooMuch: "Esto fue demasiado para el núcleo. El trabajo se conserva; cambie lo último que hizo.",
  coreNoStart: "El núcleo no arranca en este navegador. Guarde el trabajo y abra la página en un navegador actual; si antes arrancaba, quizá su archivo esté dañado: vuelva a obtenerlo.",
  browserSays: (why: string) => `El navegador dice textualmente: «${why}»`,

  // fields
  notNumber: "Escriba un número, como 12.5 o 12,5.",
  changed: (label: string) => `cambio en «${label}»`,
  /** Two texts of which the second says more of the first. */
  pair: (a: string, b: string) => `${a}: ${b}`,
};
