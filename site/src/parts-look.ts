// How each mold part looks wherever it is drawn: a colour of Okabe and Ito's
// palette (Color Universal Design, 2008; from memory), a hatching and a letter, so that
// no part is told by colour alone.

export interface Look { letter: string; colour: string; angle: number; gap: number; cross: boolean }

const axial: Record<string, Look> = {
  lower: { letter: "L", colour: "#0072B2", angle: 45, gap: 7, cross: false },
  upper: { letter: "U", colour: "#E69F00", angle: -45, gap: 7, cross: false },
  core: { letter: "K", colour: "#F0E442", angle: 45, gap: 8, cross: true },
};
const side = [["#009E73", 0], ["#CC79A7", 90], ["#56B4E9", 20], ["#D55E00", -20]] as const;

/** The look of a part by its name in the plan: lower, upper, core, or the letter
 *  of a side part. From the fifth side part on, colours come again, hatched
 *  crosswise. */
export function look(name: string): Look {
  const known = axial[name];
  if (known) return known;
  const i = Math.max(0, name.charCodeAt(0) - 65);
  const [colour, angle] = side[i % side.length]!;
  return { letter: name, colour, angle, gap: 6, cross: i >= side.length };
}
