// The packed core, which stands last in the page as text, in pieces: each goes to
// the worker as soon as the browser has read it, so that unpacking and compiling
// run while the rest is still being read. The text stays in the page alone, for
// another worker, and no copy of it is kept. Other packed text is unpacked here.
import { decode } from "./pairs";

/** The text that stands packed in the page under an id. */
export function unpacked(id: string): Promise<string> {
  const packed = decode(document.getElementById(id)!.textContent!.trim());
  return new Response(new Blob([packed]).stream().pipeThrough(new DecompressionStream("gzip"))).text();
}

const pieces = () => document.querySelectorAll("script.core");

/** Gives every piece in its order, those that are not read yet as they come, and
 *  then null. */
export function feed(give: (piece: string | null) => void): void {
  let given = 0;
  const look = () => {
    const all = pieces(), loaded = document.readyState !== "loading";
    // one that another element follows has been read to its end
    for (; given < (loaded ? all.length : all.length - 1); given++) give(all[given]!.textContent!);
    if (!loaded) return;
    watch.disconnect();
    document.removeEventListener("DOMContentLoaded", look);
    give(null);
  };
  const watch = new MutationObserver(look);
  watch.observe(document.body, { childList: true });
  document.addEventListener("DOMContentLoaded", look);
  look();
}
