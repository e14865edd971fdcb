// The maker's trial casts, from which the casting rate follows. The first is
// always there; further ones make the rate surer and show its spread.
import { NumberField } from "../../fields";
import { edit, now, settle } from "../../state";
import { w } from "../../words";

export function Trials() {
  const { job } = now();
  const more = job.casting.testCasts;
  const add = () => {
    edit(() => w.trialAdded, "", (j) => { j.casting.testCasts.push({ ...(j.casting.testCasts.at(-1) ?? j.clay.testCast) }); });
    settle();
  };
  const remove = (i: number) => {
    edit(() => w.trialRemoved, "", (j) => { j.casting.testCasts.splice(i, 1); });
    settle();
  };
  return (
    <div>
      <table class="trials">
        <caption>{w.trialsTitle}</caption>
        <thead><tr><td /><th scope="col">{w.trialWall}</th><th scope="col">{w.trialMinutes}</th><td /></tr></thead>
        <tbody>
          <tr>
            <th scope="row">{w.trial(1)}</th>
            <td><NumberField bare length label={`${w.trial(1)}, ${w.trialWall}`} field="clay.testCast.wall" value={job.clay.testCast.wall} set={(j, x) => { j.clay.testCast.wall = x; }} /></td>
            <td><NumberField bare label={`${w.trial(1)}, ${w.trialMinutes}`} field="clay.testCast.minutes" value={job.clay.testCast.minutes} set={(j, x) => { j.clay.testCast.minutes = x; }} /></td>
            <td />
          </tr>
          {more.map((t, i) => (
            <tr key={`${i}/${more.length}`}>
              <th scope="row">{w.trial(i + 2)}</th>
              <td><NumberField bare length label={`${w.trial(i + 2)}, ${w.trialWall}`} field={`casting.testCasts[${i}].wall`} value={t.wall} set={(j, x) => { j.casting.testCasts[i]!.wall = x; }} /></td>
              <td><NumberField bare label={`${w.trial(i + 2)}, ${w.trialMinutes}`} field={`casting.testCasts[${i}].minutes`} value={t.minutes} set={(j, x) => { j.casting.testCasts[i]!.minutes = x; }} /></td>
              <td class="num"><button type="button" class="small" aria-label={w.removeTrial(i + 2)} onClick={() => remove(i)}>−</button></td>
            </tr>
          ))}
        </tbody>
      </table>
      <p class="hint">{w.trialsHint}</p>
      <button type="button" class="small" onClick={add}>{w.addTrial}</button>
    </div>
  );
}
