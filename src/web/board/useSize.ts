import { type RefObject, useEffect, useState } from 'react';

/** How large something stands on the screen; nothing before it stands there. */
export function useSize(of: RefObject<Element | null>): { widthPx: number; heightPx: number } {
  const [size, setSize] = useState({ widthPx: 0, heightPx: 0 });
  useEffect(() => {
    const element = of.current;
    if (element === null) return;
    const watcher = new ResizeObserver(([entry]) => {
      const { width = 0, height = 0 } = entry?.contentRect ?? {};
      setSize({ widthPx: width, heightPx: height });
    });
    watcher.observe(element);
    return () => watcher.disconnect();
  }, [of]);
  return size;
}
