// The cut across the axis: round, oval, faceted or fluted, with dimples in the
// wall, and a plan of it with the upright seams of the side parts.
import { useState } from "preact/hooks";
import type { Plan, Section as Cut } from "../contract";
import { outline } from "../cross";
import { Check, Choice, NumberField, Section } from "../fields";
import { read, show } from "../numbers";
import { look } from "../parts-look";
import { edit, now, settle } from "../state";
import { chosen } from "../verdict";
import { w } from "../words";

const first: Record<Cut["kind"], Cut> = {
  round: { kind: "round" }, oval: { kind: "oval", ratio: 0.75 },
  polygon: { kind: "polygon", count: 6, rounding: 15 }, flutes: { kind: "flutes", count: 16, depth: 4 },
};
const kinds = Object.keys(first) as Cut["kind"][];

export function CrossSection({ plan }: { plan: Plan }) {
  const { job } = now(), s = job.form.section;
  const pick = (kind: Cut["kind"]) => {
    edit(() => w.changed(w.sectionTitle), "", (j) => {
      j.form.section = { ...first[kind], ...(s.dimples ? { dimples: s.dimples } : {}) };
    });
    settle();
  };
  return (
    <Section title={w.sectionTitle}>
      <div class="cross">
        <Cross plan={plan} />
        <div class="row">
          <Choice label={w.sectionKind} value={s.kind} options={kinds.map((k) => [k, w.sectionKinds[k]] as const)} pick={pick} />
          {s.kind === "oval" && <NumberField label={w.ratio} field="form.section.ratio" value={s.ratio ?? 1} set={(j, x) => { j.form.section.ratio = x; }} />}
          {(s.kind === "polygon" || s.kind === "flutes") && (
            <NumberField label={s.kind === "polygon" ? w.faces : w.flutes} field="form.section.count" value={s.count ?? 6} set={(j, x) => { j.form.section.count = Math.round(x); }} />
          )}
          {s.kind === "polygon" && <NumberField label={w.rounding} unit={w.ofFace} field="form.section.rounding" value={s.rounding ?? 0} set={(j, x) => { j.form.section.rounding = x; }} />}
          {s.kind === "flutes" && <NumberField label={w.depth} unit={w.ofRadius} field="form.section.depth" value={s.depth ?? 0} set={(j, x) => { j.form.section.depth = x; }} />}
        </div>
      </div>
      {s.kind !== "round" && <p class="hint">{w.sectionHint}</p>}
      <Dimples />
    </Section>
  );
}

/** Seen from above: the pot's outline at its widest, the upright seams, and each
 *  side part's letter and pull. */
function Cross({ plan }: { plan: Plan }) {
  const job = now().planned ?? now().job, scheme = chosen(plan), s = job.form.section;
  const sides = scheme.parts.filter((p) => p.sector), size = 168, mid = size / 2, R = 46, far = 74;
  const at = (deg: number, r: number): [number, number] => [mid + r * Math.cos((deg * Math.PI) / 180), mid - r * Math.sin((deg * Math.PI) / 180)];
  const d = outline(s, scheme.turn).map(([x, y], i) => `${i ? "L" : "M"}${(mid + R * x).toFixed(1)} ${(mid - R * y).toFixed(1)}`).join("") + "Z";
  const turned = s.kind !== "round" && sides.length > 0;
  const words = sides.length ? w.crossSeams(sides.length, `${show(turned ? scheme.turn : 0, 0)}°`) : w.crossNoSeams;
  return (
    <figure>
      <svg width={size} height={size} viewBox={`0 0 ${size} ${size}`} role="img" aria-label={w.crossAlt(w.sectionKinds[s.kind], words)}>
        {sides.length === 0 && <circle class="cross-block" cx={mid} cy={mid} r={far} />}
        {sides.map((p) => {
          const [a, b] = p.sector!, [x1, y1] = at(a, far), [x2, y2] = at(b, far);
          return <path key={p.name} d={`M${mid} ${mid}L${x1} ${y1}A${far} ${far} 0 ${b - a > 180 ? 1 : 0} 0 ${x2} ${y2}Z`} fill={look(p.name).colour} fill-opacity={0.18} class="edge" />;
        })}
        <path d={d} class="cross-pot" />
        {sides.map((p) => {
          const [a, b] = p.sector!, m = (a + b) / 2, [x, y] = at(m, 61);
          return (
            <g key={p.name}>
              <rect class="letter" x={x - 11} y={y - 11} width={22} height={22} rx={11} stroke={look(p.name).colour} />
              <text class="letter" x={x} y={y + 4.5} text-anchor="middle">{p.name}</text>
            </g>
          );
        })}
      </svg>
      {turned && <figcaption class="hint">{w.crossTurn(`${show(scheme.turn, 0)}°`)}</figcaption>}
    </figure>
  );
}

function Dimples() {
  const { job } = now(), d = job.form.section.dimples ?? null;
  const turn = (on: boolean) => {
    edit(() => w.changed(w.dimples), "", (j) => {
      const zs = j.form.outer.map((n) => n.z), mid = Math.round((Math.min(...zs) + Math.max(...zs)) / 2);
      if (on) j.form.section.dimples = { around: 8, heights: [mid], diameter: 8, depth: 1 };
      else delete j.form.section.dimples;
    });
    settle();
  };
  return (
    <>
      <Check label={w.dimples} value={d !== null} pick={turn} />
      {d && (
        <div class="row">
          <NumberField label={w.dimplesAround} field="form.section.dimples.around" value={d.around} set={(j, x) => { j.form.section.dimples!.around = Math.round(x); }} />
          <Rows heights={d.heights} />
          <NumberField length label={w.dimplesAcross} unit="mm" field="form.section.dimples.diameter" value={d.diameter} set={(j, x) => { j.form.section.dimples!.diameter = x; }} />
          <NumberField length label={w.depth} unit="mm" field="form.section.dimples.depth" value={d.depth} set={(j, x) => { j.form.section.dimples!.depth = x; }} />
        </div>
      )}
    </>
  );
}

/** Heights of the rows of dimples, typed with spaces between them. */
function Rows({ heights }: { heights: number[] }) {
  const [draft, setDraft] = useState<string | null>(null);
  const parse = (t: string) => t.trim().split(/[\s;]+/).map((x) => read(x));
  const bad = draft !== null && parse(draft).some((x) => x === null);
  return (
    <div class="field">
      <label for="dimple-rows">{w.dimplesRows}</label>
      <input
        id="dimple-rows" type="text" inputMode="decimal" autocomplete="off" size={12} value={draft ?? heights.map((z) => show(z, Number.isInteger(z) ? 0 : 1)).join(" ")}
        aria-invalid={bad ? "true" : undefined} aria-describedby={bad ? "dimple-rows-m" : undefined}
        onInput={(e) => {
          const text = e.currentTarget.value, zs = parse(text);
          setDraft(text);
          if (zs.every((x) => x !== null)) edit(() => w.changed(w.dimples), "dimples", (j) => { j.form.section.dimples!.heights = zs as number[]; });
        }}
        onBlur={() => { if (!bad) setDraft(null); settle(); }}
      />
      {bad && <span class="bad" id="dimple-rows-m">{w.dimplesRowsBad}</span>}
    </div>
  );
}
