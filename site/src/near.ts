// Asks for the nearest forms that let go, once the job has been at rest for a
// moment, and for their walls, which are drawn as ghost lines.
import { useEffect } from "preact/hooks";
import type { Job, Nearest, Plan } from "./contract";
import type { Near } from "./look";
import { coreOf, lookAt, now, parse } from "./state";

const REST = 250;

export function useNearest(): void {
  const { job, answered, faults } = now();
  const ready = answered === job && faults.length === 0;
  useEffect(() => {
    if (!ready || now().look.near?.of === job) return;
    const wait = setTimeout(async () => {
      const one = await nearest(job, "one");
      const two = now().job === job ? await nearest(job, "two") : null;
      if (one && two && now().job === job) lookAt({ near: { of: job, one, two } });
    }, REST);
    return () => clearTimeout(wait);
  }, [job, ready]);
}

async function nearest(job: Job, scheme: "one" | "two"): Promise<Near | null> {
  const a = await coreOf().ask("nearest", { job, scheme });
  const found = a && parse<Nearest>(a.reply);
  if (!found) return null;
  if ("error" in found) return { found: null, why: found.error.message, contour: [] };
  if (found.maxChange === 0 || now().job !== job) return { found, why: "", contour: [] };
  const p = await coreOf().ask("plan", { job: found.job }, null, true);
  const plan = p && parse<Plan>(p.reply);
  return { found, why: "", contour: plan && !("error" in plan) ? plan.drawing.contour : [] };
}
