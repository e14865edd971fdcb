// The switch and slider of the picture that stays behind the profile.
import { Check } from "../fields";
import { set } from "../state";
import { w } from "../words";
import { behind } from "./tracing";

export function BehindTools() {
  const b = behind()!, percent = Math.round(b.opacity * 100);
  return (
    <div class="row behind">
      <Check label={w.behindShow} value={b.on} pick={(on) => set({ behind: { ...b, on } })} />
      {b.on && (
        <label class="slider">{w.behindHow}
          <input
            type="range" min={5} max={100} step={5} value={percent} aria-valuetext={`${percent} %`}
            onInput={(e) => set({ behind: { ...b, opacity: Number(e.currentTarget.value) / 100 } })}
          />
        </label>
      )}
    </div>
  );
}
