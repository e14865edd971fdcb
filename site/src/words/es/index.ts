// Every Spanish word on the page, as one table; what is not written yet stands in
// English.
import { en } from "../en";
import type { Words } from "../like";

export const es: Words = { ...en };
