// The tables of words as a module of Node, for the build and the tests.
import { fileURLToPath } from "node:url";
import { build } from "esbuild";

export async function words() {
  const entry = fileURLToPath(new URL("../src/words/index.ts", import.meta.url));
  const out = await build({ entryPoints: [entry], bundle: true, write: false, format: "esm", charset: "utf8" });
  return import(`data:text/javascript;base64,${Buffer.from(out.outputFiles[0].text).toString("base64")}`);
}
