import { type RefObject, useEffect, useRef } from 'react';
import type { Point } from '../../photo/picture.ts';

/** The wheel goes nearer with Ctrl (as two fingers on a pad do), or once the board has been touched; else the page scrolls. */
export function useWheelZoom(of: RefObject<SVGSVGElement | null>, zoom: (factor: number, at: Point) => void) {
  const latest = useRef(zoom);
  latest.current = zoom;
  useEffect(() => {
    const element = of.current;
    if (element === null) return;
    const turn = (event: WheelEvent) => {
      if (!event.ctrlKey && document.activeElement !== element) return;
      event.preventDefault();
      const frame = element.getBoundingClientRect();
      const lines = event.deltaMode === 1 ? 16 : 1;
      const factor = Math.exp(
        Math.max(-120, Math.min(120, -event.deltaY * lines)) / (event.ctrlKey ? 100 : 300),
      );
      latest.current(factor, [event.clientX - frame.left, event.clientY - frame.top]);
    };
    element.addEventListener('wheel', turn, { passive: false });
    return () => element.removeEventListener('wheel', turn);
  }, [of]);
}
