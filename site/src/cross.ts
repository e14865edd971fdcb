// The cut across the axis as the drawing shows it: the largest radius is 1, and
// g(a) is the share of it at azimuth a. The core judges; this only draws, by the
// same closed forms. Azimuth 0 looks along a face of a polygon, along the wide
// way of an oval, along a ridge between flutes.
import type { Section } from "./contract";

export function share(s: Section): (a: number) => number {
  const n = s.count ?? 6;
  if (s.kind === "oval") {
    const k = 1 / (s.ratio ?? 1) ** 2 - 1;
    return (a) => 1 / Math.sqrt(1 + k * Math.sin(a) ** 2);
  }
  if (s.kind === "flutes") {
    const d = (s.depth ?? 0) / 200;
    return (a) => 1 - d * (1 - Math.cos(n * a));
  }
  if (s.kind === "polygon") {
    const half = Math.PI / n, round = (s.rounding ?? 0) / 100;
    const centre = (1 - round) / Math.cos(half), tip = centre + round;
    const from = Math.atan2((1 - round) * Math.tan(half), 1);
    return (a) => {
      const f = a - Math.round(a / (2 * half)) * 2 * half;
      if (Math.abs(f) <= from) return 1 / Math.cos(f) / tip;
      const off = Math.abs(f) - half;
      return (centre * Math.cos(off) + Math.sqrt(Math.max(0, round ** 2 - (centre * Math.sin(off)) ** 2))) / tip;
    };
  }
  return () => 1;
}

/** The outline as places (x, y) of a circle of radius 1, turned by so many degrees. */
export function outline(s: Section, turn: number, steps = 720): [number, number][] {
  const g = share(s), t = (turn * Math.PI) / 180;
  return Array.from({ length: steps }, (_, i) => {
    const a = (2 * Math.PI * i) / steps, r = g(a - t);
    return [r * Math.cos(a), r * Math.sin(a)];
  });
}
