// A form under change, judged as it stands: its shape from the plan, its mark
// from the same judge that marks the answer. While the core works only the newest
// form waits.
import { useEffect, useRef, useState } from "preact/hooks";
import type { At, Job, Plan } from "../contract";
import { coreOf, parse } from "../state";
import { exercise } from "./ask";
import type { Marked, Question } from "./types";

export interface Shape { contour: At[]; scale: number; lift: number; turned: boolean }
export interface Live { shape: Shape | null; marked: Marked | null; bad: string }

/** The shape of a job, or why it has none. */
async function shapeOf(job: Job): Promise<Shape | string> {
  const a = await coreOf().ask("plan", { job }, null, true);
  const reply = parse<Plan>(a!.reply);
  if ("error" in reply) return reply.error.message;
  const { contour, lift, turned } = reply.drawing;
  return { contour, scale: reply.scale, lift, turned };
}

/** Judges each job that is given, the newest last; null asks nothing. */
export function useLive(question: Question, job: Job | null): Live {
  const [live, setLive] = useState<Live>({ shape: null, marked: null, bad: "" });
  const want = useRef<Job | null>(null), busy = useRef(false), gone = useRef(false);
  useEffect(() => { gone.current = false; return () => { gone.current = true; }; }, []);
  useEffect(() => {
    want.current = job;
    if (!job || busy.current) return;
    busy.current = true;
    void (async () => {
      while (want.current && !gone.current) {
        const of: Job = want.current;
        want.current = null;
        const shape = await shapeOf(of);
        const reply = await exercise<Marked>({ do: "mark", ...question.ref, answer: { job: of }, tries: 0 });
        const marked = "error" in reply ? null : reply;
        const bad = typeof shape === "string" ? shape : marked && !marked.valid ? marked.invalid?.words ?? "" : "";
        if (!gone.current) setLive((old) => ({ shape: typeof shape === "string" ? old.shape : shape, marked: marked?.valid ? marked : null, bad }));
      }
      busy.current = false;
    })();
  }, [question, job]);
  return live;
}

/** The shape of a job that stands still, such as that of a solution. */
export function useShape(job: Job | null): Shape | null {
  const [shape, setShape] = useState<Shape | null>(null);
  useEffect(() => {
    setShape(null);
    if (job) void shapeOf(job).then((s) => { if (typeof s !== "string") setShape(s); });
  }, [job]);
  return shape;
}
