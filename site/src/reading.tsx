// What the drawing shows, as tables: the parts and where each stands now, the
// places that are marked, and the wall at even heights. The third view of the
// bench beside the drawing and space, for whoever reads rather than looks.
import type { ComponentChildren } from "preact";
import { apart } from "./apart";
import type { At, Plan, Scheme } from "./contract";
import { ghostOf } from "./look";
import { looked, walled } from "./looked";
import { show, volume, withUnit } from "./numbers";
import { look as lookOf } from "./parts-look";
import { now } from "./state";
import { reference, wallFrom } from "./stretched";
import { pullOf, seat } from "./view";
import { w } from "./words";

const PULLS = ["down", "up", "out"] as const, ROWS = 14;
const mm = (x: number) => withUnit(x, "mm", 2);

function Tabled({ caption, heads, children }: { caption: string; heads: string[]; children: ComponentChildren }) {
  return (
    <table>
      <caption>{caption}</caption>
      <thead><tr>{heads.map((h) => <th key={h} scope="col">{h}</th>)}</tr></thead>
      <tbody>{children}</tbody>
    </table>
  );
}

/** About ROWS of the indices from..to, the ends and every extreme of the radius
 *  among them. */
export function stations(contour: readonly At[], from = 0, to = contour.length - 1): number[] {
  const span = Math.abs(contour[to]![1] - contour[from]![1]) / ROWS, out = [from];
  for (let i = from + 1; i < to; i++) {
    const [r, z] = contour[i]!, [a] = contour[i - 1]!, [b] = contour[i + 1]!, last = contour[out[out.length - 1]!]!;
    const extreme = (r - a) * (b - r) < 0;
    if (extreme || Math.hypot(r - last[0], z - last[1]) >= span) out.push(i);
  }
  return to > from ? [...out, to] : out;
}

export function TableView({ plan, scheme }: { plan: Plan; scheme: Scheme }) {
  return (
    <section class="drawing reading" tabIndex={0} aria-label={w.reading.title}>
      <Parts plan={plan} scheme={scheme} />
      <Places plan={plan} scheme={scheme} />
      <Wall plan={plan} scheme={scheme} />
      {now().planned?.form.inner && (
        <Tabled caption={w.inner} heads={[w.reading.wallHeight, w.reading.radius]}>
          {stations(plan.drawing.inner).map((i) => { const [x, z] = plan.drawing.inner[i]!; return <tr key={i}><th scope="row">{show(z)}</th><td>{show(x, 2)}</td></tr>; })}
        </Tabled>
      )}
    </section>
  );
}

function Parts({ plan, scheme }: { plan: Plan; scheme: Scheme }) {
  const { tab, look } = now(), open = tab === "parts" && look.apart > 0, state = apart(plan, scheme, look), r = w.reading;
  const where = (name: string) => {
    if (state.stuck && state.part?.name === name) return r.held(mm(state.stuck.depth));
    const gone = state.gone.get(name) ?? 0;
    return gone === 0 ? r.closed : gone >= 1 ? r.off : r.moved(withUnit(100 * gone, "%", 0));
  };
  return (
    <Tabled caption={r.parts} heads={[r.part, r.pull, r.from, r.to, r.verdict, ...(open ? [r.where] : [])]}>
      {scheme.parts.map((p) => (
        <tr key={p.name}>
          <th scope="row">{lookOf(p.name).letter}, {w.partName(p.name)}</th>
          <td>{w.apartPulls[PULLS[pullOf(p)]]}</td><td>{show(p.zFrom)}</td><td>{show(p.zTo)}</td><td>{w.verdict[p.verdict]}</td>
          {open && <td>{where(p.name)}</td>}
        </tr>
      ))}
    </Tabled>
  );
}

function Places({ plan, scheme }: { plan: Plan; scheme: Scheme }) {
  const { tab, look, planned } = now(), r = w.reading, mouth = plan.drawing.opening[0];
  const parts = tab === "release" ? [looked(plan, scheme).part].filter((p) => p !== null) : scheme.parts.filter((p) => !p.sector || p.name === "A");
  const which = ghostOf(look, plan), near = tab === "release" && look.near?.of === planned && which !== "none" ? look.near[which].found : null;
  const dimples = planned?.form.section.dimples;
  const span = (a: number, b: number) => (b - a < 0.1 ? show(a) : `${show(a)} – ${show(b)}`);
  const rows: [string, string, string][] = [
    ...scheme.partingHeights.map((z): [string, string, string] => [r.seam, show(z), ""]),
    ...(mouth && plan.drawing.opening.length > 1 ? [[r.trimLine, show(mouth[1]), ""] as [string, string, string]] : []),
    ...(plan.drawing.thickest ? [[w.thickestPlace, show(plan.drawing.thickest[1]), mm(plan.drawing.thickest[2])] as [string, string, string]] : []),
    ...(dimples ? dimples.heights.map((z): [string, string, string] => [w.dimples, show(seat(plan, z)), `${dimples.around} × Ø ${mm(dimples.diameter * plan.scale)}`]) : []),
    ...plan.drawing.natches.map((n): [string, string, string] => [r.natch, show(n.at[1]), r.atAxis(withUnit(n.at[0], "mm"), `${show(n.azimuth, 0)}°`)]),
    ...parts.flatMap((p) => p.catches.map((c): [string, string, string] => [r.catches(w.partName(p.name)), span(c.zFrom, c.zTo), r.deep(mm(c.depth))])),
    ...plan.traps.map((t): [string, string, string] => [r.trap, span(t.zFrom, t.zTo), r.deep(mm(t.depth))]),
    ...plan.flow.air.map((p): [string, string, string] => [r.air, span(p.zFrom, p.zTo), volume(p.volume)]),
    ...plan.flow.slip.map((p): [string, string, string] => [r.slip, span(p.zFrom, p.zTo), volume(p.volume)]),
    ...(near && near.maxChange > 0 ? [[r.ghost, show(near.atZ), mm(near.maxChange)] as [string, string, string]] : []),
  ];
  if (rows.length === 0) return <p>{r.none}</p>;
  return (
    <Tabled caption={r.places} heads={[r.place, r.height, r.measure]}>
      {rows.map(([what, z, measure], i) => <tr key={i}><th scope="row">{what}</th><td>{z}</td><td>{measure}</td></tr>)}
    </Tabled>
  );
}

function Wall({ plan, scheme }: { plan: Plan; scheme: Scheme }) {
  const { tab, look } = now(), r = w.reading;
  const release = tab === "release" ? looked(plan, scheme) : null, wall = release && walled(plan, release);
  const off = release && look.stretch > 1 && !wall!.core ? reference(plan, look.line) : null, contour = wall?.line ?? plan.drawing.contour;
  const first = off ? Math.max(wallFrom(plan), wall!.from) : wall?.from ?? 0, last = wall?.to ?? contour.length - 1;
  return (
    <Tabled caption={r.wall} heads={[r.wallHeight, r.radius, ...(release ? [r.draft(w.apartPulls[PULLS[release.pull]])] : []), ...(off ? [r.offLine] : [])]}>
      {stations(contour, first, last).map((i) => {
        const [x, z] = contour[i]!;
        return (
          <tr key={i}>
            <th scope="row">{show(z)}</th><td>{show(x, 2)}</td>
            {release && <td>{last > first ? `${show(wall!.draft(Math.min(i, last - 1)))}°` : ""}</td>}
            {off && <td>{show(x - off(z), 2)}</td>}
          </tr>
        );
      })}
    </Tabled>
  );
}

interface Figure {
  contour: readonly At[];
  points?: readonly { z: number; r: number }[] | undefined;
  parts?: readonly { id: string; outline: readonly At[] }[] | undefined;
}

/** The outline of a figure of the class, the places it asks about, and the heights of its parts. */
export function FigureTable({ contour, points = [], parts = [] }: Figure) {
  const r = w.reading;
  return (
    <details class="rows">
      <summary>{r.ask}</summary>
      <Tabled caption={r.figure} heads={[r.wallHeight, r.radius, ...(points.length ? [r.place] : [])]}>
        {stations(contour).map((i) => <tr key={i}><th scope="row">{show(contour[i]![1])}</th><td>{show(contour[i]![0])}</td>{points.length > 0 && <td />}</tr>)}
        {points.map((p, i) => <tr key={`p${i}`}><th scope="row">{show(p.z)}</th><td>{show(p.r)}</td><td>{r.point}</td></tr>)}
      </Tabled>
      {parts.length > 0 && (
        <Tabled caption={r.parts} heads={[r.part, r.from, r.to]}>
          {parts.map((p) => {
            const zs = p.outline.map((a) => a[1]);
            return <tr key={p.id}><th scope="row">{p.id.toUpperCase()}</th><td>{show(Math.min(...zs))}</td><td>{show(Math.max(...zs))}</td></tr>;
          })}
        </Tabled>
      )}
    </details>
  );
}
