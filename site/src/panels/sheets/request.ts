// What is asked of the core for a sheet, from the choices made in the panel. The
// choices, the printer's bars among them, are kept while the page is open.
import { coreOf, now } from "../../state";

export const sheetNames = ["profile", "template", "section", "report", "workshop"] as const;
export type SheetName = (typeof sheetNames)[number];

export interface Options {
  sheet: SheetName;
  paper: string;
  lines: string;
  full: boolean;
  summary: boolean;
  /** What the 100 mm bars came out as, mm. */
  measuredX: number;
  measuredY: number;
}

let kept: Options = { sheet: "profile", paper: "A4", lines: "fired", full: false, summary: false, measuredX: 100, measuredY: 100 };

export const keptOptions = (next = kept): Options => (kept = next);

/** The request of op sheet, without job and format. */
export function request(o: Options): object {
  const { sheet, paper, lines, full, summary, measuredX, measuredY } = o;
  switch (sheet) {
    case "profile": return { sheet, paper, lines, full, measuredX, measuredY };
    case "template": return { sheet: "profile", paper, lines, template: true, measuredX, measuredY };
    case "report": return { sheet, paper, summary };
    default: return { sheet, paper };
  }
}

let warmed = false;

/** The hand is about to open the panel, so it drags nothing: the first sheet, for
 *  which the core reads its fonts, is begun. */
export function warm(): void {
  const { job, plan, faults } = now();
  if (warmed || !plan || faults.length) return;
  warmed = true;
  coreOf().warm("sheet", { job, ...request(kept), as: "svg" });
}
