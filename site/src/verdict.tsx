// The verdict line above the drawing and the next step below it: one sentence
// each, made from the plan alone.
import type { Plan, Scheme } from "./contract";
import { Icon } from "./icons";
import { mass, show, withUnit } from "./numbers";
import { now, set, type Tab } from "./state";
import { save } from "./files";
import { w } from "./words";

export const chosen = (plan: Plan): Scheme => plan.schemes.find((s) => s.id === plan.chosen) ?? plan.schemes[0]!;

/** The scheme in a sentence: how many parts, parted where, verdict, why, plaster. */
export function verdictWords(s: Scheme, leastDraft: number): string {
  const heights = (s.partingHeights ?? []).map((z) => withUnit(z, "mm"));
  const head = w.parts(s.count) + (heights.length ? ", " + w.partedAt(heights) : "") + ".";
  const words = [head, w.verdict[s.verdict] + "."];
  const worst = s.parts.find((p) => p.verdict === s.verdict);
  if (worst && s.verdict === "catches") {
    const c = worst.catches.reduce((a, b) => (b.depth > a.depth ? b : a), worst.catches[0]!);
    if (c) words.push(w.catchesBy(partName(worst.name), withUnit(c.depth, "mm"), withUnit(c.zFrom, "mm", 0)));
  } else if (worst && s.verdict === "rubs") {
    words.push(w.rubsBy(partName(worst.name), withUnit(worst.rubShare, "%", 0), show(leastDraft, 1) + "°"));
  }
  words.push(w.plasterNeeded(mass(s.parts.reduce((sum, p) => sum + p.plaster, 0))));
  return words.join(" ");
}

export function VerdictLine() {
  const { plan, fault, job, planned, slow, progress } = now();
  const s = plan && chosen(plan);
  return (
    <div class={`verdict ${fault ? "fault" : s?.verdict ?? "none"}`} aria-busy={planned !== job && !fault}>
      {(fault || s) && <span class="sign"><Icon name={fault ? "catches" : s!.verdict} /></span>}
      <p role="status" aria-live="polite">
        {fault ? <><b>{w.cannotPlan}</b> {fault.message} {plan && w.stillShown}</>
          : s ? verdictWords(s, job.rules.leastDraft) : w.starting}
      </p>
      {slow && <span class="busy">{progress?.words ?? w.working}…</span>}
    </div>
  );
}

export function NextStep() {
  const { plan, fault, tab, saved } = now();
  if (!plan) return null;
  const s = chosen(plan);
  let words: string, to: Tab | null;
  if (fault) [words, to] = [w.nextFault, "form"];
  else if (s.verdict === "catches") [words, to] = [w.nextCatch, "release"];
  else if (s.verdict === "rubs" && tab !== "release") [words, to] = [w.nextRub, "release"];
  else if (tab === "tooling") [words, to] = [w.nextTooling, "casting"];
  else if (tab === "casting") [words, to] = [w.nextCasting, "sheets"];
  else if (tab === "sheets") [words, to] = [w.nextSheets, null];
  else [words, to] = [w.nextClear, "tooling"];
  if (to === null && saved !== null) return null;
  return (
    <div class="next">
      <b>{w.next}</b>
      <p>{words}</p>
      {to !== tab && (
        <button type="button" class="primary" onClick={() => (to ? set({ tab: to }) : save())}>
          {to ? w.go(w.tabs[to]) : w.save}<Icon name="next" />
        </button>
      )}
    </div>
  );
}

/** A part's name as words: "lower part", "side part A". */
export function partName(name: string): string {
  const side = /([A-D])$/.exec(name);
  if (side) return `side part ${side[1]}`;
  return name === "core" ? "core" : `${name} part`;
}
