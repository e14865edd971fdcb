// The picture on the bench, in place of the drawing: the outline found, the
// axis, and what the user draws. One pointer works the chosen tool, two zoom and
// pan. Everything that can be dragged can be done by touching points, and, with
// a cross that the arrow keys move, by keys.
import { useRef, useState } from "preact/hooks";
import { useHands, whole, type Zoom, zoomKey } from "../editor/zoom";
import { ZoomTools } from "../editor/zoomtools";
import { useMeasured } from "../measured";
import { now } from "../state";
import { w } from "../words";
import { Overlay } from "./overlay";
import { boxOf, touch } from "./touch";
import { mark, type Place, type Tracing } from "./tracing";

export function PictureBench({ t }: { t: Tracing }) {
  const box = useRef<HTMLDivElement>(null);
  const size = useMeasured(box);
  const [zoom, setZoom] = useState<Zoom>(whole);
  const near = useRef(zoom);
  near.current = zoom;
  const [cross, setCross] = useState<Place | null>(null);
  /** The first corner of a crop, set by a touch or by keys. */
  const [corner, setCorner] = useState<Place | null>(null);
  const [stroke, setStroke] = useState<Place[]>([]);
  const drawing = useRef<Place[] | null>(null);
  const drop = () => { drawing.current = null; setStroke([]); };
  useHands(box, {
    get: () => near.current, put: setZoom, pinching: drop,
    pans: (e) => now().trace?.tool === "pot" && !(e.target as Element).closest("button"),
  });
  const { width, height } = t.opened, [W, H] = size;
  const k0 = Math.min(W / width, H / height), k = k0 * zoom.by;
  const x0 = ((W - width * k0) / 2) * zoom.by + zoom.dx, y0 = ((H - height * k0) / 2) * zoom.by + zoom.dy;
  const place = (e: PointerEvent): Place => {
    const b = box.current!.getBoundingClientRect();
    return inside([(e.clientX - b.left - x0) / k, (e.clientY - b.top - y0) / k], width, height);
  };
  const press = (p: Place) => setCorner(touch(now().trace!, p, corner));
  const brushes = t.tool === "away" || t.tool === "back";
  const keys = (e: KeyboardEvent) => {
    if (e.ctrlKey || e.metaKey) return;
    const step = (e.shiftKey ? 0.05 : 0.005) * Math.max(width, height) / zoom.by;
    const at = cross ?? [width / 2, height / 2], move = arrows[e.key];
    if (move) setCross(inside([at[0] + move[0] * step, at[1] + move[1] * step], width, height));
    else if (e.key === "Enter" || e.key === " ") { setCross(at); press(at); }
    else if (!zoomKey(e, zoom, W, H, setZoom, cross ? [x0 + cross[0] * k, y0 + cross[1] * k] : undefined)) return;
    e.preventDefault();
  };
  return (
    <div
      class={`drawing picture tool-${t.tool}`} ref={box} tabIndex={0} role="application" aria-label={w.trace.pictureBench(w.trace.toolHints[t.tool]!)}
      aria-describedby="picture-keys" onKeyDown={keys} onBlur={() => setCross(null)}
    >
      {W > 0 && (
        <svg
          width={W} height={H} aria-hidden="true"
          onPointerDown={(e) => {
            if (e.button !== 0 || !e.isPrimary) return;
            e.currentTarget.setPointerCapture(e.pointerId);
            drawing.current = [place(e)];
            if (brushes || t.tool === "crop") setStroke(drawing.current);
          }}
          onPointerMove={(e) => {
            const d = drawing.current;
            if (!d || !e.isPrimary) return;
            const p = place(e), last = d.at(-1)!;
            if (Math.hypot(p[0] - last[0], p[1] - last[1]) * k < 3) return;
            drawing.current = [...d, p];
            if (brushes || t.tool === "crop") setStroke(drawing.current);
          }}
          onLostPointerCapture={() => {
            const d = drawing.current;
            drop();
            if (!d) return;
            const far = Math.max(...d.map((p) => Math.hypot(p[0] - d[0]![0], p[1] - d[0]![1]))) * k > 6;
            if (brushes) mark({ strokes: [...now().trace!.marks.strokes, { kind: t.tool === "away" ? "exclude" : "include", radius: (t.brush / 100) * width, points: d }] });
            else if (t.tool === "crop" && far) { setCorner(null); mark({ crop: boxOf(d[0]!, d.at(-1)!) }); }
            else if (!far) press(d[0]!);
          }}
        >
          <g transform={`translate(${x0} ${y0}) scale(${k})`}>
            <image href={t.shown} width={width} height={height} preserveAspectRatio="none" />
            <Overlay t={t} k={k} stroke={stroke} corner={corner} cross={cross} />
          </g>
        </svg>
      )}
      <p class="away" id="picture-keys">{w.trace.pictureKeys}</p>
      {W > 0 && <ZoomTools zoom={zoom} width={W} height={H} put={setZoom} />}
      {t.busy && <p class="tracing-busy" role="status">{t.busy === "outline" ? w.trace.outlining : w.trace.tracing}</p>}
    </div>
  );
}

const arrows: Record<string, Place> = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };
const inside = (p: Place, width: number, height: number): Place => [Math.max(0, Math.min(width, p[0])), Math.max(0, Math.min(height, p[1]))];
