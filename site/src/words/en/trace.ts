// Words of tracing a picture and of reading a drawing; in the table under trace.

import type { From } from "../from";
import { page } from "./page";

export const trace = {
  // where a form comes from
  sourceTitle: "From a picture or a drawing",
  photoPick: "Choose a picture", photoTake: "Take a photo", svgPick: "Open a drawing (SVG)",
  sourceHint: "A photo taken straight on, a scan or a sketch on paper. Stand back ten times the largest radius, zoom in, and hold the lens at half the pot's height. The picture stays in this page; it is sent to nobody.",
  outTitle: "Take the profile out", outSvg: "Profile as SVG", outRows: "Coordinates as text",

  // tracing
  traceTitle: "Trace a picture",
  opening: "Opening the picture…", outlining: "Looking for the outline…", tracing: "Tracing…",
  notPicture: (name: string) => `${name} is not a picture this browser can read. Use a JPEG, PNG or WebP file. The pot on the bench is unchanged.`,
  pictureHuge: (name: string, mp: string) => `${name} has ${mp} million pixels; more than 100 million are not opened. Make it smaller and try again. The pot on the bench is unchanged.`,
  pictureScaled: (a: string, b: string) => `The picture of ${a} pixels was scaled down to ${b}; that is plenty for an outline.`,
  otherPicture: "Another picture", leaveTrace: "Leave", backToPicture: "Back to the picture",
  lengthTitle: "One length you know",
  lengthOf: { height: "Height, foot to rim", maxDiameter: "Width at the widest place", rimDiameter: "Width of the rim", bar: "Between two points" },
  lengthMM: "Its length",
  barHint: "Click both ends of something whose length you know, such as a ruler beside the pot.",
  barFront: "It stands in front of the pot's middle by",
  takeForm: "Take this form", traceStep: (name: string) => `form traced from ${name}`,
  noLength: "The outline stands. Give one length that you know, and the profile follows.",
  nextLength: "Type one length that you know; the profile follows.",
  nextTake: "Take this form, or put the outline right first.",
  nextFault: "See beside the picture what is wrong, and put it right there.",
  resultSize: (h: string, d: string, n: number) => `${h} high, ${d} across, ${n} nodes.`,
  band: (b: string) => `Radii are right to about ${b}.`,
  fit: (rms: string, most: string) => `The curve keeps ${rms} from the outline on the whole (root mean square), ${most} at most.`,
  sides: (d: string) => `Left and right differ by ${d}.`,
  lean: (d: string) => `A lean of ${d} was taken out.`,
  cameraLine: (d: string, from: string, h: string, hf: string) => `Perspective taken out for a lens ${d} away (${from}), ${h} above the table (${hf}).`,
  cameraNone: "Perspective was left in.",
  cameraFrom: {
    given: "as typed", focal: "by the focal length in the file", row: "by its row in the picture", ellipses: "seen in rim and foot",
    middle: "taken as half the pot", none: "not known",
  },
  notSeenTitle: "What the camera did not see",
  notSeen: (a: string, b: string, why: string) => `From ${a} to ${b} above the foot: ${why}.`,
  warnTitle: "To look into",

  // marks on the picture
  marksTitle: "If the outline is wrong", tool: "What a touch on the picture does",
  tools: { pot: "This pot", crop: "Crop", away: "Brush away", back: "Brush back", edge: "Edge points", axis: "Axis", bar: "Known length" },
  toolHints: {
    pot: "Touch the pot you mean, where there are several. Drag to move about once you are near.",
    crop: "Drag a box around the pot, or touch two opposite corners.",
    away: "Paint over what is not the pot: a handle, a hand, a shadow. Leave the edge of the pot uncovered where it is good.",
    back: "Paint over what belongs to the pot but was left out.",
    edge: "Touch a few points along one edge, from the foot to the rim, or all around. Between them the line snaps to the edge.",
    axis: "Touch two points on the pot's axis, far apart.",
    bar: "Touch both ends of the length you know.",
  },
  brushSize: "Brush, share of the width", edgeAround: "The points go all around the pot",
  markUndo: "Take back the last mark", markClear: "Clear all marks",
  pictureKeys: "Arrow keys move the cross, with Shift in larger steps; Enter sets it down, which is the same as a touch. Plus and minus zoom, 0 shows the whole.",
  pictureBench: (tool: string) => `Picture with the outline found on it. ${tool}`,
  howTitle: "How it was taken",
  mode: "The picture is", modes: { photo: "a photo", sketch: "a sketch on paper" },
  side: "Profile from", sidesOf: { mean: "both sides", left: "the left side", right: "the right side" },
  top: "The top is", tops: { auto: "as the outline shows", open: "open, with a rim", closed: "closed" },
  cameraTitle: "Where the camera stood", distance: "Lens to the middle of the pot", lens: "Lens above the table",
  cameraHint: "Optional. Roughly right is enough for the distance; take more care over the height.", cameraEmpty: "not known",
  tolerance: "Curve within", toleranceEmpty: "automatic",

  // drawings
  svgTitle: "Which line is the profile?", svgFrom: (from: From) => `From ${page.source(from)}.`,
  svgUnits: "The drawing is in", svgUnitsAsk: "choose", svgUnit: { mm: "mm", cm: "cm", in: "inches", px: "px (96 to the inch)" },
  svgUnitHint: "A drawing that states its own size in mm, cm or in keeps that size.",
  svgAsk: "Choose the unit of the drawing.",
  svgPath: (i: number, id: string) => (id ? `Line ${i}, ${id}` : `Line ${i}`),
  svgSize: (wd: string, h: string) => `${wd} wide, ${h} high`,
  svgNot: (why: string) => `No profile. ${why}`, svgMore: (n: number) => `${n} more lines are smaller and not shown.`,
  svgAxis: "Axis at x of the drawing", svgAxisEmpty: "found",
  svgAxisHint: "Right or left of the axis is the same pot: a left half is mirrored.",
  svgUse: "Use this line", svgStep: (from: From) => `form from ${page.source(from)}`, svgLeave: "Leave",
};
