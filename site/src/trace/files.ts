// Ways in for a picture or a drawing: a file picker or the phone's camera.

/** Lets the user pick one file; with the camera, take a photo where there is one. */
export function pick(accept: string, camera: boolean, use: (file: File) => void): void {
  const input = document.createElement("input");
  input.type = "file";
  input.accept = accept;
  input.hidden = true;
  if (camera) input.setAttribute("capture", "environment");
  document.body.append(input); // some browsers forget one that is not on the page
  input.addEventListener("change", () => {
    const file = input.files?.[0];
    input.remove();
    if (file) use(file);
  });
  input.addEventListener("cancel", () => input.remove());
  input.click();
}

/** Whether a file is to be opened as a picture. */
export const isPicture = (file: File): boolean =>
  (file.type.startsWith("image/") && file.type !== "image/svg+xml") || /\.(jpe?g|png|webp|hei[cf]|gif|bmp|avif)$/i.test(file.name);
