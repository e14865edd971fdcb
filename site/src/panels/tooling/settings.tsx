// Settings that decide the shape of the kit: the printer, the plaster block, and
// what the mold has beside its cavity.
import { Check, Choice, NumberField } from "../../fields";
import { edit, now, settle } from "../../state";
import type { Job } from "../../contract";
import { following, w } from "../../words";

function change(label: string, set: (j: Job) => void): void {
  const of = following(label);
  edit(() => w.changed(of()), "", set);
  settle();
}

export function PrinterSettings() {
  const { printer } = now().job;
  return (
    <div class="row" id="printer">
      {(["x", "y", "z"] as const).map((a, i) => (
        <NumberField key={a} length label={w.bedAxis(a)} unit="mm" field={`printer.bed[${i}]`} value={printer.bed[i]!} set={(j, x) => { j.printer.bed[i] = x; }} />
      ))}
      <NumberField length label={w.layer} unit="mm" field="printer.layer" value={printer.layer} set={(j, x) => { j.printer.layer = x; }} />
      <NumberField length label={w.nozzle} unit="mm" field="printer.nozzle" value={printer.nozzle} set={(j, x) => { j.printer.nozzle = x; }} />
      <NumberField length ask="clearance" label={w.clearance} unit="mm" field="printer.clearance" value={printer.clearance} set={(j, x) => { j.printer.clearance = x; }} />
      <NumberField length label={w.shell} unit="mm" field="printer.shell" value={printer.shell} set={(j, x) => { j.printer.shell = x; }} />
      <Check label={w.solidPositive} hint={w.solidHint} value={printer.solid} pick={(v) => change(w.solidPositive, (j) => { j.printer.solid = v; })} />
    </div>
  );
}

export function KitSettings() {
  const { job } = now();
  const { mold } = job;
  return (
    <div class="row">
      <Choice
        ask="stave" label={w.staves} value={String(mold.staves)} options={(["1", "2", "3", "4"] as const).map((n) => [n, n] as const)}
        pick={(v) => change(w.staves, (j) => { j.mold.staves = Number(v); })}
      />
      <p class="hint">{w.stavesHint}</p>
      <Check ask="spare" label={w.spareOn} hint={w.spareHint} value={mold.spare !== null} pick={(v) => change(w.spareOn, (j) => { j.mold.spare = v ? { height: 20 } : null; })} />
      {mold.spare && <NumberField length label={w.spareHeight} unit="mm" field="mold.spare.height" value={mold.spare.height} set={(j, x) => { j.mold.spare = { ...j.mold.spare, height: x }; }} />}
      {mold.spare && <Check ask="plug" label={w.spareFlared} hint={w.spareFlaredHint} value={mold.spare.flared === true} pick={(v) => change(w.spareFlared, (j) => { j.mold.spare = { height: j.mold.spare!.height, ...(v && { flared: true }) }; })} />}
      <Check ask="natch" label={w.natches} hint={w.natchesHint} value={mold.natches} pick={(v) => change(w.natches, (j) => { j.mold.natches = v; })} />
      <Check ask="strap" label={w.strapGrooves} hint={w.strapHint} value={mold.strapGrooves} pick={(v) => change(w.strapGrooves, (j) => { j.mold.strapGrooves = v; })} />
      <NumberField
        length ask="fillHole" label={w.fillHole} unit="mm" field="mold.fillHole" value={mold.fillHole}
        empty={{ words: w.ifNeeded, set: (j) => { j.mold.fillHole = null; } }} set={(j, x) => { j.mold.fillHole = x; }}
      />
      <NumberField
        length ask="drainHole" label={w.drainHole} unit="mm" field="mold.drainHole" value={mold.drainHole}
        empty={{ words: w.none, set: (j) => { j.mold.drainHole = null; } }} set={(j, x) => { j.mold.drainHole = x; }}
      />
    </div>
  );
}

export function BlockSettings() {
  const { plaster } = now().job;
  return (
    <div class="row">
      <NumberField length label={w.plasterWall} unit="mm" field="plaster.wall" value={plaster.wall} set={(j, x) => { j.plaster.wall = x; }} />
      <NumberField length label={w.plasterBase} unit="mm" field="plaster.base" value={plaster.base} set={(j, x) => { j.plaster.base = x; }} />
      <Choice
        label={w.outside} value={plaster.outside} options={[["round", w.outsideRound], ["straight", w.outsideStraight]]}
        pick={(v) => change(w.outside, (j) => { j.plaster.outside = v; })}
      />
      <p class="hint">{w.outsideHint}</p>
    </div>
  );
}
