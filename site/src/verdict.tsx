// The verdict line above the drawing and the next step below it, in the plan's
// own words.
import type { Plan, Robust, Scheme } from "./contract";
import { Icon } from "./icons";
import { show, unbroken, withUnit } from "./numbers";
import { mayPass, now, reveal, set, steps, type Tab, tryAgain, undo } from "./state";
import { save } from "./files";
import { useRested } from "./rested";
import { w } from "./words";

export const chosen = (plan: Plan): Scheme => plan.schemes.find((s) => s.id === plan.chosen) ?? plan.schemes[0]!;

export function VerdictLine() {
  const { plan, faults: [fault], job, answered, ready } = now();
  const s = plan && chosen(plan);
  const said = useRested(fault ? `${w.cannotPlan} ${fault.message}` : plan ? unbroken(plan.verdict) : "");
  return (
    <div class={`verdict ${fault ? "fault" : s?.verdict ?? "none"}`} aria-busy={answered !== job}>
      {(fault || s) && <span class="sign"><Icon name={fault ? "catches" : s!.verdict} /></span>}
      <div class="says">
        <p>
          {fault ? <><b>{w.cannotPlan}</b> {unbroken(fault.message)} {plan && w.stillShown}</>
            : plan ? unbroken(plan.verdict) : w.starting}
        </p>
        <span class="away" role="status">{said}</span>
        {!fault && plan && (spares(plan.robust) || s?.verdict !== "catches") && <span class="robust">{robust(plan)}</span>}
      </div>
      {ready && mayPass(fault) && <button type="button" onClick={tryAgain}>{w.tryAgain}</button>}
    </div>
  );
}

/** Whether it is another scheme that might do. */
const spares = ({ reason }: Robust) => reason === "fewer" || reason === "other";

/** By how much the radii may be wrong before the verdict changes, and how. */
function robust(plan: Plan): string {
  const { radius, reason, scheme, zFrom, zTo } = plan.robust;
  if (radius < 0) return w.robustAny;
  const other = plan.schemes.find((s) => s.id === scheme)?.name ?? scheme;
  const where = zTo - zFrom < 0.1 ? w.atHeight(withUnit(zFrom, "mm")) : w.betweenHeights(show(zFrom), withUnit(zTo, "mm"));
  const says = radius < 0.005 ? w.robustNone : w.robust, mm = withUnit(radius, "mm", 2);
  return spares(plan.robust) ? says.fewer(other, mm) : reason === "catch" ? says.catches(where, mm) : says.rubs(where, mm);
}

export function NextStep() {
  const { plan, faults: [fault], tab, saved, svg } = now();
  if (!plan || mayPass(fault)) return null;
  const s = chosen(plan);
  let words: string, to: Tab | null;
  if (svg && tab === "form") [words, to] = [svg.units ? w.trace.svgUse : w.trace.svgAsk, "form"];
  else if (fault) [words, to] = [w.nextFault, "form"];
  else if (s.verdict === "catches") [words, to] = [w.nextCatch, "release"];
  else if (s.verdict === "rubs" && tab !== "release") [words, to] = [w.nextRub, "release"];
  else if (tab === "tooling") [words, to] = [w.nextTooling, "casting"];
  else if (tab === "casting") [words, to] = [w.nextCasting, "sheets"];
  else if (tab === "sheets") [words, to] = [w.nextSheets, null];
  else [words, to] = [w.nextClear, "tooling"];
  if (to === null && saved !== null) return null;
  return (
    <div class="next">
      <b>{w.next}</b>
      <p>{words}</p>
      {fault && !svg && steps().back !== null && <button type="button" onClick={undo}><Icon name="undo" />{w.undo}</button>}
      {to !== tab && (
        <button type="button" class="primary" onClick={() => { if (!to) return save(); set({ tab: to }); reveal(".panels"); }}>
          {to ? w.go(w.tabs[to]) : w.save}<Icon name={to ? "next" : "save"} />
        </button>
      )}
    </div>
  );
}
