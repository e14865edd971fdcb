// The box for rows of coordinates. It keeps what was typed until it reads well,
// asks for the unit, and lists every bad row by its line with the remedy.
import { readRows } from "../files";
import { Choice } from "../fields";
import { useId } from "../ids";
import { now, set } from "../state";
import { w } from "../words";

export function Rows() {
  const { rows } = now();
  const id = useId();
  const put = (patch: Partial<typeof rows>) => set({ rows: { ...now().rows, ...patch } });
  const use = async () => {
    const { text, units, across } = now().rows; // a fast hand is ahead of what is drawn
    if (!units) return put({ faults: [{ code: "unit", message: w.rowsNeedUnit }] });
    const faults = await readRows(text, units, across);
    if (faults.length) put({ faults });
    else put({ text: "", faults: [], open: false });
  };
  return (
    <details class="rows" open={rows.open} onToggle={(e) => { if (e.currentTarget.open !== now().rows.open) put({ open: e.currentTarget.open }); }}>
      <summary>{w.rowsTitle}</summary>
      <p class="hint" id={id + "h"}>{w.rowsHint}</p>
      <textarea
        id={id} rows={8} spellcheck={false} aria-label={w.rowsTitle} aria-describedby={`${id}h ${id}f`}
        aria-invalid={rows.faults.length > 0} value={rows.text} placeholder={"0  4\n30  4\n48  60\n40  120"}
        onInput={(e) => put({ text: e.currentTarget.value })}
      />
      <div class="row">
        <Choice label={w.rowsUnits} value={rows.units} options={[["", w.rowsAsk], ["mm", "mm"], ["cm", "cm"], ["in", "in"]]} pick={(units) => put({ units, faults: [] })} />
        <Choice label={w.rowsAcross} value={rows.across} options={[["radius", w.acrossRadius], ["diameter", w.acrossDiameter]]} pick={(across) => put({ across })} />
      </div>
      <ul class="faults" id={id + "f"} role="alert">
        {rows.faults.map((f, i) => <li key={i}>{f.line && !f.message.startsWith(w.atLine(f.line)) ? <b>{w.atLine(f.line)}. </b> : null}{f.message}</li>)}
      </ul>
      <button type="button" class="primary" disabled={!rows.text.trim()} onClick={() => void use()}>{w.rowsUse}</button>
    </details>
  );
}
