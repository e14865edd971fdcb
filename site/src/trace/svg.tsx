// A drawing whose lines are offered as pictures of the pots they would make. The
// unit is asked for; where the axis lies is found unless it is told. What the
// core cannot read as a profile says why.
import type { Fault, Job } from "../contract";
import { Choice, Section } from "../fields";
import { withUnit } from "../numbers";
import { Silhouette } from "../shelf";
import { coreOf, edit, faults, now, parse, say, set, settle } from "../state";
import { tracing as t, w } from "../words";
import type { From } from "../words/from";
import { Given } from "./given";

const SHOWN = 24;

interface Line { index: number; id: string; line: number; width: number; height: number; closed: boolean; fault?: string }
interface Read { job: Job | null; why: string }
export interface Svg {
  text: string; from: From; units: string; axis: number | null; top: string;
  lines: Line[]; more: number; pick: number | null; read: Record<number, Read>; fault: Fault | null;
}

let newest = 0;
const put = (p: Partial<Svg>) => { const s = now().svg; if (s) set({ svg: { ...s, ...p } }); };

/** Offers the lines of a drawing; one that does not read is told, and nothing changes. */
export async function openSvg(text: string, from: From): Promise<void> {
  const lines = await list(text, "mm");
  if (!Array.isArray(lines)) return say(w.notOpened(from, lines.message));
  set({ tab: "form", toast: null, svg: { text, from, units: "", axis: null, top: "auto", lines: [], more: 0, pick: null, read: {}, fault: null } });
  await refresh();
}

async function list(text: string, units: string): Promise<Line[] | Fault> {
  const a = await coreOf().ask("paths", { text, units });
  if (!a) return { code: "stopped", message: "" };
  const reply = parse<{ paths: Line[] }>(a.reply);
  return "error" in reply ? faults(reply)[0]! : reply.paths;
}

/** Reads the lines anew, the largest first, after a change of unit, axis or top. */
async function refresh(): Promise<void> {
  const mine = ++newest, s = now().svg!, units = s.units || "mm";
  const all = await list(s.text, units);
  if (mine !== newest || !now().svg) return;
  if (!Array.isArray(all)) return put({ fault: all });
  const lines = [...all].sort((a, b) => Math.hypot(b.width, b.height) - Math.hypot(a.width, a.height)).slice(0, SHOWN);
  put({ lines, more: all.length - lines.length, fault: null });
  const got: Record<number, Read> = {};
  for (const l of lines) {
    const a = await coreOf().ask("read", { kind: "svg", text: s.text, units, path: l.index, top: s.top, ...(s.axis === null ? {} : { axis: s.axis }) });
    if (!a || mine !== newest || !now().svg) return;
    const reply = parse<{ job: Job }>(a.reply);
    got[l.index] = "error" in reply ? { job: null, why: reply.error.message } : { job: reply.job, why: "" };
    const good = lines.filter((x) => got[x.index]?.job);
    put({ read: { ...got }, pick: now().svg!.pick ?? good[0]?.index ?? null });
  }
}

/** The language has changed: why a line is no profile is asked anew. */
export function inLanguage(): void { if (now().svg) void refresh(); }

function ask(p: Partial<Svg>): void { put(p); void refresh(); }

function take(): void {
  const s = now().svg!, form = s.pick === null ? null : s.read[s.pick]?.job?.form;
  if (!form || !s.units) return;
  const words = () => t.svgStep(s.from);
  edit(words, "", (j) => {
    j.form.outer = form.outer;
    delete j.form.traced;
    j.mold.partingHeights = null;
  });
  settle();
  set({ node: null, svg: null });
  say(words(), true);
}

export function SvgPanel({ of: s }: { of: Svg }) {
  const units = Object.entries(t.svgUnit).map(([k, v]) => [k, v] as const);
  const picked = s.pick === null ? null : s.read[s.pick];
  return (
    <Section title={t.svgTitle}>
      <p class="hint">{t.svgFrom(s.from)}</p>
      <ul class="svg-lines" role="radiogroup" aria-label={t.svgTitle}>
        {s.lines.map((l, i) => {
          const r = s.read[l.index], job = r?.job;
          const tall = job ? Math.max(...job.form.outer.map((n) => n.z)) : 1, wide = job ? 2 * Math.max(...job.form.outer.map((n) => n.r)) : 1;
          return (
            <li key={l.index}>
              <label>
                <input type="radio" name="svg-line" checked={s.pick === l.index} disabled={!job} onChange={() => put({ pick: l.index })} />
                <span class="stand">{job && <Silhouette job={job} k={Math.min(72 / tall, 96 / wide)} />}</span>
                <b>{t.svgPath(i + 1, l.id)}</b>
                <span class="hint">{s.units ? t.svgSize(withUnit(l.width, "mm"), withUnit(l.height, "mm")) : ""} {r && !job ? t.svgNot(r.why) : ""}</span>
              </label>
            </li>
          );
        })}
      </ul>
      {s.more > 0 && <p class="hint">{t.svgMore(s.more)}</p>}
      <div class="row">
        <Choice label={t.svgUnits} value={s.units} options={[["", t.svgUnitsAsk], ...units]} pick={(u) => ask({ units: u })} />
        <Choice label={t.top} value={s.top} options={Object.entries(t.tops)} pick={(top) => ask({ top })} />
        <Given label={t.svgAxis} unit="mm" empty={t.svgAxisEmpty} value={s.axis} put={(axis) => ask({ axis })} />
      </div>
      <p class="hint">{t.svgUnitHint} {t.svgAxisHint}</p>
      {s.fault && <p class="bad">{s.fault.message}</p>}
      {!s.units && <p>{t.svgAsk}</p>}
      <div class="actions">
        <button type="button" class="primary" disabled={!s.units || !picked?.job} onClick={take}>{t.svgUse}</button>
        <button type="button" onClick={() => { newest++; set({ svg: null }); }}>{t.svgLeave}</button>
      </div>
    </Section>
  );
}
