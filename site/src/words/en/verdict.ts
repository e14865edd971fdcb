// Words of the verdict line, of what to do next, and of the parts by name.

const count = ["No", "One", "Two", "Three", "Four", "Five", "Six", "Seven"];

export const verdict = {
  starting: "Setting up the bench…",
  parts: (n: number) => `${count[n] ?? n} part${n === 1 ? "" : "s"}`,
  verdict: { clear: "Clear", rubs: "Rubs", catches: "Catches" },
  partName: (name: string) => (name === "lower" || name === "upper" ? `${name} part` : name === "core" ? "core" : `side part ${name}`),
  cannotPlan: "No plan yet.",
  stillShown: "The drawing shows the last form that could be planned.",
  next: "Next",
  nextFault: "Put the form right: the place is named above.",
  nextCatch: "See where it catches, and which change of form would free it.",
  nextRub: "See where it rubs, and give the wall more draft there.",
  nextClear: "Print what the plaster is poured around.",
  nextTooling: "Weigh out plaster and slip.",
  nextCasting: "Take the sheets to the bench.",
  nextSheets: "Save the job, so that you can come back to it.",
  go: (tab: string) => `Go to ${tab}`,

  atHeight: (z: string) => `at ${z}`,
  betweenHeights: (a: string, b: string) => `between ${a} and ${b}`,
  robustAny: "Holds however much the radii are in error.",
  robust: (d: string, then: string) => `Holds while every radius is right to ${d}; beyond that, ${then}.`,
  robustNone: (then: string) => `Stands on the edge: with the least error of a radius, ${then}.`,
  robustFewer: (s: string) => `${s} might do`,
  robustCatch: (at: string) => `the wall might catch ${at}`,
  robustRub: (at: string) => `the wall might rub ${at}`,
};
