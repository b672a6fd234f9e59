'use client';

import { useEffect, useRef } from 'react';
import { addBadgeHandler } from './handlers';

/**
 * Hands over every badge scanned while this is shown and `active`; the one that came last has it alone. The code is
 * never shown, stored or sent anywhere but to where badges are proven.
 */
export function useBadge(onBadge: (code: string) => void, active = true): void {
  const latest = useRef(onBadge);
  useEffect(() => {
    latest.current = onBadge;
  });
  useEffect(() => (active ? addBadgeHandler((code) => latest.current(code)) : undefined), [active]);
}
