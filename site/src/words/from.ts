// Where something that is opened came from: a file of that name, the link in the
// address, a drop or a paste.

export type From = { file: string } | "link" | "drop" | "paste";
