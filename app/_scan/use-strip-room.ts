import { type RefObject, useEffect } from 'react';

/**
 * Tells the page how much of the window's foot the strip takes while it sticks there (`--strip-room`), so that what else
 * sticks to the foot stands on it, and what is reached by keyboard is scrolled clear of it.
 */
export function useStripRoom(strip: RefObject<HTMLElement | null>): void {
  useEffect(() => {
    const dock = strip.current;
    if (!dock) return;
    const page = document.documentElement;
    const tell = () => {
      const sticks = getComputedStyle(dock).position === 'sticky';
      page.style.setProperty('--strip-room', sticks ? `${dock.offsetHeight}px` : '0px');
    };
    const size = new ResizeObserver(tell);
    size.observe(dock);
    const telling = new MutationObserver(tell);
    telling.observe(dock, { attributeFilter: ['data-tells'] });
    window.addEventListener('resize', tell);
    return () => {
      size.disconnect();
      telling.disconnect();
      window.removeEventListener('resize', tell);
      page.style.removeProperty('--strip-room');
    };
  }, [strip]);
}
