// The Sheets panel: which sheet, on which paper, with which options; a preview of
// each page as it will print; download as PDF or SVG; and the correction for a
// printer that scales. The preview follows the job.
import { useEffect, useState } from "preact/hooks";
import type { Fault, Job } from "../contract";
import { Check, Choice } from "../fields";
import { download, fileName } from "../files";
import { coreOf, mayPass, now, parse, say } from "../state";
import { language, w } from "../words";
import { atScale, Pages, type Page } from "./sheets/pages";
import { keptOptions, request, sheetNames, type Options, type SheetName } from "./sheets/request";
import { PrintScale } from "./sheets/scale";

const papers = ["A4", "A3", "Letter"] as const;

interface Made { job: Job; asked: string; sheet: SheetName; pages: Page[] }

export function SheetsPanel() {
  const { job } = now();
  const [options, setOptions] = useState(keptOptions());
  const [made, setMade] = useState<Made | null>(null);
  const [bad, setBad] = useState<Fault | null>(null), [again, setAgain] = useState(0);
  const put = (patch: Partial<Options>) => setOptions(keptOptions({ ...options, ...patch }));
  const asked = JSON.stringify([language, request(options)]);
  useEffect(() => {
    let gone = false;
    const wait = setTimeout(async () => {
      const a = await coreOf().ask("sheet", { job, ...request(options), as: "svg" });
      if (gone || !a) return;
      const reply = parse<{ pages: number }>(a.reply);
      if ("error" in reply) { setBad(reply.error); setMade(null); return; }
      const pages = a.blobs.map((bytes): Page => ({ bytes, src: URL.createObjectURL(new Blob([bytes as BlobPart], { type: "image/svg+xml" })) }));
      setBad(null);
      setMade({ job, asked, sheet: options.sheet, pages });
    }, 60);
    return () => {
      gone = true;
      clearTimeout(wait);
    };
  }, [job, asked, again]);
  // let go of only once others stand in their place
  useEffect(() => () => made?.pages.forEach((p) => URL.revokeObjectURL(p.src)), [made]);
  // Pages of an earlier job stay until the new ones are there, those of another sheet do not.
  const pages = made?.sheet === options.sheet ? made.pages : null;
  const fresh = made?.job === job && made.asked === asked;
  const getPdf = async () => {
    const a = await coreOf().ask("sheet", { job, ...request(options), as: "pdf" });
    if (!a) return;
    const reply = parse<{ pages: number }>(a.reply);
    if ("error" in reply) return say(reply.error.message);
    a.blobs.forEach((b) => download(fileName(job, `-${options.sheet}.pdf`), b as BlobPart, "application/pdf"));
  };
  const getSvg = (page: Page, i: number) => {
    const n = pages && pages.length > 1 ? `-${i + 1}` : "";
    download(fileName(job, `-${options.sheet}${n}.svg`), page.bytes as BlobPart, "image/svg+xml");
  };
  return (
    <>
      <fieldset class="pick">
        <legend>{w.whichSheet}</legend>
        {sheetNames.map((s) => (
          <label key={s}><input type="radio" name="sheet" checked={options.sheet === s} onChange={() => put({ sheet: s })} />
            <span><b>{w.sheets[s]![0]}</b> <span class="hint">{w.sheets[s]![1]}</span></span></label>
        ))}
      </fieldset>
      <div class="row">
        <Choice label={w.paper} value={options.paper} options={papers.map((p) => [p as string, p] as const)} pick={(paper) => put({ paper })} />
        {options.sheet === "profile" && <Choice label={w.shape} value={options.full ? "full" : "half"} options={[["half", w.half], ["full", w.full]]} pick={(v) => put({ full: v === "full" })} />}
        {atScale(options.sheet) && <Choice label={w.lines} value={options.lines} options={[["fired", w.linesFired], ["wet", w.linesWet], ["both", w.linesBoth]]} pick={(lines) => put({ lines })} />}
        {options.sheet === "report" && <Check label={w.summaryOnly} value={options.summary} pick={(summary) => put({ summary })} />}
      </div>
      <div class="actions">
        <button type="button" class="primary" disabled={!fresh} onClick={() => void getPdf()}>{w.getPdf}</button>
        {pages?.length === 1 && <button type="button" disabled={!fresh} onClick={() => getSvg(pages[0]!, 0)}>{w.getSvg}</button>}
        {pages && <span class="hint">{w.pages(pages.length)}</span>}
      </div>
      {atScale(options.sheet) && (
        <>
          <p class="advice"><b>{w.beforePrint}</b></p>
          <PrintScale x={options.measuredX} y={options.measuredY} put={(measuredX, measuredY) => put({ measuredX, measuredY })} />
        </>
      )}
      {bad ? (
        <>
          <p class="bad" role="alert">{bad.message}</p>
          {mayPass(bad) && <div class="actions"><button type="button" onClick={() => { setBad(null); setAgain(again + 1); }}>{w.tryAgain}</button></div>}
        </>
      ) : pages === null ? <p class="hint" role="status">{w.making}</p>
        : <Pages pages={pages} fresh={fresh} name={w.sheets[options.sheet]![0]} getSvg={getSvg} />}
    </>
  );
}
