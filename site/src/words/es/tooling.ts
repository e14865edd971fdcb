// Spanish words of the Tooling panel.

import { thePart } from "./verdict";

export const tooling = {
  layer: "Capa", clearance: "Holgura", shell: "Cáscara", staves: "Piezas de encofrado",
  noPrints: "Aún no hay nada que imprimir para este despiece.",

  printsTitle: "Piezas que imprimir",
  printsHint: "Cada pieza está girada como se imprime, con su cara de trabajo saliendo hacia arriba.",
  forPart: (part: string) => `Para ${thePart(part)}`,
  fits: "cabe en la cama", fitsNot: "más grande que la cama",
  bedLine: (s: string) => `Para una cama de impresora de ${s}.`, bedChange: "Cambiar", bedChangeAsk: "Cambiar la cama de la impresora",
  bedPicture: (fit: string) => `Huella en la cama: ${fit}`,
  weighs: (m: string, l: string, overhang: string) => `${m} impresa maciza, ${l} de filamento; ${overhang}`,
  overhang: (d: string) => `mayor voladizo ${d}, sin soportes`, overhangHigh: (d: string) => `mayor voladizo ${d}, necesita soportes`,
  noOverhang: "sin voladizo",
  stl: "STL", stlOf: (name: string) => `Descargar ${name} como STL`,
  allPrints: "Todas las piezas (3MF)", everything: "Todo (zip)",
  everythingHint: "El zip contiene todas las piezas, las partes de yeso y la pieza colada, las hojas y el trabajo, con una lista de qué es cada cosa.",
  bodiesTitle: "Partes de yeso y pieza colada", bodiesHint: "Donde están en el molde cerrado, para mirarlas o comprobarlas; nada de esto se imprime.",
  castName: "pieza colada", dryMass: (m: string) => `${m} en seco`, making3d: "Haciendo las mallas…",
  printerTitle: "Impresora", blockTitle: "Bloque de yeso", kitTitle: "Molde y piezas",
  bedAxis: (a: string) => `Cama ${a}`, nozzle: "Boquilla", solidPositive: "Positivos impresos macizos", solidHint: "en vez de huecos por debajo",
  outside: "Exterior del bloque", outsideRound: "redondo", outsideStraight: "de lados rectos",
  outsideHint: "Un molde con partes laterales es de lados rectos en todo caso.",
  spareOn: "Reserva sobre la línea de corte", spareHint: "un depósito que mantiene cubierto el borde mientras baja la barbotina", spareHeight: "Altura de la reserva",
  spareFlared: "Reserva acampanada también en la parte superior", spareFlaredHint: "más fácil de verter; la forma un tapón propio, y su arcilla se corta antes de levantar la parte",
  strapGrooves: "Ranuras para cinta", strapHint: "alrededor de las partes laterales, para alojar las cintas",
  ifNeeded: "si hace falta",
  stavesHint: "Una sola pieza de encofrado se saca hacia arriba; dos o más se quitan de lado.",
  printCautions: [
    "El plástico al fundirse desprende vapores y partículas finas: ventile la sala, o imprima en un recinto con salida al exterior.",
    "La resina sin curar daña la piel, los ojos y los pulmones: guantes, gafas y aire fresco; cure las piezas y los enjuagues antes de tirarlos.",
    "La boquilla y la cama siguen calientes tras imprimir; lije en mojado, para que no vuele polvo. Siga las fichas de seguridad de los fabricantes y las normas locales.",
  ],
};
