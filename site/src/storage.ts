// The bytes of a job, and the copy that the browser keeps between visits. The
// copy is a convenience: browsers may refuse it, share it between files or throw
// it away, so the saved file is the truth and every access may fail.
import type { Job } from "./contract";

const KEY = "moldwright.job";
const ASIDE = "moldwright.unread";

/** The bytes a job is saved as: opening them and saving again gives the same. */
export function canonical(job: Job): string { return JSON.stringify(job, null, 1) + "\n"; }

/** Keeps the job for the next visit; false where the browser refuses. */
export function keep(job: Job): boolean {
  try {
    localStorage.setItem(KEY, canonical(job));
    return true;
  } catch {
    return false;
  }
}

/** What the last visit left: its text, null for nothing, undefined where the
 *  browser refuses. */
export function kept(): string | null | undefined {
  try {
    return localStorage.getItem(KEY);
  } catch {
    return undefined;
  }
}

/** Keeps a text that did not read as a job, so that it is not overwritten. */
export function setAside(text: string): void {
  try {
    localStorage.setItem(ASIDE, text);
  } catch {
    // nothing was kept there either
  }
}
