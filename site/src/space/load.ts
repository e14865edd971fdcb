// Unpacks the view in space when it is first opened, and meshes for it. The
// packed script stands in the page as text; the page's policy knows it by its
// hash, so that it and nothing else can be run so.
import type { Job, SolidFile } from "../contract";
import { unpacked } from "../packed";
import { coreOf, parse } from "../state";
import { w } from "../words";
import type { Open } from "./scene";

const scope = window as unknown as { moldwrightSpace?: Open };
let loading: Promise<Open> | null = null;

export function load(): Promise<Open> {
  loading ??= (async () => {
    const script = document.createElement("script");
    script.textContent = await unpacked("space");
    document.head.append(script);
    if (!scope.moldwrightSpace) throw new Error(w.spaceNoStart);
    return scope.moldwrightSpace;
  })();
  return loading;
}

export interface Made { of: Job; what: "mold" | "kit"; files: SolidFile[]; blobs: Uint8Array[]; fault: string }

/** The meshes of the closed mold with its cast, or of the printed kit. */
export async function make(job: Job, what: "mold" | "kit"): Promise<Made> {
  const out: Made = { of: job, what, files: [], blobs: [], fault: "" };
  for (const kind of what === "mold" ? ["plaster", "cast"] : ["prints"]) {
    const a = await coreOf().ask("solids", { job, what: kind, as: "stl" });
    const reply = a && parse<{ files: SolidFile[] }>(a.reply);
    if (!reply) continue;
    if ("error" in reply) { out.fault ||= reply.error.message; continue; }
    out.files.push(...reply.files);
    out.blobs.push(...a.blobs);
  }
  return out;
}
