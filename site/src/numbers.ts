// Every number that is shown or typed goes through here. It is written with the
// decimal sign of the language, thousands parted by a narrow no-break space from
// 10 000 on (ISO 80000-1: groups of three, a small space, neither point nor
// comma; from memory). 12,5 and 12.5 are the same number in every language; a
// text with both signs is refused rather than guessed at.
import { language } from "./words";

const sign = (s: string): string => (language === "en" ? s : s.replace(".", ","));
const grouped = (s: string): string => s.replace(/\d{5,}/, (whole) => whole.replace(/\B(?=(\d{3})+$)/g, "\u202f"));

/** x with so many digits after the decimal sign, and a true minus. */
export function show(x: number, digits = 1): string {
  const s = x.toFixed(digits);
  const [whole, rest] = (Number(s) === 0 ? s.replace("-", "") : s.replace("-", "\u2212")).split(".");
  return sign(grouped(whole!) + (rest === undefined ? "" : `.${rest}`));
}

/** show with its unit, held together on one line. */
export function withUnit(x: number, unit: string, digits = 1): string {
  return `${show(x, digits)}\u00a0${unit}`;
}

/** Mass in g below a kilogram, in kg above. */
export function mass(g: number): string {
  return g < 999.5 ? withUnit(g, "g", 0) : withUnit(g / 1000, "kg", 2);
}

/** Volume in ml below a litre, in l above. */
export function volume(ml: number): string {
  return ml < 999.5 ? withUnit(ml, "ml", 0) : withUnit(ml / 1000, "l", 2);
}

/** A sentence of the core in which no number stands at the end of a line with its
 *  unit on the next. */
export const unbroken = (s: string): string => s.replace(/(\d) (?=(mm|cm²|ml|kg|g|%|N|min)(?![\p{L}\p{N}]))/gu, "$1\u00a0");

/** What an input field holds: the shortest text that reads back as x, with the
 *  language's sign and no grouping. */
export function typed(x: number): string { return sign(plain(x)); }

/** The shortest text that reads back as x, for files that machines read: a point
 *  in every language. */
export function plain(x: number): string { return String(Math.round(x * 1e6) / 1e6); }

const UNITS: Record<string, number> = { "": 1, mm: 1, cm: 10, in: 25.4, '"': 25.4 };

/** The number a person typed, or null. Lengths may carry mm, cm or in, and come
 *  back in mm: "12,5", "1.25 cm" and "1/2 in" are numbers. */
export function read(text: string, length = false): number | null {
  const m = /^\s*([+\-\u2212]?)(\d+(?:[.,]\d*)?|[.,]\d+)(?:\/(\d+))?\s*(mm|cm|in|")?\s*$/i.exec(text);
  if (!m) return null;
  const unit = (m[4] ?? "").toLowerCase();
  if (unit !== "" && !length) return null;
  let x = Number(m[2]!.replace(",", ".")) * UNITS[unit]!;
  if (m[3]) x /= Number(m[3]);
  if (!Number.isFinite(x)) return null;
  return m[1] === "" || m[1] === "+" ? x : -x;
}

/** r or z as the drawing and the arrow keys leave it: whole hundredths. */
export function hundredth(x: number): number { return Math.round(x * 100) / 100; }
