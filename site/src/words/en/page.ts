// Words of the head, the foot and the messages; and those used on every panel.

export const page = {
  title: "Moldwright",
  skip: "Skip to the panels",
  tabs: {
    form: "Form", release: "Release", parts: "Parts", tooling: "Tooling", casting: "Casting", sheets: "Sheets", class: "Class",
  },
  potName: "Name of the pot",
  undo: "Undo", redo: "Redo", open: "Open", save: "Save", link: "Copy link",
  undoStep: (s: string) => `Undo: ${s}`,
  redoStep: (s: string) => `Redo: ${s}`,
  undone: (s: string) => `Taken back: ${s}.`,
  redone: (s: string) => `Done again: ${s}.`,
  saved: "Saved", notSaved: "Not saved to a file",
  noStorage: "This browser keeps nothing between visits. Save your job to a file.",
  linkCopied: "Link copied. It carries the whole job and is sent to nobody.",
  linkShown: "The link now stands in the address bar. It carries the whole job.",
  badLink: "The link carries no whole job; it may have been cut short. Ask for it again.",
  stepOpened: (s: string) => `Opened ${s}`,
  notOpened: (s: string, why: string) => `${s} was not opened: ${why} The pot on the bench is unchanged.`,
  theLink: "the link",
  dropped: "what you dropped", pasted: "what you pasted",
  dropHere: "Drop a picture, a saved job, a drawing or rows of coordinates",
  rowsWait: "Your rows wait in the Form panel. Say which unit they are in.",
  close: "Close", stop: "Stop", working: "Working",

  // fields
  notNumber: "Write a number, such as 12.5 or 12,5.",
  changed: (s: string) => `${s} changed`,
};
