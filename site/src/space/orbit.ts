// Where the eye stands: turned about a point by azimuth and elevation, nearer or
// farther. Fingers, mouse, wheel and keys all change these three numbers.

export interface Orbit { azimuth: number; elevation: number; zoom: number }

export const home: Orbit = { azimuth: -0.65, elevation: 0.38, zoom: 1 };

const within = (x: number, a: number, b: number) => Math.min(Math.max(x, a), b);

export function turned(o: Orbit, azimuth: number, elevation: number): Orbit {
  return { ...o, azimuth: o.azimuth + azimuth, elevation: within(o.elevation + elevation, -1.5, 1.5) };
}

export function zoomed(o: Orbit, by: number): Orbit { return { ...o, zoom: within(o.zoom * by, 0.4, 8) }; }

/** What a key does, or null where it is not meant for the view. */
export function pressed(o: Orbit, key: string, shift: boolean): Orbit | null {
  const step = shift ? 0.4 : 0.1;
  switch (key) {
    case "ArrowLeft": return turned(o, step, 0);
    case "ArrowRight": return turned(o, -step, 0);
    case "ArrowUp": return turned(o, 0, step);
    case "ArrowDown": return turned(o, 0, -step);
    case "+": case "=": return zoomed(o, 1.15);
    case "-": return zoomed(o, 1 / 1.15);
    case "0": case "Home": return home;
  }
  return null;
}

/** Pointers on the canvas: one turns, two spread or close to come nearer or go
 *  back, the wheel too. */
export function follow(canvas: HTMLElement, get: () => Orbit, put: (o: Orbit) => void): () => void {
  const down = new Map<number, [number, number]>();
  const spread = () => {
    const [a, b] = [...down.values()];
    return a && b ? Math.hypot(a[0] - b[0], a[1] - b[1]) : 0;
  };
  const start = (e: PointerEvent) => {
    canvas.setPointerCapture(e.pointerId);
    down.set(e.pointerId, [e.clientX, e.clientY]);
  };
  const move = (e: PointerEvent) => {
    const was = down.get(e.pointerId);
    if (!was) return;
    const before = spread();
    down.set(e.pointerId, [e.clientX, e.clientY]);
    if (down.size === 1) put(turned(get(), -(e.clientX - was[0]) * 0.008, (e.clientY - was[1]) * 0.008));
    else if (before > 0) put(zoomed(get(), spread() / before));
  };
  const end = (e: PointerEvent) => down.delete(e.pointerId);
  const wheel = (e: WheelEvent) => {
    e.preventDefault();
    put(zoomed(get(), Math.exp(-e.deltaY * 0.0015)));
  };
  canvas.addEventListener("pointerdown", start);
  canvas.addEventListener("pointermove", move);
  canvas.addEventListener("pointerup", end);
  canvas.addEventListener("pointercancel", end);
  canvas.addEventListener("wheel", wheel, { passive: false });
  return () => {
    canvas.removeEventListener("pointerdown", start);
    canvas.removeEventListener("pointermove", move);
    canvas.removeEventListener("pointerup", end);
    canvas.removeEventListener("pointercancel", end);
    canvas.removeEventListener("wheel", wheel);
  };
}
