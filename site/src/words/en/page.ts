// Words of the head, the foot and the messages; and those used on every panel.

import type { From } from "../from";

const ways = { link: "the link", drop: "what you dropped", paste: "what you pasted" };
/** What was opened, in the middle of a sentence and at its head. */
const source = (from: From): string => (typeof from === "string" ? ways[from] : from.file);
const large = (from: From): string => (typeof from === "string" ? ways[from].charAt(0).toUpperCase() + ways[from].slice(1) : from.file);

export const page = {
  title: "Moldwright",
  skip: "Skip to the panels",
  language: "Language",
  noScript: "Moldwright works out the mold in this page itself, and needs JavaScript for it. Nothing is sent anywhere.",
  tabs: {
    form: "Form", release: "Release", parts: "Parts", tooling: "Tooling", casting: "Casting", sheets: "Sheets", class: "Class",
  },
  ownPot: "My pot", potName: "Name of the pot",
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
  source, large,
  stepOpened: (from: From) => `Opened ${source(from)}`,
  notOpened: (from: From, why: string) => `${large(from)} was not opened: ${why} The pot on the bench is unchanged.`,
  dropHere: "Drop a picture, a saved job, a drawing or rows of coordinates",
  rowsWait: "Your rows wait in the Form panel. Say which unit they are in.",
  close: "Close", stop: "Stop", working: "Working",

  // the core
  coreStopped: "Stopped. Nothing of your job was lost.",
  coreTooMuch: "This was too much for the core. Your job is kept; change the last thing you did.",
  coreNoStart: "The core does not start in this browser. Save your job, then open the page in a current browser; where it did start before, its file may be damaged: fetch it anew.",
  browserSays: (why: string) => `The browser's own words: “${why}”`,

  // fields
  notNumber: "Write a number, such as 12.5 or 12,5.",
  changed: (label: string) => `${label.toLowerCase()} changed`,
  /** Two texts of which the second says more of the first. */
  pair: (a: string, b: string) => `${a}: ${b}`,
};
