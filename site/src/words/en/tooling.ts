// Words of the Tooling panel.

import { thePart } from "./verdict";

export const tooling = {
  layer: "Layer", clearance: "Clearance", shell: "Shell", staves: "Cottle staves",
  noPrints: "There is nothing to print for this scheme yet.",

  printsTitle: "Pieces to print",
  printsHint: "Each piece is turned the way it is printed, its working face letting go upward.",
  forPart: (part: string) => `For ${thePart(part)}`,
  fits: "fits the bed", fitsNot: "larger than the bed",
  bedLine: (s: string) => `For a printer bed of ${s}.`, bedChange: "Change", bedChangeAsk: "Change the bed of the printer",
  bedPicture: (fit: string) => `Footprint on the bed: ${fit}`,
  weighs: (m: string, l: string, overhang: string) => `${m} printed full, ${l} of filament; ${overhang}`,
  overhang: (d: string) => `steepest overhang ${d}, no supports`, overhangHigh: (d: string) => `steepest overhang ${d}, needs supports`,
  noOverhang: "no overhang",
  stl: "STL", stlOf: (name: string) => `Download ${name} as STL`,
  allPrints: "All pieces (3MF)", everything: "Everything (zip)",
  everythingHint: "The zip holds every piece, the plaster parts and the cast, the sheets and the job, with a list of what is what.",
  bodiesTitle: "Plaster parts and cast", bodiesHint: "Where they stand in the closed mold, to look at or to check; nothing of this is printed.",
  castName: "cast", dryMass: (m: string) => `${m} dry`, making3d: "Making the meshes…",
  printerTitle: "Printer", blockTitle: "Plaster block", kitTitle: "Mold and kit",
  bedAxis: (a: string) => `Bed ${a}`, nozzle: "Nozzle", solidPositive: "Positives printed full", solidHint: "instead of hollow from below",
  outside: "Outside of the block", outsideRound: "round", outsideStraight: "straight-sided",
  outsideHint: "A mold with side parts is straight-sided in any case.",
  spareOn: "Spare above the trim line", spareHint: "a reservoir that keeps the rim covered while the slip sinks", spareHeight: "Height of the spare",
  spareFlared: "Spare flared in an upper part too", spareFlaredHint: "easier to pour; a plug of its own forms it, and its clay is cut out before the part is lifted",
  strapGrooves: "Strap grooves", strapHint: "round the side parts, for the bands to lie in",
  ifNeeded: "if needed",
  stavesHint: "One stave must be drawn off upward; two or more come off sideways.",
  printCautions: [
    "Melting plastic gives off fumes and fine particles: air the room, or print in an enclosure that is vented outside.",
    "Uncured resin harms skin, eyes and lungs: gloves, glasses and fresh air; cure pieces and rinsings before you bin them.",
    "Nozzle and bed stay hot after a print; sand wet, so that no dust flies. Follow the makers' safety sheets and your local rules.",
  ],
};
