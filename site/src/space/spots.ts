// Where the letters of bodies stand: on their skin, or on a cut through them. A level
// line through a closed mesh lies in it from each odd crossing to the next one.

export type Spot = [number, number, number];

/** Corners of triangles, nine numbers each. */
type Skin = Float32Array;

/** How far along a level line from o, the way az (radians), it crosses the skin, in order. */
export function crossings(skin: Skin, o: Spot, az: number): number[] {
  const dx = Math.cos(az), dy = Math.sin(az), out: number[] = [], side = [0, 0], along = [0, 0];
  for (let i = 0; i < skin.length; i += 9) {
    let n = 0;
    for (let k = 0; k < 3; k++) {
      const a = i + 3 * k, b = i + 3 * ((k + 1) % 3), za = skin[a + 2]! - o[2], zb = skin[b + 2]! - o[2];
      if (za > 0 === zb > 0) continue;
      const s = za / (za - zb), x = skin[a]! + (skin[b]! - skin[a]!) * s - o[0], y = skin[a + 1]! + (skin[b + 1]! - skin[a + 1]!) * s - o[1];
      side[n] = x * dy - y * dx;
      along[n++] = x * dx + y * dy;
    }
    if (n === 2 && side[0]! > 0 !== side[1]! > 0) out.push(along[0]! + ((along[1]! - along[0]!) * side[0]!) / (side[0]! - side[1]!));
  }
  return out.sort((p, q) => p - q);
}

/** Shares of a body's height at which a place is looked for, the middle one first. */
const LEVELS = [0.503, 0.303, 0.703, 0.153, 0.853];
const level = (low: number, high: number, share: number) => low + (high - low) * share;
/** A little off what is even, where edges of meshes run. */
const OFF = 0.0137;

/** The middle of the widest stretch of matter on the plane x, or null where it misses the body. */
export function onCut(skin: Skin, low: number, high: number, x: number): Spot | null {
  let best: Spot | null = null, wide = 0;
  for (const share of LEVELS) {
    const z = level(low, high, share), at = crossings(skin, [x - OFF, 0, z], Math.PI / 2);
    for (let i = 0; i + 1 < at.length; i += 2) {
      const w = at[i + 1]! - at[i]!;
      if (w > 1.3 * wide) [best, wide] = [[x, (at[i]! + at[i + 1]!) / 2, z], w];
    }
  }
  return best;
}

/** The height at which a body reaches farthest from the axis, its middle where that is about as far. */
export function widest(skin: Skin, low: number, high: number): number {
  let best = level(low, high, LEVELS[0]!), far = 0;
  for (const share of LEVELS) {
    const z = level(low, high, share), r = crossings(skin, [OFF, OFF, z], 0.4).pop() ?? 0;
    if (r > 1.1 * far) [best, far] = [z, r];
  }
  return best;
}

/** Where the skin stands farthest out from the axis at a height, the way az. */
export function onSkin(skin: Skin, z: number, az: number): Spot | null {
  const r = crossings(skin, [OFF, OFF, z], az).pop();
  return r !== undefined && r > 0 ? [r * Math.cos(az), r * Math.sin(az), z] : null;
}

/** The middle of an end of a body that stands to one side of the axis, the way az: its top, or its bottom,
 *  behind the domes that stand out of it. */
export function onEnd(skin: Skin, low: number, high: number, az: number, top: boolean): Spot | null {
  for (const deep of [2, 8, 16]) {
    const z = top ? high - deep : low + deep, at = crossings(skin, [OFF, OFF, z], az), n = at.length, r = (at[n - 1]! + at[n - 2]!) / 2;
    if (n > 1) return [r * Math.cos(az), r * Math.sin(az), top ? z + 2 : z - 2];
  }
  return null;
}

/** Of the highest corners the one nearest to the middle, those toward +x and -y before others. */
export function onTop(skin: Skin, high: number, middle: readonly [number, number]): Spot {
  let best: Spot = [middle[0], middle[1], high], least = Infinity;
  for (let i = 0; i < skin.length; i += 3) {
    if (skin[i + 2]! < high - 1) continue;
    const x = skin[i]! - middle[0], y = skin[i + 1]! - middle[1], d = Math.hypot(x, y) - 0.2 * (x - y);
    if (d < least) [best, least] = [[skin[i]!, skin[i + 1]!, skin[i + 2]!], d];
  }
  return best;
}

/** How far the skin reaches from the axis to each of so many ways round. */
export function reaches(skin: Skin, ways: number): number[] {
  return Array.from({ length: ways }, (_, k) => {
    const cos = Math.cos((2 * Math.PI * k) / ways), sin = Math.sin((2 * Math.PI * k) / ways);
    let far = -Infinity;
    for (let i = 0; i < skin.length; i += 3) far = Math.max(far, skin[i]! * cos + skin[i + 1]! * sin);
    return far;
  });
}

/** A letter on the screen: where it would stand (pixels) and how far off what it names is. */
export interface Letter { words: string; x: number; y: number; far: number }

/** So far apart letters do not touch, pixels. */
const ROOM = 28;

/** Where letters stand so that none covers another, nearest ones first; null for one that would. A part none of
 *  whose letters found room has one beside its place: of the others the colour says the same. */
export function spread(letters: readonly Letter[]): ([number, number] | null)[] {
  const at: ([number, number] | null)[] = letters.map(() => null), stands: [number, number][] = [], named = new Set<string>();
  const nearest = letters.map((_, k) => k).sort((a, b) => letters[a]!.far - letters[b]!.far);
  const put = (i: number, ways: readonly (readonly [number, number])[]) => {
    const l = letters[i]!, free = ([x, y]: [number, number]) => stands.every((o) => Math.abs(o[0] - x) >= ROOM || Math.abs(o[1] - y) >= ROOM);
    const to = ways.map(([x, y]): [number, number] => [l.x + x * ROOM, l.y + y * ROOM]).find(free);
    if (!to) return;
    at[i] = to;
    stands.push(to);
    named.add(l.words);
  };
  for (const i of nearest) put(i, [[0, 0]]);
  for (const i of nearest) if (!named.has(letters[i]!.words)) put(i, BESIDE);
  return at;
}

const BESIDE = [[0, -1], [1, 0], [-1, 0], [0, 1], [1, -1], [-1, -1], [1, 1], [-1, 1]] as const;
