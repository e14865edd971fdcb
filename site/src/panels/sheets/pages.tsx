// The pages of a sheet as they will print, each with its number and its download.
import { w } from "../../words";
import type { SheetName } from "./request";

export interface Page { bytes: Uint8Array; src: string }

/** Sheets that are true to size, where the printer's scale matters. */
export const atScale = (s: SheetName): boolean => s === "profile" || s === "template";

interface Props { pages: Page[]; fresh: boolean; name: string; getSvg: (p: Page, i: number) => void }

export function Pages({ pages, fresh, name, getSvg }: Props) {
  return (
    <ol class="pages" aria-busy={!fresh}>
      {pages.map((p, i) => (
        <li key={p.src}>
          <a href={p.src} target="_blank" rel="noopener" title={w.zoomed}><img src={p.src} alt={w.pageAlt(name, i + 1, pages.length)} /></a>
          {pages.length > 1 && (
            <p><span class="hint">{w.pageOf(i + 1, pages.length)}</span>
              <button type="button" class="small" disabled={!fresh} aria-label={w.svgOf(i + 1)} onClick={() => getSvg(p, i)}>SVG</button></p>
          )}
        </li>
      ))}
    </ol>
  );
}
