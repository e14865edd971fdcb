// Words of the Sheets panel.

export const sheets = {
  paper: "Paper", getPdf: "Download PDF", getSvg: "Download SVG",
  pages: (n: number) => `${n} page${n === 1 ? "" : "s"}`,
  making: "Drawing the sheet…",

  sheets: {
    profile: ["Profile, true size", "Lay the pot, a rib or the positive on it."],
    template: ["Template, true size", "Cut it from card and hold it against clay or plaster."],
    section: ["Section of the closed mold", "Parts, seams, pulls and measures, to scale."],
    report: ["Split report", "The verdict, why not fewer, figures and their sources."],
    workshop: ["Workshop card", "One page for the wall: batches, times, order, bands."],
  } as const,
  whichSheet: "Sheet", lines: "Line", linesFired: "fired size", linesWet: "wet size, as the mold has it", linesBoth: "both",
  shape: "Shape", half: "half profile", full: "full silhouette",
  summaryOnly: "First page only",
  beforePrint: "Print at 100 %, “actual size”, never “fit to page”. Then lay a ruler on the bars.",
  scaleTitle: "The bars are not 100 mm long?",
  scaleHint: "Type what your ruler says. The sheet is drawn larger or smaller by as much, so that the next print is true; keep the same printer settings.",
  barAcross: "Bar across the page", barUp: "Bar up the page",
  scaleOn: (x: string, y: string) => `Drawn for a printer that makes 100 mm into ${x} across and ${y} up.`,
  scaleOff: "Back to 100 mm", scaleBad: "That is no bar of 100 mm. Measure again from end to end; 90 to 110 mm can be made up for.",
  pageOf: (i: number, n: number) => `Page ${i} of ${n}`,
  svgOf: (i: number) => `SVG of page ${i}`,
  zoomed: "Open it larger", pageAlt: (sheet: string, i: number, n: number) => `${sheet}, Page ${i} of ${n}. Open it larger.`,
};
