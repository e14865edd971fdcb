// The Tooling panel: the printed pieces by the part they serve, with their fit to
// the bed and a download each; the files for all of them; the plaster parts and
// the cast to look at; and the settings of printer, block and kit.
import { useState } from "preact/hooks";
import type { Plan } from "../contract";
import { Section } from "../fields";
import { Term } from "../help/term";
import type { TermId } from "../help/terms";
import { Icon } from "../icons";
import { show } from "../numbers";
import { now } from "../state";
import { w } from "../words";
import { Bodies } from "./tooling/bodies";
import { getAll, getPiece } from "./tooling/download";
import { Pieces } from "./tooling/pieces";
import { BlockSettings, KitSettings, PrinterSettings } from "./tooling/settings";

export function ToolingPanel({ plan }: { plan: Plan }) {
  const [busy, setBusy] = useState(false);
  const run = (work: () => Promise<void>) => {
    setBusy(true);
    void work().finally(() => setBusy(false));
  };
  return (
    <>
      <Section title={w.printsTitle}>
        <p class="hint">{plan.prints.length === 0 ? w.noPrints : w.printsHint}</p>
        <Bed />
        <div class="actions">
          <button type="button" class="primary" disabled={busy || plan.prints.length === 0} onClick={() => run(() => getAll("prints", "3mf"))}>{w.allPrints}</button>
          <button type="button" disabled={busy} onClick={() => run(() => getAll("all", "zip"))}>{w.everything}</button>
          <span class="hint" role="status">{busy ? w.making3d : ""}</span>
        </div>
        <p class="hint">{w.everythingHint}</p>
        {plan.prints.length > 0 && <Kinds plan={plan} />}
        <Pieces plan={plan} busy={busy} get={(i) => run(() => getPiece("prints", i))} />
        <ul class="cautions" aria-label={w.cautionsHere}>
          {w.printCautions.map((c) => <li key={c}><Icon name="caution" /><span>{c}</span></li>)}
        </ul>
      </Section>
      <Section title={w.bodiesTitle}>
        <Bodies plan={plan} busy={busy} get={(what, i) => run(() => getPiece(what, i))} />
      </Section>
      <Section title={w.printerTitle}><PrinterSettings /></Section>
      <Section title={w.kitTitle}><KitSettings /></Section>
      <Section title={w.blockTitle} of={["block"]}><BlockSettings /></Section>
    </>
  );
}

/** For which bed the pieces are made, and the way to where it is told. */
function Bed() {
  const [x, y, z] = now().job.printer.bed.map((mm) => show(mm, Number.isInteger(mm) ? 0 : 1));
  const go = () => {
    const first = document.querySelector<HTMLInputElement>("#printer input");
    first?.scrollIntoView({ block: "center" });
    first?.select();
  };
  return <div class="actions"><span>{w.bedLine(`${x} × ${y} × ${z}\u00a0mm`)}</span><button type="button" class="small" aria-label={w.bedChangeAsk} onClick={go}>{w.bedChange}</button></div>;
}

const words: Record<string, TermId[]> = { positive: ["positive", "plate"], stave: ["stave"], collar: ["collar"], tray: ["tray"] };

/** What the kinds of pieces are called, to be asked. */
function Kinds({ plan }: { plan: Plan }) {
  const kinds = [...new Set(plan.prints.map((p) => p.kind))].flatMap((k) => words[k] ?? []);
  return <p class="hint kinds">{w.help.kinds} {kinds.map((id) => <Term key={id} of={id} />)}</p>;
}
