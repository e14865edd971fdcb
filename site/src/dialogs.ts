// What all windows of the page share. Its `close` event comes a task after a
// window has closed; one that was opened again before then must not be emptied.

/** For onClose: does its work only if the window is still closed. */
export const closed = (work: () => void) => (e: Event) => { if (!(e.currentTarget as HTMLDialogElement).open) work(); };

/** For onClick: a touch beside the window closes it. */
export const beside = (e: MouseEvent) => { if (e.target === e.currentTarget) (e.currentTarget as HTMLDialogElement).close(); };
