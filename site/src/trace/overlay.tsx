// What is drawn over the picture, in its own pixels: lines keep their width on
// the screen, and each is edged dark and light so that it shows on any picture.
import { boxOf } from "./touch";
import type { Place, Tracing } from "./tracing";

interface Props { t: Tracing; k: number; stroke: Place[]; corner: Place | null; cross: Place | null }

const line = (p: readonly Place[], closed = false) => p.map(([x, y], i) => `${i ? "L" : "M"}${x} ${y}`).join("") + (closed && p.length ? "Z" : "");

export function Overlay({ t, k, stroke, corner, cross }: Props) {
  const { marks: m, opened: { width, height }, found } = t;
  const crop = t.tool === "crop" && stroke.length > 1 ? boxOf(stroke[0]!, stroke.at(-1)!) : m.crop;
  const wired = m.wire.length > 1;
  const px = (n: number) => n / k;
  const paint = (points: readonly Place[], radius: number, kind: string, key: number | string) => (points.length > 1
    ? <path key={key} class={`paint ${kind}`} d={line(points)} stroke-width={2 * radius} />
    : <circle key={key} class={`paint-dot ${kind}`} cx={points[0]?.[0]} cy={points[0]?.[1]} r={radius} />);
  return (
    <g class="overlay">
      {crop && <path class="cropped" fill-rule="evenodd" d={`M0 0H${width}V${height}H0ZM${crop[0]} ${crop[1]}h${crop[2]}v${crop[3]}h${-crop[2]}Z`} />}
      {m.strokes.map((s, i) => paint(s.points, s.radius, s.kind, i))}
      {(t.tool === "away" || t.tool === "back") && stroke.length > 0 && paint(stroke, (t.brush / 100) * width, t.tool === "away" ? "exclude" : "include", "now")}
      <Both class="found" d={line(t.outline, !wired || m.around)} />
      {found && <Both class="found-axis" d={line([[found.axis[0], found.axis[1]], [found.axis[2], found.axis[3]]])} />}
      {m.axis.length === 2 && !found && <Both class="found-axis" d={line(m.axis)} />}
      {m.bar.length === 2 && <Both class="bar" d={line(m.bar)} />}
      {[...m.wire, ...m.axis, ...m.bar, ...(corner ? [corner] : []), ...(m.point ? [m.point] : [])].map(([x, y], i) => (
        <circle key={i} class="set" cx={x} cy={y} r={px(5)} />
      ))}
      {cross && <Both class="cross-hair" d={`M${cross[0] - px(14)} ${cross[1]}h${px(28)}M${cross[0]} ${cross[1] - px(14)}v${px(28)}`} />}
    </g>
  );
}

function Both({ d, class: name }: { d: string; class: string }) {
  return <><path class="under" d={d} /><path class={name} d={d} /></>;
}
