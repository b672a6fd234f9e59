'use client';

import { type RefObject, useEffect } from 'react';

/**
 * Closes something that is open when Escape is pressed or the pointer or focus goes elsewhere.
 *
 * @param within  the element that holds both the opener and what it opens
 * @param close   told `true` when Escape closed it, so that focus can go back to the opener
 */
export function useDismiss(
  open: boolean,
  within: RefObject<HTMLElement | null>,
  close: (byEscape: boolean) => void,
): void {
  useEffect(() => {
    if (!open) return;
    const onKey = (event: KeyboardEvent) => {
      if (event.key === 'Escape') close(true);
    };
    const onElsewhere = (event: Event) => {
      if (event.target instanceof Node && !within.current?.contains(event.target)) close(false);
    };
    document.addEventListener('keydown', onKey);
    document.addEventListener('pointerdown', onElsewhere);
    document.addEventListener('focusin', onElsewhere);
    return () => {
      document.removeEventListener('keydown', onKey);
      document.removeEventListener('pointerdown', onElsewhere);
      document.removeEventListener('focusin', onElsewhere);
    };
  }, [open, within, close]);
}
