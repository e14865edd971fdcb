// How the wall grows: one bar a time, as thick as the wall is against the others,
// with the wanted wall among them; and how later casts of a day slow down.
import type { Figures } from "../../contract";
import { withUnit } from "../../numbers";
import { w } from "../../words";

export function Walls({ casting, wanted, faces }: { casting: Figures; wanted: number; faces: boolean }) {
  const rows = [
    ...casting.walls.filter((x) => Math.abs(x.wall - wanted) > 1e-6).map((x) => ({ ...x, on: false })),
    { minutes: casting["minutes"] as number, wall: wanted, on: true },
  ].sort((a, b) => a.minutes - b.minutes);
  const most = Math.max(...rows.map((r) => r.wall));
  return (
    <table class="walls">
      <caption>{faces ? w.wallsFaces : w.wallsTitle}</caption>
      <tbody>
        {rows.map((r) => (
          <tr key={r.on ? "wanted" : r.minutes} class={r.on ? "on" : ""}>
            <th scope="row" class="num">{withUnit(r.minutes, "min", 0)}</th>
            <td class="bar"><span style={{ width: `${(100 * r.wall) / most}%` }} /></td>
            <td class="num">{r.on && <b>{w.wanted} </b>}{withUnit(r.wall, "mm")}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

export function LaterCasts({ minutes }: { minutes: number[] }) {
  if (minutes.length === 0) return <p>{w.laterNone}</p>;
  return <ol class="later">{minutes.map((m, i) => <li key={i}>{w.laterLine(i, withUnit(m, "min", 0))}</li>)}</ol>;
}
