// Every word on the page, in one table for each language, so that each can be
// read as one text. Words of the trade are those of the drawing, the report and
// the paper. Functions take values that are already formatted, parts of the mold
// by their names in the plan. w and its parts are live: they follow the language,
// so read them where they are shown and keep nothing of them.
import { en } from "./en";
import type { Readable, Words } from "./like";

export let w: Readable<Words> = en;
/** The words of tracing, for the modules that use no others. */
export let tracing: Readable<Words>["trace"] = w.trace;
