// The other ways in, in real Chromium: paper sketches, WebP, a picture that is
// pasted, the phone's camera, the focal length that a camera noted; and tracing
// by keys alone, and as axe-core sees it, in both themes.
import assert from "node:assert/strict";
import { planned, until } from "./browser.mjs";
import { accessible, pages } from "./onpage.mjs";
import { choose, outlined, photo, rmsOf, savedJob, settled } from "./trace-help.mjs";

const onPage = pages();
const vase = (z) => 44 + 16 * Math.sin((z - 20) / 27); // of pot.pov and sketch.mjs
const found = (page) => page.locator(".quality");
const take = (page) => page.getByRole("button", { name: "Take this form" });

async function typed(page, label, text) {
  const field = page.getByLabel(label, { exact: true });
  await field.fill(text);
  await field.blur();
  await settled(page);
}

/** A photo in another format, coded by the browser. */
const coded = async (page, name, type) => Buffer.from(await page.evaluate(async ([bytes, kind]) => {
  const b = await createImageBitmap(new Blob([new Uint8Array(bytes)])), c = new OffscreenCanvas(b.width, b.height);
  c.getContext("2d").drawImage(b, 0, 0);
  return [...new Uint8Array(await (await c.convertToBlob({ type: kind, quality: 0.95 })).arrayBuffer())];
}, [[...photo(name)], type]));

for (const [name, limit] of [["sketch-both.png", 0.3], ["sketch-half.png", 0.6]]) {
  onPage(`${name}: a pencil line on paper becomes the form it was drawn from`, async (page) => {
    await choose(page, name, photo(name), "Choose a picture", "image/png");
    await page.locator(".drawing.picture").waitFor();
    await page.getByLabel("The picture is").selectOption("sketch");
    await typed(page, "Its length", "170");
    await found(page).waitFor();
    await settled(page);
    await take(page).click();
    await planned(page);
    const { form } = await savedJob(page), rms = rmsOf(form.traced.contour, vase, 6, 160);
    assert.ok(rms < limit, `rms ${rms} mm`);
  });
}

onPage("WebP is traced like any picture", async (page) => {
  await choose(page, "vase.webp", await coded(page, "vase-1000.jpg", "image/webp"), "Choose a picture", "image/webp");
  await settled(page);
  await typed(page, "Its length", "170");
  await until(() => found(page).innerText(), /170\.0 mm high, 1(19|20)\.\d mm across/);
});

onPage("a picture on the clipboard is pasted", async (page) => {
  await page.evaluate((bytes) => {
    const data = new DataTransfer();
    data.items.add(new File([new Uint8Array(bytes)], "image.png", { type: "image/png" }));
    document.body.dispatchEvent(new ClipboardEvent("paste", { clipboardData: data, bubbles: true }));
  }, [...await coded(page, "vase-1000.jpg", "image/png")]);
  await settled(page);
  await typed(page, "Its length", "170");
  await until(() => found(page).innerText(), /170\.0 mm high/);
});

onPage("a photo is asked of the phone's camera, the one that looks away", async (page) => {
  const [picker] = await Promise.all([page.waitForEvent("filechooser"), page.getByRole("button", { name: "Take a photo" }).click()]);
  const input = await picker.element().getAttribute("capture");
  assert.equal(input, "environment");
  assert.equal(await picker.element().getAttribute("accept"), "image/*");
  await picker.setFiles({ name: "now.jpg", mimeType: "image/jpeg", buffer: photo("vase-1000.jpg") });
  await settled(page);
}, { width: 390, height: 800, hasTouch: true, isMobile: true });

onPage("the focal length in a camera's note gives the distance", async (page) => {
  // The frame of the picture is 250 mm high in the plane of the axis, 1000 mm away (testdata/photos),
  // so the focal length is 4 heights of the picture: of 800 px, over the diagonal of 1000 px,
  // 3.2 diagonals of 43.27 mm of film (ISO 1007), 138 mm. Tag A405 in an Exif block (CIPA DC-008).
  const u16 = (v) => v.toString(16).padStart(4, "0"), u32 = (v) => v.toString(16).padStart(8, "0");
  const tiff = "4d4d002a" + u32(8) + u16(1) + "8769" + u16(4) + u32(1) + u32(26) + u32(0) + u16(1) + "a405" + u16(3) + u32(1) + u16(138) + "0000" + u32(0);
  const body = "457869660000" + tiff, jpeg = photo("vase-1000.jpg");
  await outlined(page, "noted.jpg", Buffer.concat([jpeg.subarray(0, 2), Buffer.from("ffe1" + u16(body.length / 2 + 2) + body, "hex"), jpeg.subarray(2)]));
  await typed(page, "Its length", "170");
  await found(page).waitFor();
  await until(async () => {
    const m = /([\d ,.]+)\smm/.exec((await found(page).locator(".hint").last().innerText()).replaceAll(/[\u00a0\u202f]/g, " "));
    return Math.abs(Number(m?.[1].replaceAll(/[ ,]/g, "")) - 1000) < 25;
  }, "true");
});

onPage("by keys alone: from the picture on the page to the form", async (page) => {
  await outlined(page, "vase-second.jpg");
  const bench = page.locator(".drawing.picture");
  await bench.focus();
  for (const k of ["ArrowLeft", "Shift+ArrowLeft", "Enter"]) await page.keyboard.press(k);
  await settled(page);
  const reach = async (name, role = "textbox") => {
    const target = role === "button" ? page.getByRole("button", { name }) : page.getByLabel(name, { exact: true });
    await target.waitFor();
    for (let i = 0; i < 80; i++) {
      if (await target.evaluate((e) => e === document.activeElement)) return;
      await page.keyboard.press("Tab");
    }
    throw new Error(`${name} is not reached by Tab`);
  };
  await reach("Its length");
  await page.keyboard.type("170");
  await page.keyboard.press("Enter");
  await found(page).waitFor();
  await settled(page);
  await page.locator(".take:not([disabled])").waitFor();
  await reach("Take this form", "button");
  await page.keyboard.press("Enter");
  await planned(page);
  await until(async () => Boolean((await savedJob(page)).form.traced), "true");
});

for (const colorScheme of ["light", "dark"]) {
  onPage(`axe finds nothing while a picture is traced and behind the profile, ${colorScheme}`, async (page) => {
    const look = (when) => accessible(page, when);
    await outlined(page, "vase-1000.jpg");
    await look("outlined");
    await typed(page, "Its length", "170");
    await found(page).waitFor();
    await page.getByRole("button", { name: "Brush away" }).click();
    await page.getByLabel("Brush, share of the width").waitFor();
    for (const d of await page.locator("#tabpanel details:not([open]) > summary").all()) await d.click();
    await look("traced, all open");
    await take(page).click();
    await planned(page);
    await page.locator(".behind-picture").waitFor();
    await look("behind the profile");
  }, { colorScheme, bypassCSP: true });
}
