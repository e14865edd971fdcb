// Spanish words of the class, in the table under class: setting, answering and
// collecting exercises. Questions, hints, marks and reasons come from the core in
// its own words.

import type { From } from "../from";
import { page } from "./page";

/** A number of things, one or several. */
const some = (n: number, one: string, many: string): string => `${n} ${n === 1 ? one : many}`;

export const classroom = {
  kinds: {
    catch: ["¿Dónde se engancha?", "marcar la pared"],
    count: ["¿Cuántas partes?", "las menos, y por qué"],
    where: ["¿Dónde debe partirse?", "la altura de la costura"],
    pull: ["¿En qué sentido se tira de cada parte?", "elegir flechas"],
    draft: ["Leer el ángulo de salida", "en grados, en una marca"],
    size: ["Tamaño real", "a partir de la contracción"],
    drain: ["¿Se vacía?", "barbotina y aire"],
    save: ["Ahorrar una parte", "cambiar la forma"],
  } as const,
  levels: ["", "fácil", "medio", "difícil"],

  // setting
  setTitle: "Poner un ejercicio",
  whichKinds: "Preguntar por", difficulty: "Dificultad", each: "De cada tipo",
  drawHint: "Cada pregunta tiene un código; escrito en cualquier equipo, vuelve a preguntar lo mismo.",
  add: (n: number) => (n === 0 ? "Marque por qué preguntar" : n === 1 ? "Añadir 1 pregunta" : `Añadir ${n} preguntas`),
  bench: "Preguntar por la vasija del banco", askOf: (pot: string) => `Pregunta: ${pot}`, addBench: "Añadir esta vasija",
  byCode: "Añadir por código", code: "Código de una pregunta", addCode: "Añadir",
  showKey: "Mostrar la respuesta", hideKey: "Ocultar la respuesta",
  questions: "Preguntas, en orden", noQuestions: "Aún ninguna. Saque algunas arriba, o pregunte por su propia vasija.",
  up: (n: number) => `Pregunta ${n}: antes`, down: (n: number) => `Pregunta ${n}: después`,
  other: "Sacar otra", otherOf: (n: number) => `Pregunta ${n}: sacar otra`,
  drop: (n: number) => `Pregunta ${n}: quitar`,
  about: (name: string, level: string) => (level ? `${name}, ${level}` : name), onBench: "del banco",
  howTitle: "Cómo se trabaja",
  title: "Título", note: "Unas palabras para la clase", untitled: "Ejercicio de contrasalidas",
  hints: "Pistas", hintsHint: "tres por pregunta, cada una más clara",
  solutions: "Soluciones desarrolladas", solutionsHint: "tras dos intentos",
  shuffle: "Una vasija distinta para cada nombre", shuffleHint: "quienes se sientan juntos responden preguntas parecidas, no iguales; el mismo nombre recibe otra vez lo mismo",
  handOut: "Repartirlo",
  tryIt: "Probarlo como estudiante", copyLink: "Copiar enlace para la clase", saveSet: "Guardar como archivo", openSet: "Cambiar una serie guardada",
  handHint: "Quien abra el enlace o el archivo recibe el ejercicio y nada más. No se envía nada: el enlace lleva la serie entera.",
  linkCopied: "Enlace copiado. Lleva el ejercicio entero.", linkShown: "El enlace del ejercicio está ahora en la barra de direcciones.",
  longLink: (n: string) => `El enlace tiene ${n} caracteres, pues lleva sus propias vasijas. Si un mensaje lo corta, reparta el archivo.`,
  worksheet: "Ejercicios, PDF", key: "Solucionario, PDF",
  setOpened: (from: From) => `${page.large(from)} está en el panel Clase.`,
  cleared: "Empezar una serie nueva",
  keptExercises: "Otros ejercicios guardados en este navegador", keptSets: "Series guardadas en este navegador",

  // collecting
  results: "Recoger", openResults: "Abrir archivos de resultados", dropResults: "Elija cuantos haya, o suéltelos en cualquier lugar de la página.",
  collected: (n: number) => (n === 1 ? "1 hoja leída y corregida de nuevo." : `${n} hojas leídas y corregidas de nuevo.`),
  bad: (n: number) => (n === 1 ? "1 archivo no es una hoja de resultados:" : `${n} archivos no son hojas de resultados:`),
  csv: "Descargar como CSV", empty: "Recoger la tabla", table: "Notas de la clase", student: "Estudiante", score: "Puntos",
  of: (a: string, n: number) => `${a} de ${n}`, tries: (n: number) => some(n, "intento", "intentos"),
  hintsTaken: (n: number) => some(n, "pista", "pistas"), seen: "solución vista",
  marks: { right: "correcto", close: "casi", notYet: "aún no", none: "sin respuesta" },

  // answering
  opening: "Abriendo el ejercicio…", leave: "Salir del ejercicio", leavePreview: "Volver a prepararlo",
  trial: "Una prueba: no se conserva nada.",
  leaveFirst: "Hay un ejercicio abierto. Salga primero de él y abra luego esto.",
  left: (title: string) => `Ha salido de «${title}». Sus respuestas se conservan en este navegador.`, goOn: (title: string) => `Seguir con «${title}»`,
  notOpened: (from: From, why: string) => `${page.large(from)} no se abrió como ejercicio: ${why}`,
  badLink: "El enlace no lleva un ejercicio entero; quizá se cortó. Pídalo de nuevo, o pida el archivo.",
  count: (n: number) => `${some(n, "pregunta", "preguntas")}.`,
  helps: (hints: boolean, solutions: boolean) =>
    [hints ? "Hay pistas." : "No hay pistas.", solutions ? "Tras dos intentos puede ver la solución desarrollada." : ""].filter(Boolean).join(" "),
  noTimer: "Tómese su tiempo. Una respuesta que no se puede leer no cuenta como intento.",
  name: "Su nombre", nameHint: "como debe leerlo en la hoja su docente", nameWanted: "Escriba antes su nombre.",
  start: "Empezar", resume: (name: string) => `Seguir como ${name}`, anew: "O empiece de nuevo con su nombre; lo respondido aquí antes se conserva en este navegador.",
  progress: "Preguntas", toQuestion: (n: number, mark: string) => `Pregunta ${n}, ${mark}`, toSheet: "Hoja",
  question: (n: number, of: number) => `Pregunta ${n} de ${of}`,
  inQuestion: (n: number, why: string) => `Pregunta ${n}: ${why}`,
  practice: "Práctica, no va en su hoja", backTo: (n: number) => `Volver a la pregunta ${n}`,
  check: "Comprobar", hint: (n: number, of: number) => (n > of ? "No hay más pistas" : `Pista ${n} de ${of}`), solution: "Solución", solutionAfter: "Solución, tras dos intentos",
  another: "Otra parecida", next: "Pregunta siguiente", finish: "A su hoja", previous: "Atrás",
  hintTitle: (n: number) => `Pista ${n}`, solutionTitle: "Solución desarrollada", slips: "Lo que suele fallar",
  mostTries: "Se guardan cuarenta intentos; pase a la pregunta siguiente.",
  picture: "Lo que se atasca", pictureOf: (i: number, n: number) => `${i} de ${n}`,
  tolerance: "Qué cuenta",
  drawing: (name: string) => `${name}: sección por el eje, a escala`,
  pulled: { down: "tirando hacia abajo", up: "tirando hacia arriba", out: "tirando hacia fuera" },
  held: (d: string) => `retenido ${d}`,
  legendCaught: "pared retenida", legendMoved: "la misma pared, tirada", legendBlock: "lo que estorba",
  marksHint: "Toque la pared para poner ahí una marca. Arrastre una marca, o use sobre ella las teclas de flecha; Suprimir la quita.",
  markAt: (n: number, z: string, r: string) => `Marca ${n} en la pared, a ${z} sobre el pie, radio ${r}`,
  mark: (n: number) => `Marca ${n}`, heightZ: "Altura", radiusR: "Radio", radiusEmpty: "Radio (pared más exterior)",
  typeMark: "Escribir dónde está una marca",
  addMark: "Añadir una marca", removeMark: (n: number) => `Quitar la marca ${n}`, fullMarks: "Ya hay tantas marcas como puede haber.",
  touchWall: "Eso no estaba en la pared. Toque el contorno mismo.",
  height: "Altura de la partición", heightHint: "Arrastre la línea en el dibujo, pulse − o +, use sobre ella las teclas de flecha, o escriba la altura.",
  unit: "Unidad", unitAsk: "¿unidad?",
  formHint: "Arrastre un nodo, o elija uno aquí y pulse − o +; las teclas de flecha también lo mueven, y su lugar se puede escribir.",
  pickNode: "Nodo que cambiar", formBack: "Volver a la forma dada", live: "Tal como está", working: "Juzgando…",

  // the sheet
  sheet: "Su hoja", sheetOf: (name: string) => `${name}, su hoja`,
  saveResult: "Guardar la hoja como archivo", resultPdf: "Hoja como PDF", print: "Imprimirla",
  handIn: "Entregue este archivo a su docente. Solo se guarda en este dispositivo, y no se envía a nadie.",
  resultSaved: (name: string) => `${name} está guardado. Entréguelo.`, toAnswer: "Responderla",
  scoreLine: (a: string, n: number) => `${a} de ${n} puntos`, scoreHint: "Correcto es 1 punto, casi es medio punto. Cuenta el último intento.",
};
