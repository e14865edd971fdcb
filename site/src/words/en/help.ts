// Words of the help in place: each word of the trade in one to three sentences,
// the forms in which the page writes it, and where it stands in the job on the
// bench. Several speak of a practice of workshops, none claims a source.

export const help = {
  open: "Help",
  title: "Help",
  ask: (word: string) => `What is “${word}”?`,
  here: "On the bench:",
  kinds: "What they are:",
  allWords: "All words",
  wordsTitle: "Words of the trade",
  wordsHint: "A word with a dotted line under it, and every question mark, can be asked where it stands.",
  find: "Find a word",
  foundNone: "No word like that is used on this page.",
  groups: { release: "Letting go", mold: "Parts of the mold", kit: "What is printed", casting: "Plaster, slip and cast", form: "Form and size" },

  // where a word stands in this job; values come formatted, with their units
  hereAbove: (z: string) => `${z} above the foot`,
  hereBetween: (a: string, b: string) => `from ${a} to ${b} above the foot`,
  hereNone: "none",
  hereNoSeam: "none: the mold is one part",
  hereParts: (n: number) => (n === 1 ? "one part" : `${n} parts`),
  hereAsked: (draft: string) => `at least ${draft} asked for`,
  hereDeepest: (depth: string, z: string) => `${depth} deep, ${z} above the foot`,
  hereShare: (share: string, allowed: string) => `${share} of the worst part, ${allowed} allowed`,
  hereNatches: (n: number, across: string) => (n === 1 ? `one dome, ${across} across` : `${n} domes, the first ${across} across`),
  hereHigh: (h: string) => `${h} high`,
  hereAcross: (d: string) => `${d} across`,
  hereCount: (n: number) => (n === 1 ? "one piece" : `${n} pieces`),
  hereStaves: (n: number) => (n === 1 ? "one round each positive" : `${n} round each positive`),
  hereWater: (n: string) => `${n} parts of water to 100 of plaster`,
  hereWall: (wall: string, minutes: string) => `${wall} wet, after ${minutes}`,
  hereBlock: (wall: string, base: string) => `wall at least ${wall}, base ${base}`,
  hereTimes: (factor: string) => `${factor} times the fired size`,
  hereForce: (force: string) => `they hold against ${force}`,
  hereLift: (mass: string) => `hold down at least ${mass}`,
  hereHeld: (volume: string) => `${volume} held`,

  terms: {
    pull: {
      name: "pull", forms: ["pull", "pulls"],
      says: ["The straight way in which a part of the mold leaves the pot. A lower part is pulled down, an upper part up, a side part outward."],
    },
    draft: {
      name: "draft", forms: ["draft"],
      says: ["The slope that lets a part leave: the angle between the wall and the pull. Above 0° the part comes free at once, at 0° it rubs, below 0° it is held.", "Common practice with rigid plaster on a rigid positive: 1 to 2° wanted, 3 to 5° comfortable."],
    },
    catch: {
      name: "catch, undercut", forms: ["catch", "catches", "undercut", "undercuts"],
      says: ["A place where the pot stands in the way of a part that is pulled off. Its depth is the shift across the pull that would free the plaster.", "Neither plaster nor print gives way: the form must change there, or another part must be pulled another way."],
    },
    rub: {
      name: "rub", forms: ["rub", "rubs", "rubbing"],
      says: ["A wall so upright that the part scrapes along it instead of coming free at once. A part is said to rub when too large a share of its wall has less than the least draft."],
    },
    trap: {
      name: "trap", forms: ["trap", "traps"],
      says: ["Space beside the pot that no pull frees, neither down, up nor outward. Plaster in it can never be drawn out: the form must change."],
    },
    letGo: {
      name: "shrinkage at release", forms: ["leather-hard"],
      says: ["By the time it is leather-hard, stiff but still damp, the cast has shrunk a little and stands off the plaster. A catch no deeper than that is forgiven; the rigid positive forgives nothing."],
    },
    ripple: {
      name: "ripple", forms: ["ripple", "ripples"],
      says: ["A printed wall is rippled by its layers, and each ripple is a small undercut of its own. Finer layers, sanding along the pull or a few coats of sealer make it smooth."],
    },
    ghost: {
      name: "nearest form, ghost line", forms: ["nearest form", "ghost line"],
      says: ["The form closest to yours that lets go. Only radii change, and as little as they can. The broken line on the drawing is that form."],
    },
    pocket: {
      name: "pocket", forms: ["pocket", "pockets"],
      says: ["A place that keeps air when slip is poured in, or slip when the mold is turned over. Tilt or roll the mold, or vent the place."],
    },
    partingLine: {
      name: "parting line", forms: ["parting line", "parting lines", "parting height", "parting heights"],
      says: ["The line on the pot where two parts of the mold meet: here one pull ends and the next begins."],
    },
    seam: {
      name: "seam", forms: ["seam", "seams"],
      says: ["The joint between two parts, and the ridge that it leaves on the cast. It always shows: lay it along an edge of the form, and trim it while the clay is unfired."],
    },
    lower: { name: "lower part", forms: ["lower part"], says: ["The part of the mold under the pot. It is pulled straight down."] },
    upper: { name: "upper part", forms: ["upper part"], says: ["The part of the mold over the pot. It is pulled straight up."] },
    side: {
      name: "side part", forms: ["side part", "side parts"],
      says: ["One of two or more parts that stand round the pot, with the letters A, B, C. Each is pulled outward, along the middle of its share of the round."],
    },
    core: { name: "core", forms: ["core"], says: ["The part that shapes the inside of a pot that is cast solid. It is drawn up out of it."] },
    block: {
      name: "block", forms: ["block"],
      says: ["The plaster body that all parts make up together when the mold is closed. A wall of even thickness casts evenly."],
    },
    natch: {
      name: "natch and socket", forms: ["natch", "natches", "socket", "sockets"],
      says: ["A dome in the face of one part and the hollow for it, the socket, in the face of the other. They stand unequally spaced, so that the mold closes one way only."],
    },
    spare: {
      name: "spare", forms: ["spare"],
      says: ["Room above the rim for more slip, so that the rim stays covered while the level sinks. The clay that forms there is cut off."],
    },
    trimLine: {
      name: "trim line", forms: ["trim line"],
      says: ["Where the clay of the spare is cut off, level with the rim: after draining, when the shine has gone, and before the cast leaves the mold."],
    },
    fillHole: {
      name: "fill hole", forms: ["fill hole"],
      says: ["The way in for the slip where a form has no open rim. Its wall tapers, so that the upper part still lifts off it."],
    },
    drainHole: { name: "drain hole", forms: ["drain hole"], says: ["A hole up through the plaster to the foot of the pot, for slip to run out below."] },
    strap: {
      name: "strap grooves", forms: ["strap grooves", "strap groove"],
      says: ["Grooves round the outside of the side parts. The bands lie in them and cannot slip off."],
    },
    positive: {
      name: "positive", forms: ["positive", "positives"],
      says: ["The printed body that plaster is poured over: the shape that one part of the mold has to take up, made larger by the shrinkage."],
    },
    plug: {
      name: "plug", forms: ["plug"],
      says: ["What shapes the opening above the rim. Mostly it is one with the positive. For a spare that flares in an upper part it is a piece of its own, keyed on the positive, and is drawn out first, before the part is lifted."],
    },
    plate: {
      name: "plate", forms: ["plate"],
      says: ["The flat base of a positive. It shapes the seam face of the part, with its natches, and the staves stand in its groove."],
    },
    stave: {
      name: "cottle stave", forms: ["stave", "staves", "cottle", "cottle staves"],
      says: ["One piece of the cottle, the wall that is set round a positive to hold the wet plaster. One stave alone is drawn off upward; two or more come off sideways."],
    },
    collar: { name: "collar", forms: ["collar"], says: ["A ring that slips over the tops of the staves and holds them together against the push of the wet plaster."] },
    tray: {
      name: "tray", forms: ["tray"],
      says: ["A printed form for a side part, open at the back. Plaster is poured in there and struck off flat; loose boards close its ends and sides."],
    },
    clearance: {
      name: "clearance", forms: ["clearance"],
      says: ["The gap left between pieces that fit into one another. On common printers 0.2 to 0.3 mm a side slides, less sticks."],
    },
    consistency: {
      name: "consistency", forms: ["consistency"],
      says: ["Parts of water to 100 parts of plaster, by weight. More water makes plaster that takes up more water and is weaker.", "Mix all parts of one mold alike, or the wall of the cast differs from part to part."],
    },
    slip: {
      name: "slip", forms: ["slip"],
      says: ["Clay in water, made thin for pouring. The plaster draws water out of it, and clay builds up on the face of the mold."],
    },
    cast: {
      name: "cast", forms: ["cast", "casts"],
      says: ["The clay that is left in the mold when the surplus slip has been poured out: the pot before drying and firing."],
    },
    wall: {
      name: "wall", forms: ["wall"],
      says: ["The thickness of the clay, measured wet. It grows with the square root of the time in the mold: twice as thick takes four times as long."],
    },
    bands: {
      name: "bands", forms: ["bands", "band"],
      says: ["What holds a mold of several parts shut while slip is in it, for slip pushes the parts asunder. Put them on before filling."],
    },
    flotation: {
      name: "flotation", forms: ["flotation"],
      says: ["Wet plaster lifts a hollow positive as water lifts a boat. Fasten it to its plate or weigh it down before pouring."],
    },
    shrinkage: {
      name: "shrinkage", forms: ["shrinkage"],
      says: ["Clay grows smaller in drying and again in firing. Drying is counted on the wet length, firing on the dry length, so that the two percentages cannot just be added."],
    },
    oversize: {
      name: "oversize", forms: ["oversize", "enlarged"],
      says: ["How much larger the mold is than the fired pot, so that the pot comes out right. Clay that shrinks by 12 % needs 113.6 %, not 112 %."],
    },
    testBar: {
      name: "test bar", forms: ["test bar", "test bars", "bar", "bars"],
      says: ["A bar of your own clay with a length marked on it, measured wet, dry and fired. It tells the shrinkage to reckon with."],
    },
    foot: { name: "foot", forms: ["foot"], says: ["What the pot stands on. Every height is measured up from its lowest place."] },
    section: {
      name: "elevation and section", forms: ["elevation", "section"],
      says: ["Left of the axis the pot as seen from the side, right of it the pot and its mold as if cut open through the middle."],
    },
    node: {
      name: "node", forms: ["node", "nodes"],
      says: ["A point that the profile runs through. A corner is sharp, a smooth node is round; between two corners the wall is straight."],
    },
  },
};
