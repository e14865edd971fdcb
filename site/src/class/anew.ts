// The language has changed: the questions, marks, hints, solutions and the table
// of the class are said anew by the core. What a teacher or a student has given
// stays as it is; so do codes and links, which no language touches.
import { exercise } from "./ask";
import { put, putSession, room, type Work } from "./room";
import { tabled } from "./teacher";
import type { Hint, Marked, Question, Ref, SetReply, Solution } from "./types";

export async function inLanguage(): Promise<void> {
  const { set, questions, session, table } = room();
  if (questions.length) {
    const reply = await exercise<SetReply>({ do: "set", set });
    if (!("error" in reply) && room().questions === questions) put({ questions: reply.questions, honest: reply.honest });
  }
  if (table) await tabled();
  if (session) await sessionAnew();
  put({ fault: "" });
}

async function sessionAnew(): Promise<void> {
  const { set, student, practice, questions } = room().session!;
  const reply = await exercise<SetReply>({ do: "set", set, ...(student ? { student } : {}) });
  const other = practice ? await exercise<Question>({ do: "pose", ...practice.question.ref }) : null;
  const s = room().session;
  if ("error" in reply || s?.questions !== questions) return;
  putSession({
    questions: reply.questions, honest: reply.honest,
    practice: s.practice && other && !("error" in other) ? { question: other, work: s.practice.work } : s.practice,
  });
  await worksAnew();
}

/** What the core said of the answers so far, in the language of the page. */
export async function worksAnew(): Promise<void> {
  for (const [i, q] of (room().session?.questions ?? []).entries()) {
    const was = room().session?.work[i];
    if (!was) return;
    const now = await said(q.ref, was), s = room().session;
    if (s?.questions[i] === q && s.work[i] === was) putSession({ work: s.work.map((o, k) => (k === i ? now : o)) });
  }
  const p = room().session?.practice;
  if (!p) return;
  const work = await said(p.question.ref, p.work);
  if (room().session?.practice === p) putSession({ practice: { question: p.question, work } });
}

async function said(ref: Ref, k: Work): Promise<Work> {
  const tries = k.tries.length, answer = k.tries[tries - 1];
  const marked = k.marked && answer ? await exercise<Marked>({ do: "mark", ...ref, answer, tries: tries - 1 }) : null;
  const hints = await Promise.all(k.hints.map((h) => exercise<Hint>({ do: "hint", ...ref, level: h.level })));
  const solution = k.solution ? await exercise<Solution>({ do: "solve", ...ref, tries: Math.max(tries, 2) }) : null;
  return {
    ...k, unread: "",
    marked: marked && !("error" in marked) ? marked : k.marked,
    hints: k.hints.map((old, i) => { const h = hints[i]!; return "error" in h ? old : h; }),
    solution: solution && !("error" in solution) ? solution : k.solution,
  };
}
