// The bench in space: the mold closed or taken apart, its cast inside, or the
// printed kit laid out. What is seen is told in a table as well; where the
// browser cannot draw in space, the table stands alone.
import { useEffect, useLayoutEffect, useRef, useState } from "preact/hooks";
import { apart, way } from "../apart";
import type { Plan } from "../contract";
import { show, withUnit } from "../numbers";
import { look as lookOf } from "../parts-look";
import { lookAt, now } from "../state";
import { chosen } from "../verdict";
import { language, w } from "../words";
import { load, make, type Made } from "./load";
import { follow, home, type Orbit, pressed, turned, zoomed } from "./orbit";
import type { Body, Space } from "./scene";

const CLAY = "#a07a60", REST = 150;

export function SpaceView({ plan }: { plan: Plan }) {
  const canvas = useRef<HTMLCanvasElement>(null), labels = useRef<HTMLDivElement>(null);
  const space = useRef<Space | null>(null), orbit = useRef<Orbit>(home);
  const [made, setMade] = useState<Made | null>(null), [bad, setBad] = useState(""), [started, setStarted] = useState(false);
  const { look, planned } = now(), { what, cut } = look;
  const put = (o: Orbit) => { orbit.current = o; space.current?.look(o); };

  useLayoutEffect(() => {
    const c = canvas.current!;
    let gone = false, unfollow = () => {};
    const measure = () => space.current?.size(c.clientWidth, c.clientHeight);
    const watch = new ResizeObserver(measure);
    load().then((open) => {
      if (gone) return;
      space.current = open(c, labels.current!);
      space.current.look(orbit.current);
      watch.observe(c);
      unfollow = follow(c, () => orbit.current, put);
      setStarted(true);
    }).catch((e: unknown) => { if (!gone) setBad(e instanceof Error ? e.message : String(e)); });
    return () => { gone = true; watch.disconnect(); unfollow(); space.current?.close(); };
  }, []);

  useEffect(() => {
    if (!planned) return;
    let gone = false;
    const wait = setTimeout(() => { void make(planned, what).then((m) => { if (!gone) setMade(m); }); }, REST);
    return () => { gone = true; clearTimeout(wait); };
  }, [planned, what, language]);

  useEffect(() => {
    if (!made || !space.current) return;
    const scheme = chosen(plan);
    space.current.show(made.files.map((f, i): Body => {
      const part = scheme.parts.find((p) => p.name === f.part), l = part && lookOf(part.name);
      return { key: f.kind === "plaster" ? f.part : f.name, bytes: made.blobs[i]!, colour: l?.colour ?? CLAY, label: l?.letter ?? "", pull: part && f.kind !== "cast" ? part.pull : null };
    }), made.what === "kit");
  }, [made, started]);

  const state = apart(plan, chosen(plan), look), waits = made?.what !== what; // a changed form bends what stands; other things are another picture
  useEffect(() => {
    const by = new Map<string, number>();
    for (const part of chosen(plan).parts) by.set(part.name, (state.gone.get(part.name) ?? 0) * way(part, plan.size.height + 40, plan.size.maxRadius + 30));
    space.current?.move(by);
  }, [made, started, look.apart, look.body]);
  useEffect(() => { space.current?.cut(cut); }, [made, started, cut]);

  return (
    <div class="space">
      <div class="drawing">
        <canvas
          ref={canvas} tabIndex={0} role="img" aria-label={w.spaceAlt[what]} aria-describedby="space-keys"
          onKeyDown={(e) => {
            const to = pressed(orbit.current, e.key, e.shiftKey);
            if (!to || e.ctrlKey || e.metaKey || e.altKey) return;
            e.preventDefault();
            put(to);
          }}
        />
        <div class="labels" ref={labels} aria-hidden="true" />
        {(bad || made?.fault || waits) && <p class="said" role="status">{bad ? `${w.spaceNone} ${w.browserSays(bad)}` : waits ? w.spaceWait : made!.fault}</p>}
        <div class="turn" role="group" aria-label={w.spaceTurn}>
          {([["←", w.turnLeft, () => turned(orbit.current, 0.25, 0)], ["→", w.turnRight, () => turned(orbit.current, -0.25, 0)],
            ["↑", w.turnUp, () => turned(orbit.current, 0, 0.25)], ["↓", w.turnDown, () => turned(orbit.current, 0, -0.25)],
            ["+", w.nearer, () => zoomed(orbit.current, 1.25)], ["−", w.farther, () => zoomed(orbit.current, 0.8)]] as const).map(([sign, words, to]) => (
            <button key={words} type="button" aria-label={words} title={words} onClick={() => put(to())}>{sign}</button>
          ))}
          <button type="button" onClick={() => put(home)}>{w.turnHome}</button>
        </div>
      </div>
      <p class="away" id="space-keys">{w.spaceKeys}</p>
      <Bar />
      {made && <Table plan={plan} made={made} />}
    </div>
  );
}

/** What is shown, and where it is cut. */
function Bar() {
  const { what, cut } = now().look;
  return (
    <div class="spacebar">
      <div class="choices" role="group" aria-label={w.spaceShows}>
        {(["mold", "kit"] as const).map((k) => <button key={k} type="button" aria-pressed={what === k} onClick={() => lookAt({ what: k })}>{w.spaceOf[k]}</button>)}
      </div>
      {what === "mold" && (
        <div class="choices">
          <button type="button" aria-pressed={cut !== null} onClick={() => lookAt({ cut: cut === null ? 0 : null })}>{w.cut}</button>
          {cut !== null && <input type="range" min={-1} max={1} step={0.02} value={cut} aria-label={w.cutAt} onInput={(e) => lookAt({ cut: Number(e.currentTarget.value) })} />}
        </div>
      )}
    </div>
  );
}

function Table({ plan, made }: { plan: Plan; made: Made }) {
  const parts = chosen(plan).parts;
  return (
    <details class="rows">
      <summary>{w.spaceTable}</summary>
      <table>
        <thead><tr><th scope="col">{w.spaceBody}</th><th scope="col">{w.spacePull}</th><th scope="col" class="num">{w.spaceSize}</th></tr></thead>
        <tbody>
          {made.files.map((f) => {
            const part = parts.find((p) => p.name === f.part);
            const pull = f.kind === "plaster" && part ? w.apartPulls[part.pull[2] < 0 ? "down" : part.pull[2] > 0 ? "up" : "out"] : "";
            return (
              <tr key={f.name}>
                <th scope="row">{f.kind === "plaster" ? w.partName(f.part) : f.kind === "cast" ? w.spaceCast : f.label}</th>
                <td>{pull}</td>
                <td class="num">{f.size.map((x) => show(x, 0)).join(" × ")}, {withUnit(f.volume, "ml", 0)}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </details>
  );
}
