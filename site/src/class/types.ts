// What crosses the boundary to the core's op "exercise", as types. Lengths are mm
// at mold size, heights above the lowest place of the foot. The core is the
// authority on what a question asks and how an answer is marked.
import type { At, Fault, Job } from "../contract";

export type Mark = "right" | "close" | "notYet";

/** Names a question: by code, by kind, difficulty and seed, or these on a job. */
export interface Ref { code?: string; kind?: string; difficulty?: number; seed?: number; job?: Job }

export interface Option { id: string; words: string }

export interface Field { id: string; type: "marks" | "number" | "choice" | "job"; words: string; units?: string[]; options?: Option[]; most?: number }

export interface Plane {
  contour: At[]; inner?: At[]; closed: boolean; turned: boolean; height: number; maxRadius: number;
  pull?: { id: Pull; words: string };
  points?: { id: string; r: number; z: number }[];
  parts?: { id: string; words: string; outline: At[] }[];
  show: string[];
}

export type Pull = "down" | "up" | "out";

export interface Question {
  ref: Ref; code: string; kind: string; title: string; own: boolean; name: string; text: string; given: string[];
  job: Job; answer: Field[]; tolerance: string; drawing: Plane; hints: number;
}

export interface Place { r?: number; z: number }

/** What a student gives: of the fields those that the question asks for. */
export interface Answer { marks?: Place[]; value?: string; unit?: string; choices?: Record<string, string>; job?: Job }

/** What sticks: the wall that is held, what holds it, for which part and pull. */
export interface Picture {
  part: string; pullId: Pull; r: number; z: number; blockR: number; blockZ: number; depth: number;
  zFrom: number; zTo: number; stretch: At[]; words: string;
}

export interface Marked {
  valid: boolean; invalid: { code: string; field: string; words: string } | null;
  mark: Mark; code: string; words: string;
  details: { field: string; index: number; mark: Mark; code: string; words: string }[];
  pictures: Picture[]; tries: number; maySolve: boolean;
}

export interface Hint { level: number; words: string; heights: number[] }

export interface Solution { answer: Answer; short: string; steps: string[]; pictures: Picture[]; slips: string[] }

/** The document that a teacher hands out. */
export interface ClassSet {
  format: string; version: number; title: string; note: string;
  hints: boolean; solutions: boolean; shuffle: boolean; questions: Ref[];
}

export interface SetReply { set: ClassSet; text: string; questions: Question[]; print: string; honest: string }

/** One question as a student gave it. */
export interface Given { tries: Answer[]; hints: number; solution: boolean }

/** The document that a student hands in. */
export interface Result {
  title: string; student: string; score: number; of: number; honest: string;
  answers: { label: string; mark: Mark | "none"; score: number; tries: Answer[]; hints: number; solution: boolean; marks: { mark: string; words: string }[] }[];
}

export interface Table {
  columns: string[];
  rows: {
    student: string; title: string; score: number; of: number; notes: string[];
    cells: { label: string; mark: Mark | "none"; tries: number; hints: number; words: string }[];
  }[];
  csv: string; honest: string;
  bad: { index: number; fault: Fault | null }[];
}
