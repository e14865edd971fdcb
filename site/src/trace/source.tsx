// Where a form can come from, beside the nodes and rows, and how the profile
// leaves again: as a drawing or as coordinates.
import { Section } from "../fields";
import { download, fileName, takeFile } from "../files";
import { plain } from "../numbers";
import { coreOf, now, parse, say } from "../state";
import { tracing as t } from "../words";
import { BehindTools } from "./behind-tools";
import { pick } from "./files";
import { behind, goBack } from "./tracing";

const take = (f: File) => void takeFile(f);

export function Source() {
  const { trace } = now();
  return (
    <Section title={t.sourceTitle}>
      <div class="actions">
        <button type="button" onClick={() => pick("image/*", false, take)}>{t.photoPick}</button>
        <button type="button" onClick={() => pick("image/*", true, take)}>{t.photoTake}</button>
        <button type="button" onClick={() => pick(".svg,image/svg+xml", false, take)}>{t.svgPick}</button>
        {trace && <button type="button" onClick={goBack}>{t.backToPicture}</button>}
      </div>
      <p class="hint">{t.sourceHint}</p>
      {behind() && <BehindTools />}
    </Section>
  );
}

export function TakeOut() {
  return (
    <Section title={t.outTitle}>
      <div class="actions">
        <button type="button" onClick={() => void outSvg()}>{t.outSvg}</button>
        <button type="button" onClick={outRows}>{t.outRows}</button>
      </div>
    </Section>
  );
}

async function outSvg(): Promise<void> {
  const a = await coreOf().ask("drawn", { job: now().job });
  if (!a) return;
  const reply = parse<{ name: string }>(a.reply);
  if ("error" in reply) return say(reply.error.message);
  download(reply.name, a.blobs[0] as BlobPart, "image/svg+xml");
}

/** Radius and height of each node in mm, one a row: what the box for rows reads. */
function outRows(): void {
  const { job } = now();
  const text = job.form.outer.map((n) => `${plain(n.r)}\t${plain(n.z)}${n.corner ? "" : "\tsmooth"}`).join("\n") + "\n";
  download(fileName(job, "-coordinates.txt"), text, "text/plain");
}
