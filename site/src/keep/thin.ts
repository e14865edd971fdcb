// Which kept versions of one pot stay. Every age has a bucket, each a few times
// as long as the one before, and of each bucket the oldest version stays: it is
// the one that will reach the next bucket first, so that while somebody works on
// there is always one version of a few minutes ago, one of an hour ago, one of
// yesterday. What a tab wrote last stays for a day, whatever else there is: it
// may still be open.

/** Ends of the buckets, in minutes. */
export const ages = [1, 4, 15, 60, 240, 1440, 10_080, 43_200] as const;

const DAY = 1440 * 60_000;

export interface Aged { at: number; tab: string }

/** Those of one pot's versions that are not worth their room at that time, ms. */
export function surplus<V extends Aged>(versions: readonly V[], now: number): V[] {
  const oldestFirst = [...versions].sort((a, b) => a.at - b.at);
  const stay = new Set<V>(oldestFirst.slice(-1));
  const bucket = (v: V) => ages.findIndex((end) => now - v.at < end * 60_000);
  const taken = new Set<number>();
  for (const v of oldestFirst) {
    if (!taken.has(bucket(v))) stay.add(v);
    taken.add(bucket(v));
  }
  for (const v of new Map(oldestFirst.map((o) => [o.tab, o])).values()) if (now - v.at < DAY) stay.add(v);
  return versions.filter((v) => !stay.has(v));
}
