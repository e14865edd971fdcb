// Worte der Tabellen, die sagen, was eine Zeichnung zeigt.

import type { reading as en } from "../en/reading";
import type { Like } from "../like";

export const reading: Like<typeof en> = {
  view: "Tabelle", ask: "Als Tabelle lesen", title: "Was die Zeichnung zeigt, als Tabellen",
  parts: "Teile der Form", part: "Teil", pull: "Zug", from: "Von, mm", to: "Bis, mm", verdict: "Urteil", where: "Jetzt",
  closed: "an seinem Platz", moved: (share) => `${share} seines Weges`, off: "ab", held: (d) => `sitzt um ${d} fest`,
  places: "Stellen", place: "Stelle", height: "Höhe über dem Fuß, mm", measure: "Maß",
  seam: "Naht", trimLine: "Schnittlinie", natch: "Schloss", atAxis: (r, deg) => `${r} von der Achse, bei ${deg} um sie herum`,
  catches: (part) => `Haken, ${part}`, deep: (d) => `${d} tief`, trap: "Falle", air: "Luft bleibt", slip: "Schlicker bleibt", ghost: "größte Änderung zur nächsten Gestalt",
  wall: "Wand, im Formmaß", wallHeight: "Höhe, mm", radius: "Radius, mm", draft: (pull) => `Formschräge, Zug ${pull}`, offLine: "Neben der Linie, mm",
  none: "Nichts ist markiert.",
  figure: "Umriss der Figur", point: "hier gefragt",
};
