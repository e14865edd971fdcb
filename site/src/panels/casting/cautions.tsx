// Cautions beside the work they belong to, in the core's words. Those that every
// mold calls for stand quietly; those that this mold's own figures call for stand
// out. A caution that no place asks for is shown at the top, never dropped.
import type { Plan } from "../../contract";
import { Term } from "../../help/term";
import { Icon } from "../../icons";
import { unbroken } from "../../numbers";
import { w } from "../../words";

/** Codes that are only told when a figure calls for them. */
const called = new Set(["consistency", "slipDensity", "shrinkage", "tooHeavy", "thinMold", "spareRunsDry"]);

/** Codes with a place of their own in the panel. */
const placed = new Set([
  ...called, "plasterBurn", "setHeat", "flotation", "cottle", "drains", "disposal", "firstCast", "drying",
  "silicaDust", "plasterCrumbs", "foodGlaze", "bands", "lifting",
]);

export function Cautions({ plan, of }: { plan: Plan; of: string[] }) {
  const list = plan.casting.cautions.filter((c) => of.includes(c.code));
  if (list.length === 0) return null;
  return (
    <ul class="cautions" aria-label={w.cautionsHere}>
      {list.map((c) => <li key={c.code} class={called.has(c.code) ? "called" : ""}><Icon name="caution" /><span>{unbroken(c.text)}{c.code === "flotation" && <>{"\u00a0"}<Term of="flotation" mark /></>}</span></li>)}
    </ul>
  );
}

/** What the plan warns of beside casting: flow, traps, fit. */
export function GeneralCautions({ plan }: { plan: Plan }) {
  const own = new Set(plan.casting.cautions.filter((c) => placed.has(c.code)).map((c) => c.text));
  const list = plan.cautions.filter((t) => !own.has(t));
  if (list.length === 0) return null;
  return (
    <ul class="cautions" aria-label={w.cautionsHere}>
      {list.map((t) => <li key={t} class="called"><Icon name="caution" /><span>{unbroken(t)}</span></li>)}
    </ul>
  );
}
