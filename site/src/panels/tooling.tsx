// The Tooling panel: the printed pieces with their size and fit, the printer, and
// the files to download.
import { useState } from "preact/hooks";
import type { Plan, SolidFile } from "../contract";
import { Choice, NumberField, Section } from "../fields";
import { download, fileName } from "../files";
import { show, volume } from "../numbers";
import { coreOf, edit, now, parse, say, settle } from "../state";
import { partName } from "../verdict";
import { w } from "../words";
import { Tag } from "./parts";

const dims = (s: readonly number[]) => s.map((x) => show(x, 0)).join(" × ");
const types: Record<string, string> = { stl: "model/stl", "3mf": "model/3mf", zip: "application/zip" };

interface Made { of: unknown; files: SolidFile[]; blobs: Uint8Array[] }

export function ToolingPanel({ plan }: { plan: Plan }) {
  const { job } = now();
  const [made, setMade] = useState<Made | null>(null);
  const [busy, setBusy] = useState(false);
  const ask = async (what: string, as: string) => {
    setBusy(true);
    const a = await coreOf().ask("solids", { job, what, as });
    setBusy(false);
    if (!a) return null;
    const reply = parse<{ files: SolidFile[] }>(a.reply);
    if ("error" in reply) { say(reply.error.message); return null; }
    return { of: job, files: reply.files, blobs: a.blobs };
  };
  const make = async (what: string) => setMade(await ask(what, "stl"));
  const zip = async () => {
    const m = await ask("all", "zip");
    m?.blobs.forEach((b) => download(fileName(job, ".zip"), b as BlobPart, types["zip"]!));
  };
  const fresh = made?.of === job ? made : null;
  return (
    <>
      <Section title={w.printsTitle}>
        {plan.prints.length === 0 ? <p>{w.noPrints}</p> : (
          <table>
            <thead><tr><th scope="col">{w.piece}</th><th scope="col" class="num">{w.pieceSize}</th><th scope="col" class="num">{w.pieceVolume}</th><th scope="col">{w.fit}</th></tr></thead>
            <tbody>
              {plan.prints.map((p) => (
                <tr key={p.name}>
                  <th scope="row"><Tag name={p.part} />{p.name}</th>
                  <td class="num">{dims(p.size)}</td><td class="num">{volume(p.volume)}</td>
                  <td class={p.fitsBed ? "" : "warn"}>{p.fitsBed ? w.fits : w.fitsNot}</td>
                </tr>
              ))}
            </tbody>
          </table>
        )}
        <div class="actions">
          <button type="button" class="primary" disabled={busy || plan.prints.length === 0} onClick={() => void make("prints")}>{w.getPrints}</button>
          <button type="button" disabled={busy} onClick={() => void make("plaster")}>{w.getPlaster}</button>
          <button type="button" disabled={busy} onClick={() => void zip()}>{w.getAll}</button>
        </div>
        {fresh && (
          <ul class="files" aria-label={w.files}>
            {fresh.files.map((f, i) => (
              <li key={f.name}>
                <button type="button" class="file" onClick={() => download(f.name, fresh.blobs[i] as BlobPart, "model/stl")}>{f.name}</button>
                <span class="hint">{dims(f.size)} mm, {w.triangles(String(f.triangles))}</span>
              </li>
            ))}
          </ul>
        )}
      </Section>
      <Section title={w.printer}>
        <div class="row">
          {(["x", "y", "z"] as const).map((a, i) => (
            <NumberField key={a} length label={`${w.bed} ${a}`} field={`printer.bed[${i}]`} value={job.printer.bed[i]!} set={(j, x) => { j.printer.bed[i] = x; }} />
          ))}
          <NumberField length label={w.layer} unit="mm" field="printer.layer" value={job.printer.layer} set={(j, x) => { j.printer.layer = x; }} />
          <NumberField length label={w.clearance} unit="mm" field="printer.clearance" value={job.printer.clearance} set={(j, x) => { j.printer.clearance = x; }} />
          <NumberField length label={w.shell} unit="mm" field="printer.shell" value={job.printer.shell} set={(j, x) => { j.printer.shell = x; }} />
          <Choice
            label={w.staves} value={String(job.mold.staves)} options={(["1", "2", "3", "4"] as const).map((n) => [n, n] as const)}
            pick={(v) => { edit(w.changed(w.staves.toLowerCase()), "", (j) => { j.mold.staves = Number(v); }); settle(); }}
          />
        </div>
      </Section>
      <p class="hint">{[...new Set(plan.prints.map((p) => p.part))].map(partName).join(" · ")}</p>
    </>
  );
}
