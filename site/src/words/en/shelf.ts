// Words of the sample shelf.

export const shelf = {
  shelf: "The sample shelf",
  shelfHint: "Pots of a workshop that does not exist, one for each way to part a mold. Yours goes on the bench in the same way.",
  shelfAll: "What each one shows", shelfAway: "Put the shelf away",
  shelfOpen: "Sample pots",
  /** What each is called, and what it shows. */
  samples: {
    "Harbour jar": ["Harbour jar", "Two parts, parted at the belly."],
    "Reed beaker": ["Reed beaker", "One part: it tapers all the way to the rim."],
    "Quay dish": ["Quay dish", "Cast solid: a core shapes the inside, slip comes in through the foot."],
    "Skep pot": ["Skep pot", "A closed form: two parts and a hole to fill it by."],
    "Reed-cut cup": ["Reed-cut cup", "Flutes that still let go in one part."],
    "Slate lid": ["Slate lid", "It opens downward, so it is cast upside down, in one part."],
    "Sand amphora": ["Sand amphora", "Two side parts and nothing else: it has no foot."],
    "Heron vase": ["Heron vase", "A waist: two side parts and a lower part."],
    "Skiff vase": ["Skiff vase", "Oval across: two side parts and a lower part."],
    "Cone buoy": ["Cone buoy", "A flat top: two side parts and an upper part."],
    "Trivet vase": ["Trivet vase", "Three faces across: three side parts and a lower part."],
    "Hail beaker": ["Hail beaker", "Dimples in the wall ask for a third side part."],
    "Reel bottle": ["Reel bottle", "Flat at both ends: two side parts, a lower and an upper part."],
    "Dovetail dish": ["Dovetail dish", "A foot that no pull frees: see the trap, then change the form."],
  } as const,
  putOn: (name: string, line: string) => `${name}: ${line}`,
};
