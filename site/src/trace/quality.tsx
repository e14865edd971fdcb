// How good the traced profile is, in words with mm: size, band of error, what
// the camera cannot have seen, and what to look into, each with its remedy.
import { show, withUnit } from "../numbers";
import { tracing as t } from "../words";
import type { Found } from "./tracing";

const mm = (x: number, digits = 2) => withUnit(x, "mm", digits);

const sentence = (x: string) => `${x.charAt(0).toUpperCase()}${x.slice(1)}.`;

export function Quality({ found, flat }: { found: Found; /** It is traced from a drawing, in which nothing is farther away. */ flat: boolean }) {
  const q = found.quality, c = found.camera, outer = found.form.outer;
  const zs = found.contour.map((p) => p[1]), rs = found.contour.map((p) => p[0]);
  const high = Math.max(...zs) - Math.min(...zs), wide = 2 * Math.max(...rs);
  return (
    <div class="quality">
      <p class="figure">{t.resultSize(mm(high, 1), mm(wide, 1), outer.length)}</p>
      <p><b>{t.band(`±${mm(q.errorBand)}`)}</b> {t.fit(mm(q.rms), mm(q.max))}{q.symmetryResidual > 0 && ` ${t.sides(mm(q.symmetryResidual))}`}{Math.abs(q.tilt) >= 0.1 && ` ${t.lean(`${show(Math.abs(q.tilt))}°`)}`}</p>
      {!flat && <p class="hint">{c.distance > 0 ? t.cameraLine(mm(c.distance, 0), t.cameraFrom[c.distanceFrom] ?? c.distanceFrom, mm(c.height, 0), t.cameraFrom[c.heightFrom] ?? c.heightFrom) : t.cameraNone}</p>}
      {q.notSeen.length > 0 && (
        <>
          <h4>{t.notSeenTitle}</h4>
          <ul class="plainlist">{q.notSeen.map((g, i) => <li key={i}>{g.zTo - g.zFrom < 0.05 ? sentence(g.why) : t.notSeen(mm(g.zFrom, 1), mm(g.zTo, 1), g.why)}</li>)}</ul>
        </>
      )}
      {q.warnings.length > 0 && (
        <>
          <h4>{t.warnTitle}</h4>
          <ul class="plainlist notes">{q.warnings.map((n) => <li key={n.code}>{n.sentence} <span class="hint">{n.remedy}</span></li>)}</ul>
        </>
      )}
    </div>
  );
}
