// The bytes of a job.
import type { Job } from "./contract";

/** The bytes a job is saved as: opening them and saving again gives the same. */
export function canonical(job: Job): string { return JSON.stringify(job, null, 1) + "\n"; }
