// The sample pots, for tests that go through all of them; the first is the one
// that a first visit opens on.
import { readdirSync, readFileSync } from "node:fs";

const dir = new URL("../samples/", import.meta.url);
const all = readdirSync(dir).filter((f) => f.endsWith(".json")).sort().map((f) => JSON.parse(readFileSync(new URL(f, dir), "utf8")));
export const samples = [...all.filter((s) => s.name === "Harbour jar"), ...all.filter((s) => s.name !== "Harbour jar")];
