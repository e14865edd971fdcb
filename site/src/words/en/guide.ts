// Words of the guided first job: what to do, and what was seen once it is done.

export const guide = {
  title: "A first job",
  offer: "New here? A first job, step by step, takes five minutes. Nothing of yours is lost.",
  start: "Start the first job", notNow: "Not now",
  again: "Five minutes, eight steps, with the real page. Your pot can be brought back at the end.",
  step: (i: number, n: number) => `Step ${i} of ${n}`,
  done: "Done", show: "Show me where", skip: "Skip this step", next: "Next step", leave: "Leave", finish: "Finish",
  over: "That was a whole job: form, parts, tooling, casting, sheets, and a file that brings it all back.",
  left: "The first job is left.",
  back: (name: string) => `Bring back ${name}`, keep: "Keep what is on the bench",
  broughtBack: "the pot brought back from before the first job",
  steps: {
    pot: {
      todo: "Put the Reed beaker on the bench: open Sample pots and choose it.",
      seen: "The line above the drawing is the verdict: one part, and clear. It is always of the pot on the bench.",
    },
    move: {
      todo: "Draw the rim inward: drag its node on the drawing toward the axis, or select it and press − beside its r (by keys: Shift with the left arrow), until one part no longer does.",
      seen: "The wall now leans in near the rim. One lower part alone would catch or rub there, so that the verdict asks for more parts.",
    },
    free: {
      todo: "Make it let go again: open Release, find the nearest form that lets go in one part and take it; or press Undo.",
      seen: "One part is enough again. The nearest form changes the radii as little as it can.",
    },
    apart: {
      todo: "Open Parts and take the mold apart: move the slider under the drawing all the way.",
      seen: "The plaster comes off along its pull and meets nothing. Where it sticks, the slider stops and says so.",
    },
    tooling: {
      todo: "Open Tooling.",
      seen: "These are the pieces to print for this mold. Each prints without supports, and each can be had as a file.",
    },
    wall: {
      todo: "Open Casting and type another wall of the cast, such as 5 mm.",
      seen: "The time in the mold has changed with it, by the square of the wall. Plaster and water to weigh out stand above.",
    },
    sheet: {
      todo: "Open Sheets and download one as PDF.",
      seen: "Print it at 100 % and lay a ruler on the bars before you trust it.",
    },
    save: {
      todo: "Save the job.",
      seen: "The file holds the whole job. Open it here, or on any other machine, to go on.",
    },
  },
};
