// The sign of a mark: told by its shape, beside its word. Right is a full disc
// with a tick, close a half disc, not yet a ring, not answered a broken ring.
export function Sign({ mark, size = 18 }: { mark: string; size?: number }) {
  return (
    <svg class={`sign-of ${mark}`} viewBox="0 0 18 18" width={size} height={size} aria-hidden="true">
      <circle cx="9" cy="9" r="7.5" fill={mark === "right" ? "currentColor" : "none"} stroke="currentColor" stroke-width="1.75" stroke-dasharray={mark === "none" ? "2.5 2.2" : undefined} />
      {mark === "right" && <path d="M5.2 9.4l2.7 2.7 5-5.6" class="tick" />}
      {mark === "close" && <path d="M9 1.5a7.5 7.5 0 010 15z" fill="currentColor" />}
    </svg>
  );
}
