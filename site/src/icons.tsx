// The page's small signs, drawn on a 16 px square with one line weight. They
// always stand beside a word.

const paths = {
  clear: "M3 8.5l3.2 3.2L13 4.5",
  rubs: "M2 10c2-5 4-5 6-2s4 3 6-2",
  catches: "M4 4l8 8M12 4l-8 8",
  undo: "M6 4L2.5 7.5 6 11M3 7.5h6.5a4 4 0 010 8H8",
  redo: "M10 4l3.5 3.5L10 11M13 7.5H6.5a4 4 0 000 8H8",
  open: "M2 13V4h4l1.5 2H14v7z",
  save: "M8 2.5v7.5M4.5 7L8 10.5 11.5 7M3 13.5h10",
  versions: "M3 8a5 5 0 105-5c-2 0-3.6 1-4.5 2.5M3 2.5v3h3M8 5.5V8l2 1.5",
  link: "M6.5 9.5l3-3M7 5l1.5-1.5a2.8 2.8 0 014 4L11 9M9 11l-1.5 1.5a2.8 2.8 0 01-4-4L5 7",
  caution: "M8 2L15 14H1zM8 6.5v3.5M8 12v.2",
  language: "M8 1.5a6.5 6.5 0 100 13a6.5 6.5 0 100-13M1.5 8h13M8 1.5c-4 4-4 9 0 13M8 1.5c4 4 4 9 0 13",
  pots: "M5 2h6M6 2c0 2-3 3.5-3 7 0 2.5 1.5 5 3 5h4c1.5 0 3-2.5 3-5 0-3.5-3-5-3-7",
  help: "M8 1.5a6.5 6.5 0 100 13a6.5 6.5 0 100-13M6 6.3a2 2 0 113 1.6c-.7.4-1 .8-1 1.5M8 11.6v.1",
  next: "M3 8h9M8.5 4.5L12 8l-3.5 3.5",
} as const;

export type IconName = keyof typeof paths;

export function Icon({ name }: { name: IconName }) {
  return (
    <svg class="icon" viewBox="0 0 16 16" width="16" height="16" aria-hidden="true">
      <path d={paths[name]} fill="none" stroke="currentColor" stroke-width="1.75" stroke-linecap="round" stroke-linejoin="round" />
    </svg>
  );
}
