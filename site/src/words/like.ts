// The types of the tables of words. English is written first; every other
// language has the same keys, the same functions and tuples of the same length,
// and TypeScript refuses one that has not.
import type { en } from "./en";

/** A table of the same shape as T, in any words. */
export type Like<T> =
  T extends string ? string
  : T extends (...values: infer V) => string ? (...values: V) => string
  : { readonly [K in keyof T]: Like<T[K]> };

/** All words of one language. */
export type Words = Like<typeof en>;

/** T as it is read: a list by name, such as the sample pots, may also be asked
 *  for a name that is not known to be in it. */
export type Readable<T> = {
  readonly [K in keyof T]:
    T[K] extends string | readonly unknown[] | ((...values: never[]) => string) ? T[K]
    : T[K] extends Readonly<Record<string, string>> ? T[K] & Readonly<Record<string, string>>
    : T[K] extends Readonly<Record<string, readonly [string, string]>> ? T[K] & Readonly<Record<string, readonly [string, string]>>
    : Readable<T[K]>;
};
