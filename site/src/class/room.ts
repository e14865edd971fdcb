// The state of the class, apart from the job on the bench so that neither touches
// the other: the set that a teacher is making, the results that were opened, and
// the exercise that a student works at.
import { set } from "../state";
import type { From } from "../words/from";
import type { Kept } from "./kept";
import type { Answer, ClassSet, Hint, Marked, Question, Solution, Table } from "./types";

/** What a student has done about one question. */
export interface Work {
  /** As it stands in the controls, and the tries that were marked. */
  draft: Answer; tries: Answer[];
  marked: Marked | null;
  /** What kept the last check from being marked. */
  unread: string;
  hints: Hint[];
  solution: Solution | null;
  /** The worked solution was seen, now or before. */
  seen: boolean;
  /** Which of the pictures is drawn. */
  picture: number;
}

export interface Session {
  set: ClassSet; print: string; honest: string;
  /** A teacher's trial: not kept. */
  trial: boolean;
  student: string;
  questions: Question[];
  work: Work[];
  /** The question that is open; -1 before the start, questions.length is the sheet. */
  at: number;
  /** Another like the one that is open; not handed in. */
  practice: { question: Question; work: Work } | null;
}

export interface Room {
  set: ClassSet; questions: Question[]; honest: string;
  fault: string;
  /** The question that the teacher looks at, or the table of results. */
  looked: number | "table" | null;
  files: { from: From; text: string }[];
  table: Table | null;
  session: Session | null;
  /** The page is in exercise mode; opening while a link is read. */
  inside: boolean; opening: boolean;
  /** Exercises that are kept in this browser and can be gone on with, newest first. */
  left: Kept<"exercise">[];
}

export const emptySet: ClassSet = { format: "moldwright-class", version: 1, title: "", note: "", hints: true, solutions: true, shuffle: false, questions: [] };

let state: Room = {
  set: emptySet, questions: [], honest: "", fault: "", looked: null, files: [], table: null,
  session: null, inside: false, opening: false, left: [],
};

export const room = (): Room => state;

export function put(patch: Partial<Room>): void {
  state = { ...state, ...patch };
  set({});
}

export function putSession(patch: Partial<Session>): void {
  if (state.session) put({ session: { ...state.session, ...patch } });
}

export const freshWork = (): Work => ({ draft: {}, tries: [], marked: null, unread: "", hints: [], solution: null, seen: false, picture: 0 });
