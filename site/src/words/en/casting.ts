// Words of the Casting panel.

const nth = ["First", "Second", "Third", "Fourth", "Fifth", "Sixth", "Seventh", "Eighth"];

export const casting = {
  // figures
  how: "how", howOf: (label: string) => `How ${label} comes about`, figureSource: "Source",
  more: (n: number) => (n === 1 ? "One more figure" : `${n} more figures`),
  caution: "Caution", cautionsHere: "Take care",
  defaultIs: (v: string) => `unless measured: ${v}`,
  noneSet: "none",

  // settings
  part: "Part", plaster: "Plaster", water: "Water",
  consistency: "Consistency", consistencyHint: "parts of water to 100 of plaster, by weight",
  wall: "Wall of the cast, wet", slipDensity: "Slip weighs", solidsDensity: "Clay weighs, dry and solid",

  // panel
  glance: "In short",
  glanceNames: {
    mixPlaster: "Plaster", mixWater: "Water", minutes: "Slip stays in", slipFill: "Slip to fill", castsPerDay: "Casts a day", liftFull: "Full mold",
  },
  mix: "Plaster, in the order of mixing",
  mixHint: "One batch to a line. Water first, then sift the plaster into it. Waste is counted in.",
  bucketsOf: "Buckets", inEach: "each",
  total: "Together",
  castTitle: "Slip and the time it stays in",
  wallsTitle: "Wall over time", wallsFaces: "Wall on each of the two faces over time", wanted: "wanted",
  afterMinutes: "What wall after",
  laterTitle: "Casts of one day",
  laterLine: (i: number, m: string) => `${nth[i] ?? `No. ${i + 1}`} cast ${m}`,
  laterNone: "One cast wets this mold too far for a second on the same day.",
  slipIn: "Weighed as", slipUnits: { ml: "g per ml", litre: "g per litre", pint: "oz per imperial pint" },
  trialsTitle: "Your trial casts",
  trialsHint: "Cut a trial across and measure its wall wet. With several, the rate is fitted to all of them and their spread is told.",
  trial: (i: number) => `Trial ${i}`, trialWall: "Wall, mm", trialMinutes: "Time, min",
  addTrial: "Add a trial", removeTrial: (i: number) => `Remove trial ${i}`,
  trialAdded: "trial added", trialRemoved: "trial removed",
  potTitle: "The cast and the pot",
  forceTitle: "Bands and lifting",
  shrinkTitle: "Shrinkage, from test bars",
  barsHint: "Mark a length on a bar and measure it wet, dry and fired, in any one unit. ASTM C326 asks for ten bars; one is better than none.",
  bar: (i: number) => `Bar ${i}`, barLength: (i: number, when: string) => `Bar ${i}, ${when}`, barNames: { wet: "Wet", dry: "Dry", fired: "Fired" },
  addBar: "Add a bar", removeBar: (i: number) => `Remove bar ${i}`,
  barsResult: (d: string, f: string, t: string) => `Drying ${d}, firing ${f}, total ${t}.`,
  barsSpread: (s: string, n: number) => `The totals of ${n} bars spread by ${s}.`,
  barsUse: "Use these percentages", barsUsed: "shrinkage from test bars", barsSaid: "Shrinkage from test bars is in use.",
  barsInUse: "These are the percentages in use.",
  ownTitle: "Your own measurements",
  ownHint: "Everything works with what stands here. Put in your own figure once you have measured it.",
  ownGroups: {
    clay: "Clay and cast", mix: "Mixing plaster", data: "From the plaster maker's data sheet", water: "Water and drying",
    pot: "Pot in use", bands: "Bands", lift: "The lift",
  },
  own: {
    castMoisture: ["Water in a fresh cast", "% of wet mass"], lossOnIgnition: ["Lost in firing", "% of dry mass"],
    waste: ["Plaster for waste", "%"], bucket: ["Bucket holds", "ml"], bucketFill: ["Filled to at most", "%"],
    publishedWetDensity: ["Density of the mix", "g/ml"], absorption: ["Dry plaster takes up", "% of dry mass"],
    settingExpansion: ["Expands as it sets", "%"],
    halfRateWater: ["Draws half as fast at", "% of dry mass"], dryingRate: ["Dries by", "g/cm² min"],
    laterCastSlowdown: ["Each later cast takes", "% longer"],
    glaze: ["Fired glaze, thickness", "mm"], glazeDensity: ["Fired glaze weighs", "g/ml"], fillLine: ["Fill line under the brim", "mm"],
    bandTension: ["One band pulls", "N"], bandSafety: ["Safety of bands", "times"],
    reach: ["Hands from the ankles", "cm"], hands: ["Hands above the floor", "cm"], travel: ["Height of the lift", "cm"], twist: ["Turn of the body", "°"],
  } as const,
};
