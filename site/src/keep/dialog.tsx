// The window of kept versions: each pot with its rows, newest first, each with a
// small picture of its outline, its time and its verdict. Taking one back is one
// step of undo.
import { useEffect, useRef, useState } from "preact/hooks";
import { canonical } from "../canonical";
import type { Job } from "../contract";
import { beside, closed } from "../dialogs";
import { openJob } from "../files";
import { Icon, type IconName } from "../icons";
import { Silhouette } from "../shelf";
import { now } from "../state";
import { w } from "../words";
import { type Found, keepNow, onKept, pots } from "./autosave";
import { me } from "./tab";

const SMALL = 44;

/** A time as a person says it: the hour today, the day before that. */
export function when(at: number): string {
  const d = new Date(at), today = d.toDateString() === new Date().toDateString();
  return d.toLocaleString(document.documentElement.lang || undefined, today ? { hour: "2-digit", minute: "2-digit", second: "2-digit" } : { day: "numeric", month: "short", year: "numeric", hour: "2-digit", minute: "2-digit" });
}

/** The job that a kept text holds, as far as a picture of it needs. */
function outlined(text: string): Job | null {
  try {
    const j = JSON.parse(text) as Job;
    return Array.isArray(j.form?.outer) && j.form.outer.length > 1 && j.form.outer.every((n) => Number.isFinite(n?.r) && Number.isFinite(n?.z)) ? j : null;
  } catch {
    return null;
  }
}

/** A small picture of an outline, in a square of so many px. */
export function Picture({ job, px = SMALL }: { job: Job | null; px?: number }) {
  if (!job) return null;
  const { outer } = job.form, z = outer.map((n) => n.z);
  const size = Math.max(Math.max(...z) - Math.min(...z), 2 * Math.max(...outer.map((n) => n.r)), 1);
  return <Silhouette job={job} k={px / size} />;
}

export function Versions() {
  const box = useRef<HTMLDialogElement>(null);
  const [open, setOpen] = useState(false), [, again] = useState(0);
  useEffect(() => (open ? onKept(() => again((n) => n + 1)) : undefined), [open]);
  const show = () => { keepNow(); setOpen(true); box.current?.showModal(); };
  const take = (v: Found, name: string) => {
    box.current?.close();
    void openJob(v.kept.text, { file: `${name}, ${when(v.entry.at)}` }, v.kept.saved ? "file" : "kept", v.entry.pot);
  };
  return (
    <>
      <button type="button" aria-haspopup="dialog" onClick={show}><Icon name="versions" />{w.keep.versions}</button>
      <dialog ref={box} class="samples versions" aria-label={w.keep.versionsTitle} onClose={closed(() => setOpen(false))} onClick={beside}>
        {open && (
          <div class="group">
            <div class="head"><h2>{w.keep.versionsTitle}</h2><button type="button" onClick={() => box.current?.close()}>{w.close}</button></div>
            <p class="hint">{now().storage ? w.keep.versionsHint : w.keep.refused}</p>
            <List take={take} />
          </div>
        )}
      </dialog>
    </>
  );
}

function List({ take }: { take: (v: Found, name: string) => void }) {
  const rows = pots(), bench = canonical(now().job);
  if (!rows.length) return <p>{w.keep.none}</p>;
  return (
    <>
      {rows.map(({ pot, here, versions }) => (
        <section key={pot}>
          <h3>{versions[0]!.kept.name || w.keep.nameless}{here && <span class="hint"> {w.keep.onBench}</span>}</h3>
          <ul>
            {versions.map((v) => {
              const name = v.kept.name || w.keep.nameless, at = when(v.entry.at), same = here && v.kept.text === bench;
              const notes = [v.kept.saved && w.keep.toFile, v.entry.tab !== me() && w.keep.otherTab, same && w.keep.isHere].filter(Boolean);
              return (
                <li key={v.entry.key}>
                  <span class="stand"><Picture job={outlined(v.kept.text)} /></span>
                  <p><b>{at}</b> {versions.some((o) => o.kept.name !== v.kept.name) && name}
                    <span class={`said-verdict ${v.kept.verdict}`}>{v.kept.verdict && <Icon name={v.kept.verdict as IconName} />}{v.kept.words || w.keep.noVerdict}</span>
                    {notes.length > 0 && <span class="hint">{notes.join(", ")}</span>}</p>
                  <button type="button" disabled={same} aria-label={w.keep.takeOf(name, at)} onClick={() => take(v, name)}>{w.keep.take}</button>
                </li>
              );
            })}
          </ul>
        </section>
      ))}
    </>
  );
}
