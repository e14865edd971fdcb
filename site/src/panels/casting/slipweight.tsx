// The weight of slip as a potter weighs it: a litre in grams, an imperial pint in
// ounces, or as density. The job holds the density.
import { useState } from "preact/hooks";
import { Choice, NumberField } from "../../fields";
import { now } from "../../state";
import { w } from "../../words";

type Way = "ml" | "litre" | "pint";

/** What a density of 1 g/ml weighs: an imperial pint of water weighs 20 oz, which
 *  is how pint weights are read (common practice, no source). */
const factor: Record<Way, number> = { ml: 1, litre: 1000, pint: 20 };

let kept: Way = "litre";

export function SlipWeight() {
  const [way, setWay] = useState(kept);
  const k = factor[way];
  return (
    <>
      <NumberField
        key={way} label={w.slipDensity} unit={w.slipUnits[way]} field="clay.slipDensity"
        value={now().job.clay.slipDensity * k} set={(j, x) => { j.clay.slipDensity = Math.round((x / k) * 1e6) / 1e6; }}
      />
      <Choice label={w.slipIn} value={way} options={(Object.keys(factor) as Way[]).map((u) => [u, w.slipUnits[u]] as const)} pick={(u) => setWay(kept = u)} />
    </>
  );
}
