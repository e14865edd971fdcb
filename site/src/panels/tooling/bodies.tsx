// The plaster parts and the cast as meshes, where they stand in the closed mold.
import type { Plan } from "../../contract";
import { mass, volume } from "../../numbers";
import { chosen } from "../../verdict";
import { w } from "../../words";
import { Tag } from "../parts";
import type { What } from "./download";

export function Bodies({ plan, busy, get }: { plan: Plan; busy: boolean; get: (what: What, i: number) => void }) {
  const row = (name: string, figure: string, what: What, i: number, tag?: string) => (
    <li key={name}>
      <div class="what"><b>{tag && <Tag name={tag} />}{name}</b></div>
      <span class="num">{figure}</span>
      <button type="button" class="small" disabled={busy} aria-label={w.stlOf(name)} onClick={() => get(what, i)}>{w.stl}</button>
    </li>
  );
  return (
    <div class="kit">
      <p class="hint">{w.bodiesHint}</p>
      <ul>
        {chosen(plan).parts.map((p, i) => row(w.partName(p.name), w.dryMass(mass(p.dry)), "plaster", i, p.name))}
        {row(w.castName, volume(plan.casting["castVolume"] as number), "cast", 0)}
      </ul>
    </div>
  );
}
