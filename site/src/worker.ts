// The worker: unpacks the core, keeps the one long-lived instance, and answers
// requests in the order they come. It says when it is ready, how far a long
// request is, and, if the instance has ended, that it has: the page then starts
// another worker and sends its job again. It also opens pictures, and gives the
// core the pixels of the one that is traced to hold. Once an answer is on its way
// the core may put its memory in order, so that no request is kept waiting by it.
import { decode as unpack } from "./pairs";
import { decode, PictureFault } from "./trace/decode";

interface Core {
  call(op: string, request: string, blob: Uint8Array | true | null): { reply: string; blobs: Uint8Array[] };
  hold(size: number, at?: number, bytes?: Uint8Array): void;
  rest(): void;
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

export type ToWorker = { core: string | null } | { id: number; op: string; request: string; blob: Uint8Array | Blob | null };
export type FromWorker =
  | { kind: "ready" }
  | { kind: "progress"; id: number; fraction: number; words: string }
  | { kind: "answer"; id: number; reply: string; blobs: Uint8Array[] }
  | { kind: "dead"; message: string };

let current = 0;
let ended = false;
let resting = 0;
/** The small copy of the picture whose pixels the core holds; which of the two
 *  an op looks at, and as which op of the core. */
let small: Uint8Array | null = null;
const looks: Record<string, { op: string; at: "held" | "small" }> = {
  trace: { op: "trace", at: "held" }, outline: { op: "trace", at: "small" }, wire: { op: "wire", at: "small" },
};

function die(e: unknown): void {
  if (ended) return;
  ended = true;
  scope.postMessage({ kind: "dead", message: e instanceof Error ? e.message : String(e) } satisfies FromWorker);
}

function answer(id: number, reply: string, blobs: Uint8Array[] = []): void {
  scope.postMessage({ kind: "answer", id, reply, blobs } satisfies FromWorker, blobs.map((b) => b.buffer));
}

/** Opens a picture and holds it; null puts the held one away. */
async function picture(id: number, file: Blob | null): Promise<void> {
  small = null;
  if (!file) {
    scope.moldwright?.hold(0);
    return answer(id, "{}");
  }
  try {
    const d = await decode(file, (size, at, bytes) => scope.moldwright!.hold(size, at, bytes));
    small = d.small;
    answer(id, JSON.stringify(d.opened), [d.shown]);
  } catch (e) {
    const { code, megapixels } = e instanceof PictureFault ? e : new PictureFault("unreadable");
    answer(id, JSON.stringify({ error: { code, message: String(e), megapixels } }));
  }
}

/** The packed core as it comes in, piece by piece. */
let pieces: ReadableStreamDefaultController<Uint8Array<ArrayBuffer>> | undefined;

async function start(): Promise<void> {
  const packed = new ReadableStream<Uint8Array<ArrayBuffer>>({ start: (c) => { pieces = c; } });
  const unpacked = packed.pipeThrough(new DecompressionStream("gzip"));
  const go = new scope.Go();
  const answer = new Response(unpacked, { headers: { "Content-Type": "application/wasm" } });
  const { instance } = await WebAssembly.instantiateStreaming(answer, go.importObject);
  scope.moldwrightReady = () => scope.postMessage({ kind: "ready" } satisfies FromWorker);
  scope.moldwrightProgress = (fraction, words) =>
    scope.postMessage({ kind: "progress", id: current, fraction, words } satisfies FromWorker);
  void go.run(instance).then(() => die(""), die);
}

scope.onmessage = (e: MessageEvent<ToWorker>) => {
  const m = e.data;
  if ("core" in m) {
    if (!pieces) start().catch(die);
    if (m.core === null) pieces!.close();
    else pieces!.enqueue(unpack(m.core));
    return;
  }
  current = m.id;
  if (m.op === "picture") {
    void picture(m.id, m.blob as Blob | null);
    return;
  }
  const look = looks[m.op];
  if (look && !small) return answer(m.id, '{"error":{"code":"noPicture","message":""}}');
  try {
    const { reply, blobs } = scope.moldwright!.call(look?.op ?? m.op, m.request, look?.at === "held" ? true : look ? small : m.blob as Uint8Array | null);
    answer(m.id, reply, blobs);
    clearTimeout(resting);
    resting = setTimeout(() => scope.moldwright!.rest());
  } catch (err) {
    die(err);
  }
};
