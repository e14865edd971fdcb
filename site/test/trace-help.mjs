// Help for the tests of tracing: pictures in by the file picker, by drop, and
// made on the page.
import { readFileSync } from "node:fs";
import { downloaded, idle } from "./browser.mjs";

export const photo = (name) => readFileSync(new URL(`../../testdata/photos/${name}`, import.meta.url));

/** Gives a file to the page as a person does: press the button, pick the file. */
export async function choose(page, name, buffer, button = "Choose a picture", mimeType = "image/jpeg") {
  const [picker] = await Promise.all([page.waitForEvent("filechooser"), page.getByRole("button", { name: button }).click()]);
  await picker.setFiles({ name, mimeType, buffer });
}

/** Opens a photo and waits for its outline. */
export async function outlined(page, name, buffer = photo(name)) {
  await choose(page, name, buffer);
  await settled(page);
}

/** Waits until what is asked of the picture has been answered. */
export async function settled(page) {
  await page.locator(".drawing.picture").waitFor();
  await idle(page);
  await page.waitForFunction(() => !document.querySelector(".tracing-busy") && (document.querySelector(".overlay .found")?.getAttribute("d") || document.querySelector(".said-fault")));
}

/** The outline on the picture, in its pixels. */
export const outline = (page) => page.evaluate(() => (document.querySelector(".overlay .found")?.getAttribute("d") ?? "")
  .split(/[MLZ]/).filter(Boolean).map((p) => p.split(" ").map(Number)));

/** A place of the picture, in its pixels, as a place on the screen. */
export const onScreen = (page, x, y) => page.evaluate(([px, py]) => {
  const g = document.querySelector(".drawing.picture image").getScreenCTM();
  return { x: g.a * px + g.e, y: g.d * py + g.f };
}, [x, y]);

export async function touchPicture(page, x, y) {
  const p = await onScreen(page, x, y);
  await page.mouse.click(p.x, p.y);
  await settled(page);
}

/** The job as Save writes it. */
export async function savedJob(page) {
  const d = await downloaded(page, () => page.getByRole("button", { name: "Save" }).click());
  return JSON.parse(readFileSync(d.path, "utf8"));
}

/** Root mean square of the traced contour against a true radius, from a to b mm. */
export function rmsOf(contour, radius, a, b) {
  let sum = 0, n = 0;
  for (let i = 0; i + 1 < contour.length; i++) {
    const [r0, z0] = contour[i], [r1, z1] = contour[i + 1];
    if (z1 <= z0 || z0 < a || z1 > b) continue;
    sum += ((r0 + r1) / 2 - radius((z0 + z1) / 2)) ** 2 * (z1 - z0);
    n += z1 - z0;
  }
  if (n < (b - a) * 0.8) throw new Error(`the contour covers only ${n} of ${b - a} mm`);
  return Math.sqrt(sum / n);
}
