// The page's side of the core: one worker, one request under way at a time, and
// a queue. Of requests to plan or to trace only the newest waits: the newest job
// wins. A worker that ends is replaced, and what it was asked is asked again, as is
// what waits when the user stops a request; a request that ends two workers is answered with a fault instead, so
// that one bad job cannot keep the page from working.
import type { Fault } from "./contract";
import type { First } from "./first";
import { language, w } from "./words";
import type { FromWorker, ToWorker } from "./worker";

export interface Answer { reply: string; blobs: Uint8Array[] }
export interface Progress { op: string; fraction: number; words: string }

interface Request {
  id: number; op: string; request: string; blob: Uint8Array | Blob | null;
  tries: number; aside: boolean; quiet: boolean; told?: Progress; done: (a: Answer) => void;
}

/** Ms after which an answer that is waited for is slow. */
const SLOW = 400;

const newestWins = new Set(["plan", "trace", "outline", "wire"]);

const fault = (f: Fault): Answer => ({ reply: JSON.stringify({ error: f }), blobs: [] });

/** A sentence of ours, and behind it what the browser says of why, if anything. */
const said = (sentence: string, why: string): string => (why ? `${sentence} ${w.browserSays(why)}` : sentence);

export class Core {
  private worker: Worker | null = null;
  private ready = false;
  private starts = 0;
  private queue: Request[] = [];
  private active: Request | null = null;
  private next = 1;

  constructor(
    private readonly first: First,
    /** Gives the pieces of the packed core in their order, then null. */
    private readonly feed: (give: (piece: string | null) => void) => void,
    private readonly onProgress: (p: Progress | null) => void,
    private readonly onSlow: (slow: boolean) => void,
  ) { this.fresh = first.worker; }

  /** The page's first worker, until it is taken over. */
  private fresh: Worker | null;

  private slowTimer = 0;

  /** What is only warmed up is waited for as soon as something stands behind it. */
  private waitedFor(): boolean {
    return this.active !== null && (!this.active.quiet || this.queue.some((q) => !q.quiet));
  }

  /** Watches the answer that is waited for: one that takes long is told. */
  private watch(): void {
    clearTimeout(this.slowTimer);
    this.onSlow(false);
    if (this.waitedFor()) this.slowTimer = window.setTimeout(() => this.onSlow(true), SLOW);
  }

  start(): void {
    const worker = this.fresh ?? new Worker(this.first.address);
    this.fresh = null;
    this.starts++;
    this.ready = false;
    this.worker = worker;
    worker.onmessage = (e: MessageEvent<FromWorker>) => { if (worker === this.worker) this.hear(e.data); };
    worker.onerror = (e) => {
      e.preventDefault();
      if (worker === this.worker) this.restart(e.message);
    };
    this.feed((core) => worker.postMessage({ core } satisfies ToWorker));
  }

  /** Asks the core; the answer always comes, a failure as {"error":…}. A plan
   *  that a newer one overtakes while it waits is answered null; one asked aside
   *  overtakes nothing and is not overtaken. */
  ask(op: string, request: object, blob: Uint8Array | Blob | null = null, aside = false): Promise<Answer | null> {
    return new Promise((resolve) => {
      if (newestWins.has(op) && !aside) {
        for (const old of this.queue.filter((q) => q.op === op && !q.aside)) {
          this.queue.splice(this.queue.indexOf(old), 1);
          (old.done as (a: Answer | null) => void)(null);
        }
      }
      this.queue.push({
        id: this.next++, op, request: JSON.stringify({ language, ...request }), blob, tries: 0, aside, quiet: false, done: resolve,
      });
      if (this.active?.quiet) {
        this.watch();
        if (this.active.told) this.onProgress(this.active.told);
      }
      this.send();
    });
  }

  /** Asks for something only so that asking for its like is not slow the first
   *  time: what the core says is dropped, and that it takes long is not told. */
  warm(op: string, request: object): void {
    this.queue.push({ id: this.next++, op, request: JSON.stringify({ language, ...request }), blob: null, tries: 1, aside: true, quiet: true, done: () => {} });
    this.send();
  }

  /** Stops what is under way, and with a warming up what is kept waiting by it; it
   *  is answered with the fault "stopped". */
  stop(): void {
    const r = this.active;
    if (!r) return;
    this.active = null;
    const behind = r.quiet ? this.queue.splice(0) : [];
    this.renew();
    for (const q of [r, ...behind]) q.done(fault({ code: "stopped", message: w.coreStopped }));
  }

  /** Ends the worker as a crash would; for the test that the page recovers. */
  kill(): void { this.restart(""); }

  /** Nothing is under way: what is asked now is begun at once. */
  get free(): boolean { return this.ready && !this.active; }

  private send(): void {
    if (!this.ready || this.active) return;
    const r = this.queue.shift();
    if (!r) return;
    this.active = r;
    r.tries++;
    this.watch();
    this.worker?.postMessage({ id: r.id, op: r.op, request: r.request, blob: r.blob } satisfies ToWorker);
  }

  private hear(m: FromWorker): void {
    switch (m.kind) {
      case "ready":
        this.ready = true;
        this.send();
        break;
      case "progress":
        if (this.active?.id !== m.id) break;
        this.active.told = { op: this.active.op, fraction: m.fraction, words: m.words };
        if (this.waitedFor()) this.onProgress(this.active.told);
        break;
      case "answer": {
        const r = this.active;
        if (r?.id !== m.id) break;
        this.active = null;
        this.starts = 0;
        this.onProgress(null);
        this.watch();
        r.done({ reply: m.reply, blobs: m.blobs });
        this.send();
        break;
      }
      case "dead":
        this.restart(m.message);
    }
  }

  private restart(why: string): void {
    const r = this.active;
    this.active = null;
    if (r && r.tries < 2) this.queue.unshift(r);
    else if (r) {
      r.done(fault({
        code: "internal",
        message: said(w.coreTooMuch, why),
      }));
    }
    if (this.starts >= 3 && !this.ready) {
      this.worker?.terminate();
      for (const q of this.queue.splice(0)) {
        q.done(fault({
          code: "start",
          message: said(w.coreNoStart, why),
        }));
      }
      return;
    }
    this.renew();
  }

  private renew(): void {
    this.worker?.terminate();
    this.onProgress(null);
    this.watch();
    this.start();
  }
}
