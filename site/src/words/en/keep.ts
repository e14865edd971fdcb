// Words about keeping work: versions, the saved-or-not mark, damaged files, and
// what is under way.

import type { From } from "../from";
import { page } from "./page";

export const keep = {
  versions: "Versions", versionsTitle: "Versions kept in this browser",
  versionsHint: "The page keeps the last versions of each pot, closer together the newer they are. The browser may throw them away; a saved file stays.",
  none: "Nothing is kept yet. The first change of a pot begins its row.",
  refused: "This browser keeps nothing between visits. Save your job to a file.",
  onBench: "On the bench", nameless: "A pot without a name",
  take: "Take back", takeOf: (name: string, when: string) => `Take back ${name}, ${when}`,
  toFile: "saved to a file", otherTab: "from another tab or visit", noVerdict: "not planned yet", isHere: "as it stands on the bench",
  keptHere: "Not saved to a file; kept in this browser", keptNowhere: "Not saved anywhere",
  full: "This browser has no more room to keep your work, or refuses to. Save it to a file.",
  unread: (name: string, why: string) => `The job of your last visit (${name}) does not read: ${why} It stays among the versions; what was kept before it is on the bench.`,
  strange: {
    empty: (from: From) => `${page.large(from)} is empty. The pot on the bench is unchanged.`,
    page: (from: From) => `${page.large(from)} is a web page, not a job. Open that page, press Save there, and open the file that it gives.`,
    zip: (from: From) => `${page.large(from)} is a packed folder. Unpack it first, then open what is in it.`,
    pdf: (from: From) => `${page.large(from)} is a PDF. A sheet cannot be turned back into a job; open the saved job, or a picture of the pot.`,
    mesh: (from: From) => `${page.large(from)} is a mesh. A form comes from a saved job, rows of radii and heights, a drawing (SVG) or a picture.`,
    words: (from: From) => `${page.large(from)} holds words but no numbers. A form comes from a saved job, rows of radii and heights, a drawing (SVG) or a picture.`,
    binary: (from: From) => `${page.large(from)} holds no text that can be read. It may be damaged, or of another program. The pot on the bench is unchanged.`,
  },
  damagedTitle: (from: From) => `${page.large(from)} is damaged`,
  damagedRows: (n: number) => `${n} rows of its outline can be read.`,
  damagedSure: "Look at the outline before you trust it: what is missing cannot be known.",
  damagedLost: "What was lost or put right",
  damagedTake: "Put it on the bench", damagedLeave: "Leave it",
  damagedStep: (from: From) => `Opened what could be read of ${page.source(from)}`,
};
