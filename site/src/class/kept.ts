// What the browser keeps of a class between visits: a student's exercise under
// way and a teacher's set in the making. As with the job, a convenience that may
// fail; the saved files are the truth.
import type { Session } from "./room";
import type { ClassSet } from "./types";

const UNDER_WAY = "moldwright.exercise", MAKING = "moldwright.class";

export type KeptSession = Omit<Session, "questions" | "practice"> & { inside: boolean };

function write(key: string, value: unknown): void {
  try {
    if (value === null) localStorage.removeItem(key);
    else localStorage.setItem(key, JSON.stringify(value));
  } catch {
    // nothing is kept; the page goes on
  }
}

function read<T>(key: string): T | null {
  try {
    return JSON.parse(localStorage.getItem(key) ?? "null") as T | null;
  } catch {
    return null;
  }
}

export function keepSession(s: Session | null, inside: boolean): void {
  if (s?.trial) return;
  if (!s) return write(UNDER_WAY, null);
  const { questions: _, practice: __, ...rest } = s;
  write(UNDER_WAY, { ...rest, inside } satisfies KeptSession);
}

/** The exercise under way, if what is kept has the shape of one. */
export function keptSession(): KeptSession | null {
  const s = read<KeptSession>(UNDER_WAY);
  return s && s.set && Array.isArray(s.set.questions) && Array.isArray(s.work) && typeof s.student === "string" ? s : null;
}

export const keepSet = (s: ClassSet): void => write(MAKING, s);
export const keptSet = (): ClassSet | null => read<ClassSet>(MAKING);
