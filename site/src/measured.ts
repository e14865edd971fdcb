// How large a box on the page is, in pixels, followed as it changes; [0, 0]
// until it has been laid out.
import type { RefObject } from "preact";
import { useLayoutEffect, useState } from "preact/hooks";

export function useMeasured(box: RefObject<HTMLElement | null>): [number, number] {
  const [size, setSize] = useState<[number, number]>([0, 0]);
  useLayoutEffect(() => {
    const el = box.current!;
    const measure = () => setSize([el.clientWidth, el.clientHeight]);
    const watch = new ResizeObserver(measure);
    watch.observe(el);
    measure();
    return () => watch.disconnect();
  }, []);
  return size;
}
