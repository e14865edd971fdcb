// Jedes deutsche Wort der Seite, als eine Tabelle. Die Fachworte sind aus dem
// Gedächtnis, ohne Quelle.
import type { Words } from "../like";
import { casting } from "./casting";
import { classroom } from "./class";
import { drawing } from "./drawing";
import { form } from "./form";
import { guide } from "./guide";
import { help } from "./help";
import { keep } from "./keep";
import { page } from "./page";
import { parts } from "./parts";
import { reading } from "./reading";
import { release } from "./release";
import { sheets } from "./sheets";
import { shelf } from "./shelf";
import { tooling } from "./tooling";
import { trace } from "./trace";
import { verdict } from "./verdict";

export const de: Words = {
  ...page, ...verdict, ...drawing, ...form, ...release, ...parts, ...tooling, ...casting, ...sheets, ...shelf, trace, keep, class: classroom, help, guide, reading,
};
