// Undo and redo of whole jobs. A step carries words for what it did; steps with
// the same tag that follow one another (a drag, a held arrow key, typing in one
// field) are one step.
import type { Job } from "./contract";

/** What a step did, in the language of the page when it is asked. */
export type Said = () => string;

interface Step { job: Job; words: Said; tag: string }

const KEEP = 200;

export class History {
  private steps: Step[];
  private at = 0;
  private open = false;

  constructor(job: Job) { this.steps = [{ job, words: () => "", tag: "" }]; }

  get job(): Job { return this.steps[this.at]!.job; }

  /** Adds a step, or widens the last one when it has the same tag and is open. */
  push(job: Job, words: Said, tag: string): void {
    if (this.open && tag !== "" && this.steps[this.at]!.tag === tag && this.at === this.steps.length - 1) {
      this.steps[this.at] = { job, words, tag };
      return;
    }
    this.steps.splice(this.at + 1, Infinity, { job, words, tag });
    if (this.steps.length > KEEP) this.steps.shift();
    this.at = this.steps.length - 1;
    this.open = true;
  }

  /** Ends the open step: what follows with the same tag is a step of its own. */
  close(): void { this.open = false; }

  /** What undo would take back, in words; null where there is nothing. */
  get back(): string | null { return this.at > 0 ? this.steps[this.at]!.words() : null; }
  get forth(): string | null { return this.steps[this.at + 1]?.words() ?? null; }

  undo(): void { if (this.at > 0) this.at--; this.open = false; }
  redo(): void { if (this.at < this.steps.length - 1) this.at++; this.open = false; }
}
