// The height of a parting as an answer: text and unit as they were typed, and the
// same by the line on the drawing and the buttons beside the field.
import { read, typed } from "../numbers";
import type { Answer, Question } from "./types";

/** A typed height in mm, where it reads. */
export function typedHeight({ value = "", unit = "" }: Answer): number | null {
  const x = read(/[a-z"]\s*$/i.test(value) ? value : `${value} ${unit || "mm"}`, true);
  return x !== null && x >= 0 ? x : null;
}

/** A height in mm as an answer. */
export const heightOf = (z: number) => ({ value: typed(z), unit: "mm" });

/** How high a parting can stand, mm in whole tenths, as the line is dragged. */
export const highest = (q: Question): number => Math.round(q.drawing.height * 10) / 10;
