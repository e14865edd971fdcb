// Words of the verdict line, of what to do next, and of the parts by name.

const count = ["No", "One", "Two", "Three", "Four", "Five", "Six", "Seven"];

/** A part by its name in the plan. */
export const partName = (name: string): string => (name === "lower" || name === "upper" ? `${name} part` : name === "core" ? "core" : `side part ${name}`);
/** The same with its article. */
export const thePart = (name: string): string => (/^(lower|upper|core)$/.test(name) ? `the ${partName(name)}` : partName(name));

export const verdict = {
  starting: "Setting up the bench…",
  parts: (n: number) => `${count[n] ?? n} part${n === 1 ? "" : "s"}:`,
  verdict: { clear: "Clear", rubs: "Rubs", catches: "Catches" },
  partName,
  cannotPlan: "No plan yet.", tryAgain: "Try again",
  stillShown: "The drawing shows the last form that could be planned.",
  next: "Next",
  nextFault: "Put right what is named above, or take the last step back.",
  nextCatch: "See where it catches, and which change of form would free it.",
  nextRub: "See where it rubs, and give the wall more draft there.",
  nextClear: "Print what the plaster is poured around.",
  nextTooling: "Weigh out plaster and slip.",
  nextCasting: "Take the sheets to the bench.",
  nextSheets: "Save the job, so that you can come back to it.",
  go: (tab: string) => `Go to ${tab}`,

  atHeight: (z: string) => `at ${z}`,
  betweenHeights: (a: string, b: string) => `between ${a} and ${b}`,
  robustAny: "True however much the radii are in error.",
  robust: {
    fewer: (scheme: string, mm: string) => `True while every radius is right to ${mm}; beyond that, ${scheme} might do.`,
    catches: (at: string, mm: string) => `True while every radius is right to ${mm}; beyond that, the wall might catch ${at}.`,
    rubs: (at: string, mm: string) => `True while every radius is right to ${mm}; beyond that, the wall might rub ${at}.`,
  },
  robustNone: {
    fewer: (scheme: string) => `Stands on the edge: with the least error of a radius, ${scheme} might do.`,
    catches: (at: string) => `Stands on the edge: with the least error of a radius, the wall might catch ${at}.`,
    rubs: (at: string) => `Stands on the edge: with the least error of a radius, the wall might rub ${at}.`,
  },
};
