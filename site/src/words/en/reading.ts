// Words of the tables that tell what a drawing shows.

export const reading = {
  view: "Table", ask: "Read as a table", title: "What the drawing shows, as tables",
  parts: "Parts of the mold", part: "Part", pull: "Pull", from: "From, mm", to: "To, mm", verdict: "Verdict", where: "Now",
  closed: "in its place", moved: (share: string) => `${share} of its way`, off: "off", held: (d: string) => `held by ${d}`,
  places: "Places", place: "Place", height: "Height above the foot, mm", measure: "Measure",
  seam: "seam", trimLine: "trim line", natch: "natch", atAxis: (r: string, deg: string) => `${r} from the axis, at ${deg} around it`,
  catches: (part: string) => `catch, ${part}`, deep: (d: string) => `${d} deep`, trap: "trap", air: "air held", slip: "slip held", ghost: "largest change to the nearest form",
  wall: "Wall, at mold size", wallHeight: "Height, mm", radius: "Radius, mm", draft: (pull: string) => `Draft, pulled ${pull}`, offLine: "Off the line, mm",
  none: "Nothing is marked.",
  figure: "Outline of the figure", point: "asked here",
};
