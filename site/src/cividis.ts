// Draft as colour: the map cividis (Nunez, Anderton and Renslow 2018, PLOS ONE
// 13(7) e0199239; stops from memory), dark blue for steep, yellow for well
// tapered. It reads the same to colour-blind eyes.

const stops = [
  [0, 34, 78], [18, 53, 112], [59, 73, 108], [87, 93, 109], [112, 113, 115],
  [138, 134, 120], [165, 156, 116], [195, 179, 105], [225, 204, 85], [254, 232, 56],
] as const;

/** Degrees at which the map ends: more draft than this makes no difference. */
export const FULL = 30;

/** The colour of a draft in degrees; below zero it is that of zero. */
export function draftColour(deg: number): string {
  const x = (Math.min(Math.max(deg, 0), FULL) / FULL) * (stops.length - 1);
  const i = Math.min(Math.floor(x), stops.length - 2);
  const a = stops[i]!, b = stops[i + 1]!;
  const mix = (k: 0 | 1 | 2) => Math.round(a[k] + (b[k] - a[k]) * (x - i));
  return `rgb(${mix(0)} ${mix(1)} ${mix(2)})`;
}
