// The sample pots: on a first visit a shelf of silhouettes at the head of the Form
// panel, all to one scale, which can be put away; at any time a window that says
// what each of them shows. The silhouettes are small pictures of the nodes, with
// no claim to the curve that the core makes of them.
import { useRef, useState } from "preact/hooks";
import type { Job, Node } from "./contract";
import { beside, closed } from "./dialogs";
import { Icon } from "./icons";
import { read } from "./files";
import { memo } from "./memo";
import { isNamed, named, samples } from "./samples";
import { now } from "./state";
import { entries } from "./keep/store";
import { w } from "./words";

let away = entries()?.length !== 0 || location.hash.startsWith("#job=");

const nameOf = (s: Job) => w.samples[s.name]![0], shows = (s: Job) => w.samples[s.name]![1];
const take = (s: Job) => void read({ kind: "job", text: JSON.stringify(named(s)) }, () => w.stepOpened({ file: nameOf(s) }));

/** Whether the pot on the bench is the sample still: one that bears its name may have been changed, or traced anew. */
function onBench(s: Job): boolean {
  const { name, form } = now().job;
  if (!isNamed(s, name)) return false;
  const same = (a: Node[] | null | undefined, b: Node[] | null) => (a?.length ?? 0) === (b?.length ?? 0)
    && (a ?? []).every((n, i) => { const o = b![i]!; return n.r === o.r && n.z === o.z && !n.corner === !o.corner; });
  return same(s.form.outer, form.outer) && same(s.form.inner, form.inner);
}

/** Half the slope through a smooth node, as a third of the way to its neighbours. */
function tangent(nodes: Node[], i: number): [number, number] {
  const a = nodes[i - 1], b = nodes[i + 1], n = nodes[i]!;
  if (n.corner) return [0, 0];
  if (!a || !b) return n.r === 0 ? [(nodes[a ? i - 1 : i + 1]!.r - n.r) * (a ? -1 : 1) / 2, 0] : [0, 0];
  return [(b.r - a.r) / 6, (b.z - a.z) / 6];
}

/** Where lines run down the wall, as shares of the radius: flutes, edges of faces. */
function ribs({ kind, count = 0 }: { kind: string; count?: number }): number[] {
  if (kind === "flutes") return [-0.8, -0.45, 0, 0.45, 0.8];
  return kind === "polygon" ? (count === 3 ? [0.15] : [-0.5, 0.5]) : [];
}

/** The pot's outline, both halves, at so many px a mm, with what its wall bears. */
export const Silhouette = memo(({ job, k }: { job: Job; k: number }) => {
  const { outer, section } = job.form;
  const top = Math.max(...outer.map((n) => n.z)), wide = Math.max(...outer.map((n) => n.r));
  const round = (x: number) => Math.round(x * 10) / 10;
  const at = (r: number, z: number) => `${round(k * (wide + r))} ${round(k * (top - z))}`;
  const line = (share: number, nodes = outer) => {
    let d = `M${at(share * nodes[0]!.r, nodes[0]!.z)}`;
    for (let i = 1; i < nodes.length; i++) {
      const a = nodes[i - 1]!, b = nodes[i]!, [ar, az] = tangent(nodes, i - 1), [br, bz] = tangent(nodes, i);
      d += `C${at(share * (a.r + ar), a.z + az)} ${at(share * (b.r - br), b.z - bz)} ${at(share * b.r, b.z)}`;
    }
    return d;
  };
  // a little over the axis, so that the halves leave no gap
  const half = (side: number) => `${line(side)}L${at(-2 * side, outer.at(-1)!.z)}L${at(-2 * side, outer[0]!.z)}Z`;
  const [x, y] = [round(2 * k * wide), round(k * top)];
  return (
    <svg class="silhouette" width={x + 2} height={y + 1} viewBox={`-1 -1 ${x + 2} ${y + 1}`} aria-hidden="true">
      <path d={half(1)} /><path d={half(-1)} />
      {job.form.inner && <path class="rib" d={line(1, job.form.inner) + line(-1, job.form.inner)} />}
      {ribs(section ?? { kind: "" }).map((s) => <path key={s} class="rib" d={line(s)} />)}
      {section?.dimples?.heights.map((z) => [-0.55, 0, 0.55].map((s) => <circle key={`${z} ${s}`} cx={round(k * wide * (1 + s))} cy={round(k * (top - z))} r={k * 4} />))}
    </svg>
  );
});

/** On a first visit: the pots in a row, one touch each. */
export function FirstShelf() {
  const [gone, setGone] = useState(away);
  if (gone) return null;
  const here = samples.find(onBench);
  return (
    <section class="shelf" aria-label={w.shelf}>
      <ul>
        {samples.map((s) => (
          <li key={s.name}>
            <button type="button" aria-pressed={onBench(s)} title={nameOf(s)} aria-label={w.putOn(nameOf(s), shows(s))} onClick={() => take(s)}><Silhouette job={s} k={0.27} /></button>
          </li>
        ))}
      </ul>
      <p>{here ? <><b>{nameOf(here)}.</b> {shows(here)}</> : w.shelfHint}</p>
      <div class="actions">
        <AllSamples label={w.shelfAll} small />
        <button type="button" class="small" onClick={() => { away = true; setGone(true); }}>{w.shelfAway}</button>
      </div>
    </section>
  );
}

/** A button, and the window it opens: every pot with what it shows. */
export function AllSamples({ label, small = false }: { label: string; small?: boolean }) {
  const box = useRef<HTMLDialogElement>(null);
  const [open, setOpen] = useState(false);
  return (
    <>
      <button type="button" class={small ? "small" : ""} aria-haspopup="dialog" data-point={small ? undefined : "samples"} onClick={() => { setOpen(true); box.current?.showModal(); }}>{!small && <Icon name="pots" />}{label}</button>
      <dialog ref={box} class="samples" aria-label={w.shelf} onClose={closed(() => setOpen(false))} onClick={beside}>
        {open && (
          <div class="group">
            <div class="head"><h2>{w.shelf}</h2><button type="button" onClick={() => box.current?.close()}>{w.close}</button></div>
            <p class="hint">{w.shelfHint}</p>
            <ul>
              {samples.map((s) => (
                <li key={s.name}>
                  <button type="button" data-pot={s.name} aria-pressed={onBench(s)} onClick={() => { take(s); box.current?.close(); }}>
                    <span class="stand"><Silhouette job={s} k={0.4} /></span>
                    <b>{nameOf(s)}</b><span class="hint">{shows(s)}</span>
                  </button>
                </li>
              ))}
            </ul>
          </div>
        )}
      </dialog>
    </>
  );
}
