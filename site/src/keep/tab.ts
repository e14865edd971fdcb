// Who this tab is, so that a reload finds its own job again, whatever other tabs
// have done meanwhile. It is kept in two places, as long as the tab: a browser may
// lose the tab's storage where it goes away and back in haste, and a new address
// has no state yet. Where neither is kept, every visit is a new tab.

const KEY = "moldwright.tab";

/** A name that no other tab or pot has. */
export const fresh = (): string => Array.from(crypto.getRandomValues(new Uint8Array(8)), (b) => (b % 36).toString(36)).join("");

interface Tab {
  id: string;
  /** The link this tab has opened or shown: on a reload its own job counts. */
  link: string;
}

function stored(): Tab | null {
  let t = (history.state as { tab?: Tab } | null)?.tab ?? null;
  try {
    t = JSON.parse(sessionStorage.getItem(KEY) ?? "null") as Tab | null ?? t;
  } catch {
    // then the state of the address has it
  }
  return t && /^\w+$/.test(t.id) ? t : null;
}

const before = stored();
let tab: Tab = before ?? { id: fresh(), link: "" };

function put(t: Tab): void {
  tab = t;
  try {
    sessionStorage.setItem(KEY, JSON.stringify(t));
    history.replaceState({ tab: t }, "");
  } catch {
    // then a reload may be a new visit
  }
}
put(tab);

/** Whether this tab was there before: a reload, or back from another page. */
export const returns = before !== null;
export const me = (): string => tab.id;
export const opened = (): string => tab.link;
export const putLink = (link: string): void => put({ ...tab, link });

/** A copy of a tab has the name of the one it was copied from, and takes another. */
export const rename = (): void => put({ ...tab, id: fresh() });

/** Puts another address in the bar; the tab stays known by its state. */
export const showAddress = (to: string): void => history.replaceState(history.state, "", to);
