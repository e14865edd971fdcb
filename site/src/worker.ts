// The worker: unpacks the core, keeps the one long-lived instance, and answers
// requests in the order they come. It says when it is ready, how far a long
// request is, and, if the instance has ended, that it has: the page then starts
// another worker and sends its job again.

interface Core {
  call(op: string, request: string, blob: Uint8Array | null): { reply: string; blobs: Uint8Array[] };
}
interface Go { importObject: WebAssembly.Imports; run(i: WebAssembly.Instance): Promise<void> }
interface Scope {
  Go: new () => Go;
  moldwright?: Core;
  moldwrightReady?: () => void;
  moldwrightProgress?: (fraction: number, words: string) => void;
  postMessage(m: unknown, transfer?: Transferable[]): void;
  onmessage: ((e: MessageEvent) => void) | null;
}
const scope = globalThis as unknown as Scope;

export type ToWorker = { core: string } | { id: number; op: string; request: string; blob: Uint8Array | null };
export type FromWorker =
  | { kind: "ready" }
  | { kind: "progress"; id: number; fraction: number; words: string }
  | { kind: "answer"; id: number; reply: string; blobs: Uint8Array[] }
  | { kind: "dead"; message: string };

let current = 0;
let ended = false;

function die(e: unknown): void {
  if (ended) return;
  ended = true;
  scope.postMessage({ kind: "dead", message: e instanceof Error ? e.message : String(e) } satisfies FromWorker);
}

function fromBase64(text: string): Uint8Array<ArrayBuffer> {
  const fast = (Uint8Array as unknown as { fromBase64?: (s: string) => Uint8Array<ArrayBuffer> }).fromBase64;
  return fast ? fast(text) : Uint8Array.from(atob(text), (c) => c.charCodeAt(0));
}

async function start(packed: string): Promise<void> {
  const unpacked = new Blob([fromBase64(packed)]).stream().pipeThrough(new DecompressionStream("gzip"));
  const go = new scope.Go();
  const answer = new Response(unpacked, { headers: { "Content-Type": "application/wasm" } });
  const { instance } = await WebAssembly.instantiateStreaming(answer, go.importObject);
  scope.moldwrightReady = () => scope.postMessage({ kind: "ready" } satisfies FromWorker);
  scope.moldwrightProgress = (fraction, words) =>
    scope.postMessage({ kind: "progress", id: current, fraction, words } satisfies FromWorker);
  void go.run(instance).then(() => die("The core has ended."), die);
}

scope.onmessage = (e: MessageEvent<ToWorker>) => {
  const m = e.data;
  if ("core" in m) {
    start(m.core).catch(die);
    return;
  }
  current = m.id;
  try {
    if (!scope.moldwright) throw new Error("The core is not ready.");
    const { reply, blobs } = scope.moldwright.call(m.op, m.request, m.blob);
    scope.postMessage({ kind: "answer", id: m.id, reply, blobs } satisfies FromWorker, blobs.map((b) => b.buffer));
  } catch (err) {
    die(err);
  }
};
