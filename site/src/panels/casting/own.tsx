// The maker's own measurements and habits: everything beyond what the panel asks
// first, each with its unit and with what stands in its place until measured.
import { useEffect, useState } from "preact/hooks";
import type { CastingSettings, Job } from "../../contract";
import { NumberField } from "../../fields";
import { typed } from "../../numbers";
import { coreOf, now, parse } from "../../state";
import { w } from "../../words";

type Key = { [K in keyof CastingSettings]: CastingSettings[K] extends number ? K : never }[keyof CastingSettings];

const groups: readonly (readonly [string, readonly Key[]])[] = [
  ["clay", ["castMoisture", "lossOnIgnition"]],
  ["mix", ["waste", "bucket", "bucketFill"]],
  ["data", ["publishedWetDensity", "absorption", "settingExpansion"]],
  ["water", ["laterCastSlowdown", "halfRateWater", "dryingRate"]],
  ["pot", ["fillLine", "glaze", "glazeDensity"]],
  ["bands", ["bandTension", "bandSafety"]],
  ["lift", ["reach", "hands", "travel", "twist"]],
];

/** Figures whose 0 says that there is none. */
const orNone = new Set<Key>(["publishedWetDensity", "absorption", "settingExpansion", "fillLine", "glaze", "twist"]);
const lengths = new Set<Key>(["glaze", "fillLine"]);

let known: Job | null = null;

/** A job of which only the form is given, completed by the core: its defaults. */
function useDefaults(): Job | null {
  const [job, setJob] = useState(known);
  useEffect(() => {
    if (known) return;
    void coreOf().ask("read", { kind: "coordinates", text: "0 0\n30 0\n60 50", units: "mm" }).then((a) => {
      const reply = a && parse<{ job: Job }>(a.reply);
      if (reply && !("error" in reply)) setJob(known = reply.job);
    });
  }, []);
  return job;
}

const short = (x: number) => typed(Number(x.toFixed(Math.abs(x) < 0.1 ? 4 : 1)));

export function Own() {
  const { job, faults } = now();
  const defaults = useDefaults();
  const hint = (key: Key) => {
    if (!defaults) return " ";
    const x = defaults.casting[key];
    return w.defaultIs(x === 0 && orNone.has(key) ? w.noneSet : short(x));
  };
  return (
    <details class="rows own" open={faults.some((f) => f.field?.startsWith("casting.")) || undefined}>
      <summary>{w.ownTitle}</summary>
      <p class="hint">{w.ownHint}</p>
      <fieldset>
        <legend>{w.ownGroups["clay"]}</legend>
        <div class="row">
          <NumberField
            label={w.solidsDensity} unit="g/ml" field="clay.solidsDensity" value={job.clay.solidsDensity} set={(j, x) => { j.clay.solidsDensity = x; }}
            hint={defaults ? w.defaultIs(short(defaults.clay.solidsDensity)) : " "}
          />
          {groups[0]![1].map((k) => <One key={k} k={k} hint={hint(k)} />)}
        </div>
      </fieldset>
      {groups.slice(1).map(([g, keys]) => (
        <fieldset key={g}>
          <legend>{w.ownGroups[g]}</legend>
          <div class="row">{keys.map((k) => <One key={k} k={k} hint={hint(k)} />)}</div>
        </fieldset>
      ))}
    </details>
  );
}

function One({ k, hint }: { k: Key; hint: string }) {
  const [label, unit] = w.own[k]!;
  return (
    <NumberField
      label={label} unit={unit} field={`casting.${k}`} length={lengths.has(k)} hint={hint}
      value={Math.round(now().job.casting[k] * 1e4) / 1e4} set={(j, x) => { j.casting[k] = x; }}
    />
  );
}
