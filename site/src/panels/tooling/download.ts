// Meshes from the core as files. What was made last is kept with its job, so that
// the second piece of a kit comes at once.
import type { Job, SolidFile } from "../../contract";
import { download, fileName } from "../../files";
import { coreOf, now, parse, say } from "../../state";

export type What = "prints" | "plaster" | "cast";
interface Made { of: Job; files: SolidFile[]; blobs: Uint8Array[] }

const types = { stl: "model/stl", "3mf": "model/3mf", zip: "application/zip" } as const;
const kept = new Map<What, Made>();

async function ask(what: What | "all", as: keyof typeof types): Promise<Made | null> {
  const { job } = now();
  const a = await coreOf().ask("solids", { job, what, as });
  if (!a) return null;
  const reply = parse<{ files: SolidFile[] }>(a.reply);
  if ("error" in reply) { say(reply.error.message); return null; }
  return { of: job, files: reply.files, blobs: a.blobs };
}

/** Downloads the i-th mesh of a kind as STL, in the order of the plan. */
export async function getPiece(what: What, i: number): Promise<void> {
  let made = kept.get(what);
  if (made?.of !== now().job) {
    const fresh = await ask(what, "stl");
    if (!fresh) return;
    kept.set(what, made = fresh);
  }
  download(made.files[i]!.name, made.blobs[i] as BlobPart, types.stl);
}

/** Downloads all of a kind as one file. */
export async function getAll(what: "prints" | "all", as: "3mf" | "zip"): Promise<void> {
  const { job } = now();
  const made = await ask(what, as);
  made?.blobs.forEach((b) => download(fileName(job, `${what === "prints" ? "-prints" : ""}.${as}`), b as BlobPart, types[as]));
}
