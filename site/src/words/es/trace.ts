// Spanish words of tracing a picture and of reading a drawing; in the table under
// trace.

import type { From } from "../from";
import { page } from "./page";

export const trace = {
  // where a form comes from
  sourceTitle: "De una imagen o un dibujo",
  photoPick: "Elegir una imagen", photoTake: "Hacer una foto", svgPick: "Abrir un dibujo (SVG)",
  sourceHint: "Una foto tomada de frente, un escaneo o un boceto en papel. Aléjese diez veces el radio mayor, use el zoom, y sostenga el objetivo a media altura de la vasija. La imagen queda en esta página; no se envía a nadie.",
  outTitle: "Sacar el perfil", outSvg: "Perfil como SVG", outRows: "Coordenadas como texto",

  // tracing
  traceTitle: "Calcar una imagen",
  opening: "Abriendo la imagen…", outlining: "Buscando el contorno…", tracing: "Calcando…",
  notPicture: (name: string) => `${name} no es una imagen que este navegador pueda leer. Use un archivo JPEG, PNG o WebP. La vasija del banco no ha cambiado.`,
  pictureHuge: (name: string, mp: string) => `${name} tiene ${mp} millones de píxeles; no se abren más de 100 millones. Redúzcala e inténtelo otra vez. La vasija del banco no ha cambiado.`,
  pictureScaled: (a: string, b: string) => `La imagen de ${a} píxeles se redujo a ${b}; eso basta de sobra para un contorno.`,
  otherPicture: "Otra imagen", leaveTrace: "Salir", backToPicture: "Volver a la imagen",
  lengthTitle: "Una longitud conocida",
  lengthOf: { height: "Altura, del pie al borde", maxDiameter: "Ancho mayor", rimDiameter: "Ancho del borde", bar: "Entre dos puntos" },
  lengthMM: "Medida",
  barHint: "Pulse los dos extremos de algo cuya longitud conozca, como una regla junto a la vasija.",
  barFront: "Está por delante del centro de la vasija a",
  takeForm: "Usar esta forma", traceStep: (name: string) => `forma calcada de ${name}`,
  noLength: "El contorno está. Dé una longitud conocida, y el perfil sigue.",
  nextLength: "Escriba una longitud conocida; el perfil sigue.",
  nextTake: "Use esta forma, o corrija antes el contorno.",
  nextFault: "Vea junto a la imagen qué está mal, y corríjalo ahí.",
  resultSize: (h: string, d: string, n: number) => `${h} de alto, ${d} de ancho, ${n} nodos.`,
  band: (b: string) => `Los radios son exactos a unos ${b}.`,
  fit: (rms: string, most: string) => `La curva se aparta del contorno ${rms} en el conjunto (media cuadrática), ${most} como mucho.`,
  sides: (d: string) => `Izquierda y derecha difieren ${d}.`,
  lean: (d: string) => `Se corrigió una inclinación de ${d}.`,
  cameraLine: (d: string, from: string, h: string, hf: string) => `Perspectiva corregida para un objetivo a ${d} (${from}), a ${h} sobre la mesa (${hf}).`,
  cameraNone: "La perspectiva quedó sin corregir.",
  cameraFrom: {
    given: "como se escribió", focal: "por la distancia focal del archivo", row: "por su fila en la imagen", ellipses: "visto en borde y pie",
    middle: "tomado como media vasija", none: "desconocida",
  },
  notSeenTitle: "Lo que la cámara no vio",
  notSeen: (a: string, b: string, why: string) => `De ${a} a ${b} sobre el pie: ${why}.`,
  warnTitle: "Conviene revisar",

  // marks on the picture
  marksTitle: "Si el contorno está mal", tool: "Qué hace un toque en la imagen",
  tools: { pot: "Esta vasija", crop: "Recortar", away: "Borrar", back: "Devolver", edge: "Contorno", axis: "Eje", bar: "Longitud conocida" },
  toolHints: {
    pot: "Toque la vasija que quiere, si hay varias. Arrastre para moverse cuando esté cerca.",
    crop: "Arrastre un recuadro alrededor de la vasija, o toque dos esquinas opuestas.",
    away: "Pinte sobre lo que no es la vasija: un asa, una mano, una sombra. Deje sin cubrir el contorno de la vasija donde esté bien.",
    back: "Pinte sobre lo que es de la vasija pero quedó fuera.",
    edge: "Toque unos puntos a lo largo de un lado, del pie al borde, o todo alrededor. Entre ellos la línea se ajusta al contorno.",
    axis: "Toque dos puntos en el eje de la vasija, bien separados.",
    bar: "Toque los dos extremos de la longitud conocida.",
  },
  brushSize: "Pincel, parte del ancho", edgeAround: "Los puntos rodean toda la vasija",
  markUndo: "Quitar la última marca", markClear: "Quitar todas las marcas",
  pictureKeys: "Las teclas de flecha mueven la cruz, con Mayús a pasos más grandes; Intro la fija, que es lo mismo que un toque. Más y menos amplían y reducen, 0 muestra todo.",
  pictureBench: (tool: string) => `Imagen con el contorno hallado en ella. ${tool}`,
  howTitle: "Cómo se tomó",
  mode: "La imagen es", modes: { photo: "una foto", sketch: "un boceto en papel" },
  side: "Perfil de", sidesOf: { mean: "los dos lados", left: "el lado izquierdo", right: "el lado derecho" },
  top: "Por arriba es", tops: { auto: "como muestra el contorno", open: "abierta, con borde", closed: "cerrada" },
  cameraTitle: "Dónde estaba la cámara", distance: "Del objetivo al centro de la vasija", lens: "Objetivo sobre la mesa",
  cameraHint: "Opcional. Para la distancia basta lo aproximado; ponga más cuidado en la altura.", cameraEmpty: "sin dato",
  tolerance: "Curva a menos de", toleranceEmpty: "auto",

  // drawings
  svgTitle: "¿Qué línea es el perfil?", svgFrom: (from: From) => `De: ${page.source(from)}.`,
  svgUnits: "El dibujo está en", svgUnitsAsk: "elegir", svgUnit: { mm: "mm", cm: "cm", in: "pulgadas", px: "px (96 por pulgada)" },
  svgUnitHint: "Un dibujo que declara su tamaño en mm, cm o in lo conserva.",
  svgAsk: "Elija la unidad del dibujo.",
  svgPath: (i: number, id: string) => (id ? `Línea ${i}, ${id}` : `Línea ${i}`),
  svgSize: (wd: string, h: string) => `${wd} de ancho, ${h} de alto`,
  svgNot: (why: string) => `No es un perfil. ${why}`, svgMore: (n: number) => `${n} líneas más son menores y no se muestran.`,
  svgAxis: "Eje en la x del dibujo", svgAxisEmpty: "hallado",
  svgAxisHint: "A la derecha o a la izquierda del eje es la misma vasija: una mitad izquierda se refleja.",
  svgUse: "Usar esta línea", svgStep: (from: From) => `forma tomada: ${page.source(from)}`, svgLeave: "Salir",
};
