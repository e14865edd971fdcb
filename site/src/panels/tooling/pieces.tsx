// The printed pieces, grouped by the plaster part they serve. A small picture
// shows each footprint on the bed; the words beside it say the same.
import type { Plan, Print } from "../../contract";
import { Icon } from "../../icons";
import { mass, show, withUnit } from "../../numbers";
import { now } from "../../state";
import { w } from "../../words";
import { Tag } from "../parts";

/** Steeper than this a print sags without supports (common practice, no source). */
const STEEP = 45;

export const dims = (s: readonly number[]) => s.map((x) => show(x, 0)).join(" × ") + "\u00a0mm";

/** A tray that cannot be made has no mesh, and no place among the files. */
const made = (p: Print) => p.size[0] > 0;

interface Props { plan: Plan; busy: boolean; get: (i: number) => void }

export function Pieces({ plan, busy, get }: Props) {
  const parts = [...new Set(plan.prints.map((p) => p.part))];
  return (
    <>
      {parts.map((part) => (
        <div key={part} class="kit">
          <h4><Tag name={part} />{w.forPart(part)}</h4>
          <ul>
            {plan.prints.map((p, i) => p.part === part && (
              <li key={p.name}>
                <Footprint p={p} />
                <div class="what">
                  <b>{p.label}</b>
                  <span class={p.fitsBed ? "" : "warn"}>{dims(p.size)}, {p.fitsBed ? w.fits : <><Icon name="catches" />{w.fitsNot}</>}</span>
                  <span class="hint">{about(p)}</span>
                  {p.verdict !== "clear" && <span class={`badge ${p.verdict}`}><Icon name={p.verdict} />{w.verdict[p.verdict]}</span>}
                  {p.note && <span class={p.fitsBed ? "hint" : "warn"}>{p.note}</span>}
                </div>
                <button type="button" class="small" disabled={busy || !made(p)} aria-label={w.stlOf(p.label)} onClick={() => get(plan.prints.slice(0, i).filter(made).length)}>{w.stl}</button>
              </li>
            ))}
          </ul>
        </div>
      ))}
    </>
  );
}

function about(p: Print): string {
  const over = p.overhang < 0.5 ? w.noOverhang : (p.overhang > STEEP + 0.5 ? w.overhangHigh : w.overhang)(`${show(p.overhang, 0)}°`);
  return w.weighs(mass(p.mass), withUnit(p.filament, "m", 0), over);
}

/** The room that a piece takes on the bed. */
function Footprint({ p }: { p: Print }) {
  const [bx, by] = now().job.printer.bed;
  const k = 40 / Math.max(bx, by, p.size[0], p.size[1]);
  const rect = (x: number, y: number) => ({ x: 22 - (x * k) / 2, y: 22 - (y * k) / 2, width: x * k, height: y * k });
  return (
    <svg class={`footprint ${p.fitsBed ? "" : "over"}`} viewBox="0 0 44 44" width="44" height="44" role="img" aria-label={w.bedPicture(p.fitsBed ? w.fits : w.fitsNot)}>
      <rect class="foot" {...rect(p.size[0], p.size[1])} />
      <rect class="bed" {...rect(bx, by)} rx="2" />
    </svg>
  );
}
