// Starts the built core in Node, as the page's worker does in the browser.
// ask() parses the reply; call() is the bridge itself.
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";

export const dist = fileURLToPath(new URL("../../dist/", import.meta.url));

export async function startCore({ onProgress } = {}) {
  await import(dist + "wasm_exec.js");
  const go = new globalThis.Go();
  const module = await WebAssembly.compile(readFileSync(dist + "core.wasm"));
  const ready = new Promise((resolve) => { globalThis.moldwrightReady = resolve; });
  globalThis.moldwrightProgress = onProgress;
  const instance = await WebAssembly.instantiate(module, go.importObject);
  const ended = go.run(instance).then(() => { throw new Error("the core ended"); });
  ended.catch(() => {});
  await Promise.race([ready, ended]);
  const { call, hold, rest } = globalThis.moldwright;
  return {
    call,
    hold,
    rest,
    memory: () => instance.exports.mem.buffer.byteLength,
    ask(op, request, blob = null) {
      const { reply, blobs } = call(op, JSON.stringify(request), blob);
      return { ...JSON.parse(reply), blobs };
    },
  };
}
