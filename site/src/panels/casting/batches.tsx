// What to weigh out: the buckets of each part, in the order in which they are
// mixed, and the sum.
import type { Plan } from "../../contract";
import { show, withUnit } from "../../numbers";
import { w } from "../../words";
import { Tag } from "../parts";

const grams = (x: number) => withUnit(x, "g", 0);

export function Batches({ plan }: { plan: Plan }) {
  const { batches, mixWater, mixPlaster, buckets } = plan.casting;
  const many = batches.some((b) => b.count > 1);
  return (
    <div>
      <p class="hint">{w.mixHint}</p>
      <table>
        <thead>
          <tr><th scope="col">{w.part}</th><th scope="col" class="num">{w.bucketsOf}</th><th scope="col" class="num">{w.water}{many && `, ${w.inEach}`}</th><th scope="col" class="num">{w.plaster}{many && `, ${w.inEach}`}</th></tr>
        </thead>
        <tbody>
          {batches.map((b) => (
            <tr key={b.part}><th scope="row"><Tag name={b.part} />{w.partName(b.part)}</th><td class="num">{b.count}</td><td class="num">{grams(b.water)}</td><td class="num">{grams(b.plaster)}</td></tr>
          ))}
        </tbody>
        {batches.length > 1 && (
          <tfoot><tr><th scope="row">{w.total}</th><td class="num">{show(buckets as number, 0)}</td><td class="num">{grams(mixWater as number)}</td><td class="num">{grams(mixPlaster as number)}</td></tr></tfoot>
        )}
      </table>
    </div>
  );
}
