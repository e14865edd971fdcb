// How each mold part looks wherever it is drawn: a colour of Okabe and Ito's
// palette (Color Universal Design, 2008; from memory), a hatching and a letter, so that
// no part is told by colour alone.

export interface Look { letter: string; colour: string; angle: number; gap: number; cross: boolean }

const looks: Record<string, Look> = {
  lower: { letter: "L", colour: "#0072B2", angle: 45, gap: 7, cross: false },
  upper: { letter: "U", colour: "#E69F00", angle: -45, gap: 7, cross: false },
  sideA: { letter: "A", colour: "#009E73", angle: 0, gap: 6, cross: false },
  sideB: { letter: "B", colour: "#CC79A7", angle: 90, gap: 6, cross: false },
  sideC: { letter: "C", colour: "#56B4E9", angle: 20, gap: 6, cross: false },
  sideD: { letter: "D", colour: "#D55E00", angle: -20, gap: 6, cross: false },
  core: { letter: "K", colour: "#F0E442", angle: 45, gap: 8, cross: true },
};

/** The look of a part by its name in the plan: lower, upper, core, or a side
 *  part, whose name ends in its letter. */
export function look(name: string): Look {
  const side = /([A-D])$/.exec(name);
  return looks[side ? "side" + side[1] : name] ?? looks["core"]!;
}

export const key = (name: string): string => look(name).letter;
