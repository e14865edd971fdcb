// The Casting panel, in the order of the work: what to mix and pour, what slip to
// fill and how long it stays, what the mold drinks, what the pot weighs and
// holds, what must be banded and lifted; then the maker's own measurements.
// Cautions stand where the hazard is.
import type { Plan } from "../contract";
import { NumberField, Section } from "../fields";
import { now } from "../state";
import { w } from "../words";
import { Bars } from "./casting/bars";
import { Batches } from "./casting/batches";
import { Cautions, GeneralCautions } from "./casting/cautions";
import { Figs, Glance, More, useRows } from "./casting/figures";
import { Own } from "./casting/own";
import { SlipWeight } from "./casting/slipweight";
import { Trials } from "./casting/trials";
import { LaterCasts, Walls } from "./casting/walls";

export function CastingPanel({ plan }: { plan: Plan }) {
  const { job } = now();
  const rows = useRows(job);
  const of = { rows, casting: plan.casting };
  return (
    <>
      <Glance {...of} keys={["mixPlaster", "mixWater", "minutes", "slipFill", "castsPerDay", "liftFull"]} />
      <GeneralCautions plan={plan} />
      <Section title={w.mix}>
        <Batches plan={plan} />
        <NumberField ask="consistency" label={w.consistency} field="plaster.consistency" value={job.plaster.consistency} set={(j, x) => { j.plaster.consistency = x; }} hint={w.consistencyHint} />
        <Figs {...of} keys={["moldWet", "moldDry", "dryingLeast"]} />
        <More {...of} group="Plaster" but={["moldWet", "moldDry", "dryingLeast"]} />
        <Cautions plan={plan} of={["consistency", "plasterBurn", "setHeat", "flotation", "cottle", "drains", "disposal"]} />
      </Section>
      <Section title={w.castTitle} of={["slip"]}>
        <div class="row">
          {!job.form.inner && <NumberField length ask="wall" label={w.wall} unit="mm" field="clay.wall" value={job.clay.wall} set={(j, x) => { j.clay.wall = x; }} />}
          <SlipWeight />
        </div>
        <Figs {...of} keys={["solidWall", "minutes", "minutesLow", "minutesHigh", "slipFill", "slipTaken", "slipReturned", "levelDrop"]} />
        <Walls casting={plan.casting} wanted={plan.drawing.thickest ? plan.drawing.thickest[2] / 2 : job.clay.wall} faces={!!plan.drawing.thickest} />
        <div class="ask">
          <NumberField label={w.afterMinutes} unit="min" field="casting.minutes" value={job.casting.minutes} set={(j, x) => { j.casting.minutes = x; }} />
          <Figs {...of} keys={["wallAfter"]} />
        </div>
        <Trials />
        <More {...of} group="Slip" but={["slipFill", "slipTaken", "slipReturned", "levelDrop"]} />
        <More {...of} group="Wall" but={["solidWall", "minutes", "minutesLow", "minutesHigh", "wallAfter", "wallMinutes"]} />
        <Cautions plan={plan} of={["slipDensity", "spareRunsDry", "firstCast"]} />
      </Section>
      <Section title={w.laterTitle}>
        <LaterCasts minutes={plan.casting.laterCasts} />
        <Figs {...of} keys={["castsPerDay", "waterPerCast", "castsToHalfRate", "dryingBetween"]} />
        <More {...of} group="The mold's water" but={["castsPerDay", "waterPerCast", "castsToHalfRate", "dryingBetween"]} />
        <Cautions plan={plan} of={["thinMold", "drying"]} />
      </Section>
      <Section title={w.potTitle} of={["cast"]}>
        <Figs {...of} keys={["castWet", "castDry", "castFired", "castGlazed", "capacityFired", "fillFired"]} />
        <More {...of} group="Weights and capacity" but={["castWet", "castDry", "castFired", "castGlazed", "capacityFired", "fillFired"]} />
        <Cautions plan={plan} of={["silicaDust", "plasterCrumbs", "foodGlaze"]} />
      </Section>
      <Section title={w.forceTitle} of={["bands"]}>
        <Figs {...of} keys={["bandForce", "bandsRound", "bandsOver", "liftFull", "liftPart", "liftLimit", "liftingIndex"]} />
        <More {...of} group="Forces" but={["bandForce", "bandsRound", "bandsOver"]} />
        <Cautions plan={plan} of={["bands", "tooHeavy", "lifting"]} />
      </Section>
      <Section title={w.shrinkTitle} of={["shrinkage", "testBar"]}>
        <Bars />
        <More {...of} group="Shrinkage" but={[]} />
        <Cautions plan={plan} of={["shrinkage"]} />
      </Section>
      <Own />
    </>
  );
}
