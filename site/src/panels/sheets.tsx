// The Sheets panel: a preview of each sheet as it will print, and its download.
// The preview is asked for again whenever the job, the sheet or the paper change.
import { useEffect, useState } from "preact/hooks";
import { Choice } from "../fields";
import { download, fileName } from "../files";
import { coreOf, now, parse, say } from "../state";
import { w } from "../words";

const papers = ["A4", "A3", "Letter"] as const;
const sheets = ["profile", "report"];

export function SheetsPanel() {
  const { job } = now();
  const [sheet, setSheet] = useState(sheets[0]!);
  const [paper, setPaper] = useState<string>("A4");
  const [pages, setPages] = useState<string[] | null>(null);
  const [bad, setBad] = useState("");
  useEffect(() => {
    let gone = false, made: string[] = [];
    const wait = setTimeout(async () => {
      const a = await coreOf().ask("sheet", { job, sheet, paper, as: "svg" });
      if (gone || !a) return;
      const reply = parse<{ pages: number }>(a.reply);
      if ("error" in reply) { setBad(reply.error.message); setPages(null); return; }
      made = a.blobs.map((b) => URL.createObjectURL(new Blob([b as BlobPart], { type: "image/svg+xml" })));
      setBad("");
      setPages(made);
    }, 60);
    return () => {
      gone = true;
      clearTimeout(wait);
      made.forEach((u) => URL.revokeObjectURL(u));
    };
  }, [job, sheet, paper]);
  const get = async (as: "pdf" | "svg") => {
    const a = await coreOf().ask("sheet", { job, sheet, paper, as });
    if (!a) return;
    const reply = parse<{ pages: number }>(a.reply);
    if ("error" in reply) return say(reply.error.message);
    a.blobs.forEach((b, i) => {
      const n = a.blobs.length > 1 ? `-${i + 1}` : "";
      download(fileName(job, `-${sheet}${n}.${as}`), b as BlobPart, as === "pdf" ? "application/pdf" : "image/svg+xml");
    });
  };
  return (
    <>
      <div class="row">
        <Choice label={w.sheet} value={sheet} options={sheets.map((s) => [s, w.sheetNames[s]!] as const)} pick={setSheet} />
        <Choice label={w.paper} value={paper} options={papers.map((p) => [p as string, p] as const)} pick={setPaper} />
      </div>
      <div class="actions">
        <button type="button" class="primary" onClick={() => void get("pdf")}>{w.getPdf}</button>
        <button type="button" onClick={() => void get("svg")}>{w.getSvg}</button>
        {pages && <span class="hint">{w.pages(pages.length)}</span>}
      </div>
      <p class="hint">{w.printHint}</p>
      {bad ? <p class="bad" role="alert">{bad}</p> : pages === null ? <p class="hint">{w.making}</p> : (
        <div class="pages">{pages.map((src, i) => <img key={src} src={src} alt={`${w.preview}: ${w.sheetNames[sheet]}, ${w.page} ${i + 1}`} />)}</div>
      )}
    </>
  );
}
