// What of the page may wait while a hand drags on the drawing. The drawing, the
// verdict and the figures of the node keep step with the hand; the panels, of
// which some cost more to draw than all of these, follow when the plan is drawn
// and the browser has nothing else to do, yet not more often than every PAUSE, at
// the latest after WAIT, and at once when the hand lets go.
import { Component, type ComponentType, createElement } from "preact";
import { now } from "./state";

/** Ms after which the rest of the page follows a drag at the latest. */
const WAIT = 400;
/** Ms that it stays as it is: drawn between all moves, it took the time of the next. */
const PAUSE = 150;

let atHand = false;
let idle = 0;
let followed = 0;
let timer = 0;
const waiting = new Set<Component>();

/** A hand drags on the drawing from here on, or no longer. */
export function hand(on: boolean): void {
  atHand = on;
  if (!on) follow();
}

function follow(): void {
  clearTimeout(timer);
  if (idle) cancelIdleCallback(idle);
  timer = idle = 0;
  followed = performance.now();
  for (const c of waiting) c.forceUpdate();
  waiting.clear();
}

/** A component without properties that may wait. */
export class Later extends Component<{ of: ComponentType }> {
  override shouldComponentUpdate(): boolean {
    if (!atHand) return true;
    waiting.add(this);
    timer ||= setTimeout(follow, WAIT);
    const { answered, job } = now(); // Safari offers no idle time
    const rested = performance.now() - followed >= PAUSE;
    if (rested && answered === job && typeof requestIdleCallback === "function") idle ||= requestIdleCallback(follow);
    return false;
  }

  override componentWillUnmount(): void { waiting.delete(this); }

  override render() { return createElement(this.props.of, {}); }
}
