// What one touch on the picture means, by the chosen tool.
import { mark, type Box, type Place, type Tracing } from "./tracing";

/** The box between two opposite corners: x, y, width, height. */
export const boxOf = (a: Place, b: Place): Box =>
  [Math.min(a[0], b[0]), Math.min(a[1], b[1]), Math.abs(a[0] - b[0]), Math.abs(a[1] - b[1])];

const round = (p: Place): Place => [Math.round(p[0] * 10) / 10, Math.round(p[1] * 10) / 10];

/** Does it; the answer is the first corner of a crop that waits for the second. */
export function touch(t: Tracing, at: Place, corner: Place | null): Place | null {
  const p = round(at), m = t.marks;
  switch (t.tool) {
    case "pot": mark({ point: p }); break;
    case "crop":
      if (!corner) return p;
      mark({ crop: boxOf(corner, p) });
      break;
    case "away": case "back":
      mark({ strokes: [...m.strokes, { kind: t.tool === "away" ? "exclude" : "include", radius: (t.brush / 100) * t.opened.width, points: [p] }] });
      break;
    case "edge": mark({ wire: [...m.wire, p] }); break;
    case "axis": mark({ axis: m.axis.length === 1 ? [m.axis[0]!, p] : [p] }); break;
    case "bar": mark({ bar: m.bar.length === 1 ? [m.bar[0]!, p] : [p] }); break;
  }
  return null;
}
