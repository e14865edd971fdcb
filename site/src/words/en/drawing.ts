// Words of the drawing, and of what can be done on it.

export const drawing = {
  drawing: "Drawing of the pot and its mold: elevation on the left, section on the right",
  axisUnit: "mm in the mold",
  drawingHint: "Drag a node, or select it and press − or + in the bar below, or the arrow keys: 0.1 mm, with Shift 1 mm, with Alt 0.01 mm. Enter turns a corner smooth and back, Insert adds a node, Delete removes one. Plus and minus zoom, 0 shows the whole.",
  nodeLabel: (i: number | string, n: number, r: string, z: string, kind: string) =>
    `Node ${i} of ${n}, radius ${r}, height ${z}, ${kind}`,
  node: (i: number | string) => `Node ${i}`,
  noNode: "Select a node on the drawing or in the table to move it.",
  corner: "corner", smooth: "smooth", nodeTurn: (i: number | string, corner: boolean) => (corner ? `Node ${i}: corner, make it smooth` : `Node ${i}: smooth, make it a corner`),
  nodeRadius: (i: number | string) => `Node ${i}, Radius, mm`, nodeHeight: (i: number | string) => `Node ${i}, Height, mm`,
  addAfter: "Add after", remove: "Remove", addAfterNode: (i: number | string) => `Add after ${i}`, removeNode: (i: number | string) => `Remove ${i}`,
  nudgeIn: "1 mm inward", nudgeOut: "1 mm outward", nudgeDown: "1 mm lower", nudgeUp: "1 mm higher",
  moved: (i: number | string) => `node ${i} moved`, added: (i: number | string) => `node added after ${i}`,
  removed: (i: number | string) => `node ${i} removed`, turned: (i: number | string) => `node ${i} corner or smooth`,
  thickest: (d: string) => `Thickest wall: ${d}, where the clay sets last.`, thickestPlace: "thickest wall",
  elevation: "elevation", section: "section", trimLine: "trim line",
  seam: (z: string) => `seam ${z}`,
  catchMark: (d: string) => `catches ${d}`, trapMark: (d: string) => `trap ${d}`,

  // the editor
  zoom: "Zoom", zoomIn: "Nearer", zoomOut: "Farther", zoomWhole: "Whole",
  panLeft: "Show what is left", panRight: "Show what is right", panUp: "Show what is above", panDown: "Show what is below",
  firstNode: "Select node 1", nodeBefore: "Node before", nodeAfter: "Node after",
  toward: (k: number | string) => `to node ${k}`, straight: "straight", upright: "upright", level: "level", snap: "Snap",
  straightened: (i: number | string, k: number | string) => `stretch from node ${i} to ${k} straightened`,
  linedUp: (i: number | string, k: number | string, how: "upright" | "level") => `node ${i} set ${how === "upright" ? "upright over" : "level with"} node ${k}`,
  behind: "Picture behind the profile", behindShow: "Show the picture", behindHow: "How strong",
};
