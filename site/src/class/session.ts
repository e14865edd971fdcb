// What a student does: open an exercise, answer, ask for help, hand in. Every
// mark, hint and solution is the core's; here stands only what was given so far.
import { fileName, download } from "../files";
import { showAddress } from "../keep/tab";
import { now, say, set as setPage, type Refusal } from "../state";
import { w } from "../words";
import type { From } from "../words/from";
import { worksAnew } from "./anew";
import { exercise } from "./ask";
import { beginRow, keepSession, kept, type Kept, own } from "./kept";
import { freshWork, put, putSession, room, type Session, type Work } from "./room";
import type { Answer, ClassSet, Given, Hint, Marked, Question, Ref, Result, SetReply, Solution } from "./types";

const MOST_TRIES = 40;

/** Opens a set as an exercise; what does not read is told, and nothing changes. */
export async function openExercise(set: string | ClassSet, from: From, trial = false): Promise<void> {
  const reply = await exercise<SetReply>({ do: "set", set });
  if ("error" in reply) {
    put({ opening: false });
    return say(w.class.notOpened(from, at(reply)));
  }
  const { print, honest, questions } = reply;
  if (!questions.length) { put({ opening: false }); return say(w.class.notOpened(from, w.class.count(0))); }
  const session: Session = { set: reply.set, print, honest, trial, student: "", questions, work: [], at: -1, practice: null };
  put({ session, inside: true, opening: false });
  scrollTo(0, 0);
}

/** A refusal in words, with the question that it is about. */
export function at({ error }: Refusal): string {
  const m = /^questions\[(\d+)\]/.exec(error.field ?? "");
  return m ? w.class.inQuestion(Number(m[1]) + 1, error.message) : error.message;
}

/** What is kept of the exercise that is open, under each name, newest first. */
export function keptHere(): Kept<"exercise">[] {
  const s = room().session;
  return s && !s.trial ? kept("exercise").filter(({ what: k }) => k.print === s.print && JSON.stringify(k.set) === JSON.stringify(s.set)) : [];
}

/** Begins under a name, or goes on with what is kept under it: the questions are
 *  those that belong to the name. */
export async function start(student: string, resume: Kept<"exercise"> | null): Promise<void> {
  const s = room().session!;
  const reply = await exercise<SetReply>({ do: "set", set: s.set, student });
  if ("error" in reply) return say(at(reply));
  const old = resume?.what, n = reply.questions.length;
  const fits = old !== undefined && old.work.length === n;
  if (!s.trial) beginRow("exercise", fits ? resume : null);
  putSession({
    student, questions: reply.questions, practice: null,
    work: fits ? old.work : reply.questions.map(freshWork), at: fits ? Math.min(Math.max(old.at, 0), n) : 0,
  });
  keep();
  scrollTo(0, 0);
  if (fits) await worksAnew(); // it may have been kept in another language
}

/** On a reload goes back into the exercise that was open, unless it was left. */
export async function resumeKept(enter: boolean): Promise<void> {
  const k = own("exercise");
  put({ left: kept("exercise") });
  if (k?.what.inside && enter) await goOn(k);
}

/** Goes back into an exercise that is kept. */
export async function goOn(k: Kept<"exercise">): Promise<void> {
  const { set, student } = k.what;
  await openExercise(set, { file: title(set) });
  if (room().inside) await start(student, k);
}

export const title = (s: ClassSet): string => s.title.trim() || w.class.untitled;

/** Keeps the exercise as it stands; where the browser refuses, that is said once. */
export function keep(inside = room().inside): void {
  if (keepSession(room().session, inside) || !now().storage) return;
  setPage({ storage: false });
  say(w.keep.full);
}

/** Back to the bench, where everything is as it was. */
export function leave(): void {
  const s = room().session;
  keep(false);
  if (location.hash.startsWith("#class=")) showAddress(location.pathname + location.search);
  put({ inside: false, session: null, left: kept("exercise") });
  if (s && !s.trial && s.student) say(w.class.left(title(s.set)));
}

export function goTo(i: number): void {
  putSession({ at: i, practice: null });
  keep();
  scrollTo(0, 0);
}

/** The question that is open and what was done about it; none on the sheet. */
export function open(): { question: Question; work: Work } | null {
  const s = room().session;
  if (!s) return null;
  if (s.practice) return s.practice;
  const question = s.questions[s.at], work = s.work[s.at];
  return question && work ? { question, work } : null;
}

/** Changes the work on a question that is still known, open or not. */
function change(question: Question, patch: Partial<Work>): void {
  const s = room().session;
  if (!s) return;
  if (s.practice?.question === question) return putSession({ practice: { question, work: { ...s.practice.work, ...patch } } });
  const i = s.questions.indexOf(question);
  if (i < 0) return;
  putSession({ work: s.work.map((o, k) => (k === i ? { ...o, ...patch } : o)) });
  keep();
}

/** Changes the answer that is drafted, which may be ahead of the one that is drawn. */
export function draft(patch: Partial<Answer> | ((now: Answer) => Partial<Answer>)): void {
  const o = open(), now = o?.work.draft;
  if (now) change(o.question, { draft: { ...now, ...(typeof patch === "function" ? patch(now) : patch) }, unread: "" });
}

export function pickPicture(i: number): void {
  const o = open();
  if (o) change(o.question, { picture: i });
}

export const done = (k: Work): boolean => k.marked?.mark === "right";
export const full = (k: Work): boolean => k.tries.length >= MOST_TRIES;
export const maySolve = (k: Work): boolean => done(k) || k.tries.length >= 2;

export async function check(): Promise<void> {
  const o = open();
  if (!o || full(o.work)) return;
  const { question, work } = o, answer = work.draft;
  const reply = await exercise<Marked>({ do: "mark", ...question.ref, answer, tries: work.tries.length });
  if ("error" in reply) return change(question, { unread: reply.error.message });
  if (!reply.valid) return change(question, { unread: reply.invalid?.words ?? "" });
  change(question, { marked: reply, tries: [...work.tries, answer], unread: "", picture: 0, solution: null });
}

export async function hint(): Promise<void> {
  const o = open();
  if (!o || o.work.hints.length >= o.question.hints) return;
  const { question, work } = o;
  const reply = await exercise<Hint>({ do: "hint", ...question.ref, level: work.hints.length + 1 });
  if ("error" in reply) return say(reply.error.message);
  change(question, { hints: [...work.hints, reply] });
}

export async function solve(): Promise<void> {
  const o = open();
  if (!o) return;
  const reply = await exercise<Solution>({ do: "solve", ...o.question.ref, tries: Math.max(o.work.tries.length, done(o.work) ? 2 : 0) });
  if ("error" in reply) return say(reply.error.message);
  change(o.question, { solution: reply, picture: 0, seen: true });
}

const SEEDS = 31 ** 4;

/** Another like a question: the next seed. */
export function nextRef(r: Ref): Ref {
  const seed = ((r.seed ?? 0) + 1) % SEEDS;
  return { kind: r.kind!, difficulty: r.difficulty ?? 1, seed, ...(r.job ? { job: r.job } : {}) };
}

export async function another(): Promise<void> {
  const o = open();
  if (!o) return;
  let ref = o.question.ref;
  for (let i = 0; i < 5; i++) {
    ref = nextRef(ref);
    const reply = await exercise<Question>({ do: "pose", ...ref });
    if ("error" in reply) continue;
    putSession({ practice: { question: reply, work: freshWork() } });
    return scrollTo(0, 0);
  }
}

export const given = (s: Session): Given[] =>
  s.work.map((k) => ({ tries: k.tries, hints: k.hints.length, solution: k.seen }));

export const resultRequest = (s: Session): object => ({ do: "result", set: s.set, student: s.student, answers: given(s) });

export async function saveResult(): Promise<void> {
  const s = room().session!;
  const reply = await exercise<{ result: Result; text: string }>(resultRequest(s));
  if ("error" in reply) return say(reply.error.message);
  const name = fileName({ name: `${s.student} ${title(s.set)}` }, ".moldwright-result.json");
  download(name, reply.text, "application/json");
  say(w.class.resultSaved(name));
}
