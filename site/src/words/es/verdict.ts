// Spanish words of the verdict line, of what to do next, and of the parts by name.

const count = ["Ninguna", "Una", "Dos", "Tres", "Cuatro", "Cinco", "Seis", "Siete"];

/** A part by its name in the plan. */
export const partName = (name: string): string =>
  name === "lower" ? "parte inferior" : name === "upper" ? "parte superior" : name === "core" ? "macho" : `parte lateral ${name}`;
/** The same with its article. */
export const thePart = (name: string): string => `${name === "core" ? "el" : "la"} ${partName(name)}`;

export const verdict = {
  starting: "Preparando el banco…",
  parts: (n: number) => `${count[n] ?? n} parte${n === 0 || n === 1 ? "" : "s"}:`,
  verdict: { clear: "Libre", rubs: "Roza", catches: "Se engancha" },
  partName,
  cannotPlan: "Aún no hay plan.", tryAgain: "Intentar de nuevo",
  stillShown: "El dibujo muestra la última forma que se pudo planear.",
  next: "Siguiente",
  nextFault: "Corrija lo que se nombra arriba, o deshaga el último paso.",
  nextCatch: "Vea dónde se engancha, y qué cambio de forma lo liberaría.",
  nextRub: "Vea dónde roza, y dé ahí a la pared más ángulo de salida.",
  nextClear: "Imprima las piezas sobre las que se vierte el yeso.",
  nextTooling: "Pese el yeso y la barbotina.",
  nextCasting: "Lleve las hojas al banco de trabajo.",
  nextSheets: "Guarde el trabajo para poder volver a él.",
  go: (tab: string) => `Ir a ${tab}`,

  atHeight: (z: string) => `a ${z}`,
  betweenHeights: (a: string, b: string) => `entre ${a} y ${b}`,
  robustAny: "Vale por grande que sea el error de los radios.",
  robust: {
    fewer: (scheme: string, mm: string) => `Vale mientras cada radio sea exacto a ${mm}; más allá, quizá baste con ${scheme}.`,
    catches: (at: string, mm: string) => `Vale mientras cada radio sea exacto a ${mm}; más allá, la pared podría engancharse ${at}.`,
    rubs: (at: string, mm: string) => `Vale mientras cada radio sea exacto a ${mm}; más allá, la pared podría rozar ${at}.`,
  },
  robustNone: {
    fewer: (scheme: string) => `Está en el límite: con el menor error de un radio, quizá baste con ${scheme}.`,
    catches: (at: string) => `Está en el límite: con el menor error de un radio, la pared podría engancharse ${at}.`,
    rubs: (at: string) => `Está en el límite: con el menor error de un radio, la pared podría rozar ${at}.`,
  },
};
