// The panel beside the picture: the one length, how good the result is, and the
// button that takes it; below, what to do if the outline is wrong.
import { Check, Choice, Section } from "../fields";
import { takeFile } from "../files";
import { now } from "../state";
import { tracing as t, w } from "../words";
import { pick } from "./files";
import { Given } from "./given";
import { Quality } from "./quality";
import { clearMarks, leave, type Length, mark, pickTool, setBrush, takeForm, tell, type Tool, type Tracing, unmark } from "./tracing";

const lengths = ["height", "maxDiameter", "rimDiameter", "bar"] as const;
const tools: Tool[] = ["pot", "crop", "away", "back", "edge", "axis"];

export function TracePanel({ of }: { of: Tracing }) {
  const { found, fault, settings: s, busy } = of;
  return (
    <>
      <section class="group">
        <div class="head"><h3>{t.traceTitle}</h3><span class="hint">{of.name}</span></div>
        <div class="actions">
          <button type="button" class="small" onClick={() => pick("image/*", false, (f) => void takeFile(f))}>{t.otherPicture}</button>
          <button type="button" class="small" onClick={leave}>{t.leaveTrace}</button>
        </div>
        <div class="known">
          <Choice label={t.lengthTitle} value={s.what} options={lengths.map((v) => [v, t.lengthOf[v]] as const)} pick={(what: Length) => { tell({ what }); if (what === "bar") pickTool("bar"); else if (of.tool === "bar") pickTool("pot"); }} />
          <Given label={t.lengthMM} unit="mm" value={s.mm} put={(mm) => tell({ mm })} />
          <button type="button" class="primary take" disabled={!found || busy !== ""} onClick={takeForm}>{t.takeForm}</button>
          {s.what === "bar" && <Given label={t.barFront} unit="mm" value={s.inFront} put={(x) => tell({ inFront: x ?? 0 })} />}
        </div>
        {s.what === "bar" && of.marks.bar.length < 2 && <p class="hint">{t.barHint} <button type="button" class="small" aria-pressed={of.tool === "bar"} onClick={() => pickTool("bar")}>{t.tools.bar}</button></p>}
        <div aria-live="polite" class={busy ? "stale" : ""}>
          {fault ? <p class="bad said-fault">{fault.message}</p> : found ? <Quality found={found} flat={s.mode === "sketch"} /> : <p>{busy ? t.outlining : of.outline.length ? t.noLength : ""}</p>}
        </div>
      </section>
      <MarkTools of={of} />
      <Section title={t.howTitle}>
        <div class="row">
          <Choice label={t.mode} value={s.mode} options={pairs(t.modes)} pick={(mode) => tell({ mode: mode as typeof s.mode })} />
          <Choice label={t.side} value={s.side} options={pairs(t.sidesOf)} pick={(side) => tell({ side: side as typeof s.side })} />
          <Choice label={t.top} value={s.top} options={pairs(t.tops)} pick={(top) => tell({ top: top as typeof s.top })} />
          <Choice label={w.size} value={s.size} options={[["fired", w.fired], ["mold", w.wet]]} pick={(size) => tell({ size })} />
          <Given label={t.tolerance} unit="mm" empty={t.toleranceEmpty} value={s.tolerance} put={(tolerance) => tell({ tolerance })} />
        </div>
      </Section>
      {s.mode === "photo" && (
        <Section title={t.cameraTitle}>
          <div class="row">
            <Given label={t.distance} unit="mm" empty={t.cameraEmpty} value={s.distance} put={(distance) => tell({ distance })} />
            <Given label={t.lens} unit="mm" empty={t.cameraEmpty} value={s.lens} put={(lens) => tell({ lens })} />
          </div>
          <p class="hint">{t.cameraHint}</p>
        </Section>
      )}
    </>
  );
}

const pairs = (o: Record<string, string>) => Object.entries(o).map(([k, v]) => [k, v] as const);

/** The tools that work on the picture, and the steps back. */
function MarkTools({ of }: { of: Tracing }) {
  const brush = of.tool === "away" || of.tool === "back", marks = JSON.stringify(of.marks), none = of.past.length === 0;
  return (
    <Section title={t.marksTitle}>
      <div class="choices" role="group" aria-label={t.tool}>
        {tools.map((k) => <button key={k} type="button" aria-pressed={of.tool === k} onClick={() => pickTool(k)}>{t.tools[k]}</button>)}
      </div>
      <p class="hint">{t.toolHints[of.tool]}</p>
      {brush && (
        <label class="slider">{t.brushSize}
          <input type="range" min={0.5} max={12} step={0.5} value={of.brush} aria-valuetext={`${of.brush} %`} onInput={(e) => setBrush(Number(e.currentTarget.value))} />
        </label>
      )}
      {of.tool === "edge" && <Check label={t.edgeAround} value={of.marks.around} pick={(around) => mark({ around })} />}
      <div class="actions">
        <button type="button" class="small" disabled={none} onClick={unmark}>{t.markUndo}</button>
        <button type="button" class="small" disabled={none || marks === JSON.stringify(of.past[0])} onClick={clearMarks}>{t.markClear}</button>
      </div>
    </Section>
  );
}

/** What to do next while a picture is traced. */
export function TraceNext({ of }: { of: Tracing }) {
  const words = of.fault ? t.nextFault : !of.found ? (of.outline.length ? t.nextLength : t.outlining) : t.nextTake;
  return <div class="next"><b>{w.next}</b><p>{words}</p></div>;
}

/** What tracing puts in place of the Form panel, if it is under way. */
export function underTrace(): Tracing | null {
  const { trace } = now();
  return trace?.open ? trace : null;
}
