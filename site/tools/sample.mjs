// Plans the sample pot with the built core, headless, and writes what a potter
// takes to the bench to dist/sample/: report, profile, meshes and the job. Then
// opens the page, where there is a display.
import { spawn, spawnSync } from "node:child_process";
import { mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { dist, startCore } from "./core.mjs";

const sample = readFileSync(new URL("../samples/harbour-jar.json", import.meta.url), "utf8");
const core = await startCore();
const must = (op, request) => {
  const a = core.ask(op, request);
  if (a.error) throw new Error(`${op}: ${a.error.message}`);
  return a;
};

const { job } = must("read", { kind: "job", text: sample });
const plan = must("plan", { job });
const out = join(dist, "sample");
rmSync(out, { recursive: true, force: true });
mkdirSync(out, { recursive: true });
const written = [];
const write = (name, bytes) => {
  writeFileSync(join(out, name), bytes);
  written.push(`  dist/sample/${name}  ${bytes.length} bytes`);
};

write("job.moldwright.json", JSON.stringify(job, null, 1) + "\n");
for (const sheet of ["profile", "report"]) {
  for (const as of ["pdf", "svg"]) {
    const { blobs } = must("sheet", { job, sheet, paper: "A4", as });
    blobs.forEach((b, i) => write(`${sheet}${blobs.length > 1 ? `-${i + 1}` : ""}.${as}`, b));
  }
}
for (const what of ["prints", "plaster"]) {
  const { files, blobs } = must("solids", { job, what, as: "stl" });
  files.forEach((f, i) => write(f.name, blobs[i]));
}
console.log(`${job.name}: ${plan.verdict}`);
console.log(written.join("\n"));

const page = join(dist, "moldwright.html");
const shown = (process.env.DISPLAY || process.env.WAYLAND_DISPLAY) && spawnSync("xdg-open", ["--version"]).status === 0;
if (shown) spawn("xdg-open", [page], { detached: true, stdio: "ignore" }).unref();
console.log(shown ? `Opening ${page}` : `Open ${page} in a browser.`);
process.exit(0);
