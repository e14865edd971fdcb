// The bytes of a job. A job is never changed once it stands on the bench: an edit
// makes another. So its bytes are written once, though they are asked for with
// every drawing of the page.
import type { Job } from "./contract";

const written = new WeakMap<Job, string>();

/** The bytes a job is saved as: opening them and saving again gives the same. */
export function canonical(job: Job): string {
  let text = written.get(job);
  if (text === undefined) written.set(job, text = JSON.stringify(job, null, 1) + "\n");
  return text;
}
