import { type RefObject, useEffect, useState } from 'react';

/** How wide something stands on the screen, in CSS pixels; 0 before it stands there. */
export function useWidthPx(of: RefObject<Element | null>): number {
  const [width, setWidth] = useState(0);
  useEffect(() => {
    const element = of.current;
    if (element === null) return;
    const watcher = new ResizeObserver(([entry]) => setWidth(entry?.contentRect.width ?? 0));
    watcher.observe(element);
    return () => watcher.disconnect();
  }, [of]);
  return width;
}
