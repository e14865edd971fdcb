// Words of the Form panel.

export const form = {
  size: "Lengths are those of the", fired: "fired pot", wet: "wet cast (mold size)", sizeStep: "size of the lengths changed",
  sizeLine: (h: string, d: string) => `${h} high, ${d} across`,
  sizeFired: "Fired", sizeWet: "Wet, as the mold has it",
  capacity: "Holds, fired, full to the rim",
  nodesEarlier: "Earlier nodes", nodesLater: "Later nodes", nodesShown: (a: string, b: string, n: string) => `Nodes ${a} to ${b} of ${n}`,
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
};
