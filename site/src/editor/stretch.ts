// Which nodes have their rows and handles: all of a profile as people make them,
// a hundred of one that a program wrote, those about the selected node. More
// handles than there are pixels help nobody, and thousands of fields keep the
// page from answering.

const MOST = 150, PAGE = 100;

/** The first node that is shown and the one after the last. */
export function stretch(count: number, node: number | null): [number, number] {
  if (count <= MOST) return [0, count];
  const from = Math.floor(Math.min(node ?? 0, count - 1) / PAGE) * PAGE;
  return [from, Math.min(from + PAGE, count)];
}
