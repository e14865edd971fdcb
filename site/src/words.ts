// Every word on the page, in one table, so that it can be read as one text and
// put into another language. Words of the trade are those of the drawing, the
// report and the paper. Functions take values that are already formatted.

const count = ["No", "One", "Two", "Three", "Four", "Five", "Six", "Seven"];

export const w = {
  title: "Moldwright",
  skip: "Skip to the panels",
  tabs: {
    form: "Form", release: "Release", parts: "Parts", tooling: "Tooling", casting: "Casting", sheets: "Sheets",
  },
  potName: "Name of the pot",
  undo: "Undo", redo: "Redo", open: "Open", save: "Save", link: "Copy link", pots: "Sample pots",
  undoStep: (s: string) => `Undo: ${s}`,
  redoStep: (s: string) => `Redo: ${s}`,
  undone: (s: string) => `Taken back: ${s}.`,
  redone: (s: string) => `Done again: ${s}.`,
  saved: "Saved", notSaved: "Not saved to a file",
  noStorage: "This browser keeps nothing between visits. Save your job to a file.",
  linkCopied: "Link copied. It carries the whole job and is sent to nobody.",
  linkShown: "The link now stands in the address bar. It carries the whole job.",
  badLink: "The link carries no whole job; it may have been cut short. Ask for it again.",
  stepOpened: (s: string) => `Opened ${s}`,
  notOpened: (s: string, why: string) => `${s} was not opened: ${why} The pot on the bench is unchanged.`,
  theLink: "the link",
  notKept: (why: string) => `The job of your last visit does not read: ${why} It is set aside, and a sample pot is on the bench.`,
  dropped: "what you dropped", pasted: "what you pasted",
  dropHere: "Drop a saved job, a drawing or rows of coordinates",
  rowsWait: "Your rows wait in the Form panel. Say which unit they are in.",
  close: "Close", stop: "Stop", working: "Working",

  // verdict line and what to do next
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

  // drawing
  drawing: "Drawing of the pot and its mold: elevation on the left, section on the right",
  drawingHint: "Drag a node, or select it and press the arrow keys: 0.1 mm, with Shift 1 mm, with Alt 0.01 mm. Enter turns a corner smooth and back, Insert adds a node, Delete removes one.",
  nodeLabel: (i: number, n: number, r: string, z: string, kind: string) =>
    `Node ${i} of ${n}, radius ${r}, height ${z}, ${kind}`,
  node: (i: number) => `Node ${i}`,
  noNode: "Select a node on the drawing or in the table to move it.",
  corner: "corner", smooth: "smooth", makeCorner: "make it a corner", makeSmooth: "make it smooth",
  addAfter: "Add after", remove: "Remove",
  moved: (i: number) => `node ${i} moved`, added: (i: number) => `node added after ${i}`,
  removed: (i: number) => `node ${i} removed`, turned: (i: number) => `node ${i} corner or smooth`,
  elevation: "elevation", section: "section", trimLine: "trim line",
  seam: (z: string) => `seam ${z}`,
  catchMark: (d: string) => `catches ${d}`, trapMark: (d: string) => `trap ${d}`,

  // form
  size: "Lengths are those of the", fired: "fired pot", wet: "wet cast (mold size)",
  sizeLine: (h: string, d: string) => `${h} high, ${d} across`,
  sizeFired: "Fired", sizeWet: "Wet, as the mold has it",
  capacity: "Holds, fired, full to the rim",
  nodes: "Coordinates", radius: "Radius, mm", height: "Height, mm", kind: "Node is",
  nodesHint: "From the axis under the foot, out, up, and to the rim; back to the axis for a closed form.",
  rowsTitle: "Type or paste rows",
  rowsHint: "One node a row, two numbers: distance from the axis, then height. Tabs, commas, semicolons or spaces between them; 12,5 and 12.5 are the same.",
  rowsUnits: "The rows are in", rowsAsk: "choose", rowsAcross: "First number is the",
  acrossRadius: "radius", acrossDiameter: "diameter",
  rowsUse: "Use these rows", rowsStep: "rows typed",
  rowsNeedUnit: "Choose the unit of the rows: mm, cm or in.",
  atLine: (n: number) => `Line ${n}`,
  shrinkage: "Shrinkage of the clay", drying: "Drying", firing: "Firing", atRelease: "When it leaves the mold",
  shrinkageHint: "Percent of length. Drying is measured on the wet length, firing on the dry length.",
  enlarged: (f: string) => `The mold is made ${f} times the fired size.`,

  // release
  lookAt: "Pull of the", leastDraft: "Least draft", rubShare: "May rub over",
  rubShareHint: "of a part's wall before it is said to rub",
  draftTitle: "Draft of the wall", draftRange: (a: string, b: string) => `${a} to ${b}`,
  underDraft: "under 0°, undercut", area: "Area", catchesTitle: "Where it catches", trapsTitle: "What no pull frees",
  noCatch: "Nothing stands in its way.",
  catchLine: (a: string, b: string, d: string, by: string) => `Between ${a} and ${b} above the foot it catches by up to ${d}; the wall at ${by} is in the way.`,
  forgiven: "Only the rigid positive catches: the clay will have shrunk clear.",
  trapLine: (a: string, b: string, d: string, v: string) => `Between ${a} and ${b}: ${d} deep, ${v}.`,
  minDraft: "Least draft on this part",
  draftLegend: "Draft",

  // parts
  schemes: "Ways to part this form", chosen: "chosen", auto: "Choose for me",
  autoHint: "the fewest parts that pull clear",
  whyTitle: "Why not fewer",
  order: "Take the mold apart in this order", heights: "Parting height",
  heightsAuto: "as planned", sides: "Side parts", sidesAuto: "as planned", natches: "Natches",
  natchesHint: "domes and sockets in the seams, so that the mold closes one way only",
  spare: "Spare above the rim", none: "none",
  plasterWall: "Plaster, least wall", plasterBase: "Plaster, base",
  fillHole: "Fill hole, across", drainHole: "Drain hole, across",
  advised: "advised", chose: (s: string) => `scheme: ${s}`,

  // tooling
  printsTitle: "Pieces to print", piece: "Piece", pieceSize: "Size, mm", pieceVolume: "Volume", fit: "Bed",
  fits: "fits", fitsNot: "too large",
  printer: "Printer", bed: "Bed, mm", layer: "Layer", clearance: "Clearance", shell: "Shell", staves: "Cottle staves",
  getPrints: "Download pieces (STL)", getPlaster: "Plaster parts (STL)", getAll: "Everything (zip)",
  noPrints: "There is nothing to print for this scheme yet.",
  files: "Files",
  triangles: (n: string) => `${n} triangles`,

  // casting
  mix: "Plaster to weigh out", part: "Part", plaster: "Plaster", water: "Water", wetMass: "Poured", dryMass: "Dry",
  total: "Together",
  consistency: "Consistency", consistencyHint: "parts of water to 100 of plaster, by weight",
  slipTitle: "The cast", figures: {
    minutes: "Leave the slip in", slipFill: "Slip to fill", slipTaken: "Slip the wall takes",
    castWet: "Cast, wet", castDry: "Cast, dry", castFired: "Cast, fired", castsPerDay: "Casts a day",
    liftForce: "Lift on the upper part", bandForce: "Pull on the bands",
  } as Record<string, string>,
  wall: "Wall of the cast, wet", slipDensity: "Slip weighs", solidsDensity: "Clay weighs, dry and solid",
  testWall: "A trial gave a wall of", testMinutes: "after",
  allFigures: "Every figure, and how it comes about",
  slipSettings: "Slip and wall",

  // sheets
  sheet: "Sheet", paper: "Paper", sheetNames: {
    profile: "Profile, true size", section: "Section", report: "Split report", workshop: "Workshop card",
  } as Record<string, string>,
  getPdf: "Download PDF", getSvg: "Download SVG", preview: "Preview of the sheet", page: "Page",
  printHint: "Print at 100 %, actual size, then lay a ruler on the check bars.",
  pages: (n: number) => `${n} page${n === 1 ? "" : "s"}`,
  making: "Drawing the sheet…",

  cautions: "Before you start", notNumber: "Write a number, such as 12.5 or 12,5.",
  changed: (s: string) => `${s} changed`,
};
