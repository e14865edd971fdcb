// The buttons of zoom and pan, for those who neither drag nor pinch.
import { w } from "../words";
import { panned, whole, type Zoom, zoomAbout } from "./zoom";

interface Props { zoom: Zoom; width: number; height: number; put: (z: Zoom) => void; about?: [number, number] | undefined }

export function ZoomTools({ zoom, width, height, put, about }: Props) {
  const [x, y] = about ?? [width / 2, height / 2];
  const by = (f: number) => put(zoomAbout(zoom, f, x, y, width, height));
  const go = (dx: number, dy: number) => put(panned(zoom, (dx * width) / 4, (dy * height) / 4, width, height));
  return (
    <div class="zoomtools" role="group" aria-label={w.zoom}>
      {zoom.by > 1 && (
        <>
          <button type="button" class="small" aria-label={w.panLeft} onClick={() => go(1, 0)}>←</button>
          <button type="button" class="small" aria-label={w.panRight} onClick={() => go(-1, 0)}>→</button>
          <button type="button" class="small" aria-label={w.panUp} onClick={() => go(0, 1)}>↑</button>
          <button type="button" class="small" aria-label={w.panDown} onClick={() => go(0, -1)}>↓</button>
          <button type="button" class="small" onClick={() => put(whole)}>{w.zoomWhole}</button>
        </>
      )}
      <button type="button" class="small" aria-label={w.zoomOut} disabled={zoom.by <= 1} onClick={() => by(1 / 1.5)}>−</button>
      <button type="button" class="small" aria-label={w.zoomIn} onClick={() => by(1.5)}>+</button>
    </div>
  );
}
