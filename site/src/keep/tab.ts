// Who this tab is, so that a reload finds its own job again, whatever other tabs
// have done meanwhile. The browser keeps it as long as the tab; where it does
// not, every visit is a new tab.

const KEY = "moldwright.tab";

/** A name that no other tab or pot has. */
export const fresh = (): string => Array.from(crypto.getRandomValues(new Uint8Array(8)), (b) => (b % 36).toString(36)).join("");

interface Tab {
  id: string;
  /** The link this tab has opened or shown: on a reload its own job counts. */
  link: string;
}

function stored(): Tab | null {
  try {
    const t = JSON.parse(sessionStorage.getItem(KEY) ?? "null") as Tab | null;
    return t && /^\w+$/.test(t.id) ? t : null;
  } catch {
    return null;
  }
}

const before = stored();
let tab: Tab = before ?? { id: fresh(), link: "" };

function put(t: Tab): void {
  tab = t;
  try {
    sessionStorage.setItem(KEY, JSON.stringify(t));
  } catch {
    // then a reload is a new visit
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
