// Places on the drawn wall: what is nearest to a finger, and steps along it.
import type { At } from "../contract";

export interface OnWall { r: number; z: number; /** Length along the wall, and distance from the place asked, mm. */ s: number; off: number }

const hundredth = (x: number) => Math.round(x * 100) / 100;

/** The place of the wall nearest to a point. */
export function nearest(wall: readonly At[], r: number, z: number): OnWall {
  let best: OnWall = { r, z, s: 0, off: Infinity }, s = 0;
  for (let i = 1; i < wall.length; i++) {
    const [ar, az] = wall[i - 1]!, [br, bz] = wall[i]!;
    const long = Math.hypot(br - ar, bz - az);
    const t = long > 0 ? Math.min(Math.max(((r - ar) * (br - ar) + (z - az) * (bz - az)) / (long * long), 0), 1) : 0;
    const pr = ar + t * (br - ar), pz = az + t * (bz - az), off = Math.hypot(pr - r, pz - z);
    if (off < best.off) best = { r: hundredth(pr), z: hundredth(pz), s: s + t * long, off };
    s += long;
  }
  return best;
}

/** The place so far along the wall, held at its ends. */
export function along(wall: readonly At[], s: number): { r: number; z: number } {
  let left = Math.max(0, s);
  for (let i = 1; i < wall.length; i++) {
    const [ar, az] = wall[i - 1]!, [br, bz] = wall[i]!;
    const long = Math.hypot(br - ar, bz - az);
    if (left <= long && long > 0) return { r: hundredth(ar + (left / long) * (br - ar)), z: hundredth(az + (left / long) * (bz - az)) };
    left -= long;
  }
  const [r, z] = wall[wall.length - 1]!;
  return { r, z };
}

/** The radius of the outermost place of the wall at a height; null off the pot. */
export function outermost(wall: readonly At[], z: number): number | null {
  let most: number | null = null;
  for (let i = 1; i < wall.length; i++) {
    const [ar, az] = wall[i - 1]!, [br, bz] = wall[i]!;
    if ((az - z) * (bz - z) > 0) continue;
    const r = az === bz ? Math.max(ar, br) : ar + ((z - az) / (bz - az)) * (br - ar);
    if (most === null || r > most) most = r;
  }
  return most;
}
