// The picture a form was traced from, laid behind its profile on the drawing:
// its axis on the pot's axis, its seat on z = 0, in the same scale.
import type { Plan } from "../contract";
import { now } from "../state";
import { seat, type View, X, Y } from "../view";
import { behind } from "./tracing";

export function PictureBehind({ v, plan }: { v: View; plan: Plan }) {
  const drawn = now().planned; // which may still be of the form before
  const b = drawn && behind(drawn.form);
  if (!b?.on) return null;
  const [x0, y0, x1, y1] = b.axis, turn = Math.atan2(x1 - x0, y0 - y1); // lean of the axis, clockwise
  const k = b.mmPerPixel * plan.scale * v.k, up = plan.drawing.turned ? -1 : 1;
  return (
    <image
      class="behind-picture" href={b.shown} width={b.width} height={b.height} opacity={b.opacity} preserveAspectRatio="none"
      transform={`translate(${X(v, 0)} ${Y(v, seat(plan, 0))}) scale(${k} ${k * up}) rotate(${(-turn * 180) / Math.PI}) translate(${-b.seat[0]} ${-b.seat[1]})`}
    />
  );
}
