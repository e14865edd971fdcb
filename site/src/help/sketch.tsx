// What the small pictures of the words are drawn with: paths given for the right
// half and mirrored about the axis, plaster in the colour and hatching of its
// part, arrows of the pulls. Lines follow the rules of the drawing: outlines
// wide, edges narrow, the axis in long and short dashes. The square is 168 by 112.
import type { ComponentChildren } from "preact";
import { look } from "../parts-look";

export const AXIS = 84;
export type PartName = "lower" | "upper" | "A" | "B";

/** The path as it stands right of the axis (side 1) or mirrored (side -1). Only
 *  M, L, C and Z occur in it. */
export function half(d: string, side: 1 | -1): string {
  let x = false;
  return d.replace(/[MLCZ]|-?[\d.]+/g, (t) => {
    if (/[MLCZ]/.test(t)) { x = true; return t; }
    const at = x ? AXIS + side * Number(t) : Number(t);
    x = !x;
    return String(at);
  });
}

export const both = (d: string): string => half(d, 1) + half(d, -1);

/** One picture, with hatchings of its own. */
export function Sketch({ id, children }: { id: string; children: ComponentChildren }) {
  return (
    <svg class="sketch" viewBox="0 0 168 112" width="168" height="112" aria-hidden="true">
      <defs>
        {(["lower", "upper", "A", "B"] as const).map((name) => {
          const l = look(name);
          return (
            <pattern key={name} id={`${id}-${name}`} patternUnits="userSpaceOnUse" width={6} height={6} patternTransform={`rotate(${l.angle})`}>
              <line x1={0} y1={0} x2={0} y2={6} stroke={l.colour} stroke-width={1.4} />
            </pattern>
          );
        })}
      </defs>
      {children}
    </svg>
  );
}

interface PlasterProps {
  id: string; part: PartName; d: string;
  /** Drawn on one side of the axis only. */
  side?: 1 | -1 | undefined;
  /** Its place beside where it stands closed. */
  by?: [number, number];
  /** Drawn back, so that another part stands out. */
  pale?: boolean;
}

/** A plaster part: the area within d, closed, and d as its edge. */
export function Plaster({ id, part, d, side, by, pale }: PlasterProps) {
  const line = side ? half(d, side) : both(d), area = side ? line + "Z" : both(d + "Z");
  return (
    <g {...(by ? { transform: `translate(${by[0]} ${by[1]})` } : {})} opacity={pale ? 0.35 : 1}>
      <path class="plaster" d={area} />
      <path d={area} fill={look(part).colour} fill-opacity={0.16} />
      <path d={area} fill={`url(#${id}-${part})`} fill-opacity={0.75} />
      <path class="edge" fill="none" d={line} />
    </g>
  );
}

/** A solid body, such as the positive or the pot from the side, level on top. */
export function Body({ d, line = true }: { d: string; line?: boolean }) {
  const area = `${d}L0 ${/[\d.]+$/.exec(d)![0]}Z`;
  return <><path class="body" d={both(area)} />{line && <path class="outline" d={both(d)} />}</>;
}

export const Axis = ({ from = 6, to = 108 }: { from?: number; to?: number }) => <line class="axis" x1={AXIS} x2={AXIS} y1={from} y2={to} />;

/** A pull: from (x, y), turned so many degrees from pointing right. */
export function Pull({ x, y, turn, part, by = 0.75 }: { x: number; y: number; turn: number; part?: PartName; by?: number }) {
  return <path class="pull" d="M0 -4H18V-10L32 0 18 10V4H0Z" transform={`translate(${x} ${y}) rotate(${turn}) scale(${by})`} fill={part ? look(part).colour : "var(--soft)"} />;
}

/** What the word means, drawn to stand out. */
export const On = ({ d, area = false }: { d: string; area?: boolean }) => <path class={area ? "on area" : "on"} d={d} />;
