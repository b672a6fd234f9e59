'use client';

import { usePathname, useRouter, useSearchParams } from 'next/navigation';
import { useCallback, useEffect, useRef, useState } from 'react';

/**
 * One value kept in the address, e.g. `?q=plate`. The default is left out of the address, so a plain address stays plain.
 *
 * The value changes at once; the address follows. `server: true` also asks the server for the page again (server-side
 * filters), after `delayMs` of quiet; otherwise nothing is fetched and history is only replaced.
 *
 * @param name     the parameter; an empty name keeps the value in memory only
 * @param fallback the value when the parameter is absent
 */
export function useUrlParam(
  name: string,
  fallback = '',
  options: { server?: boolean; delayMs?: number } = {},
): [string, (next: string) => void] {
  const { server = false, delayMs = server ? 120 : 0 } = options;
  const params = useSearchParams();
  const pathname = usePathname();
  const router = useRouter();
  const inAddress = name === '' ? fallback : (params.get(name) ?? fallback);
  const [value, setValue] = useState(inAddress);
  const [seen, setSeen] = useState(inAddress);
  const timer = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);

  // Back, forward and links change the address from outside: follow it, but never overwrite what is being typed.
  if (seen !== inAddress) {
    setSeen(inAddress);
    if (timer.current === undefined) setValue(inAddress);
  }

  useEffect(() => () => clearTimeout(timer.current), []);

  const change = useCallback(
    (next: string) => {
      setValue(next);
      if (name === '') return;
      clearTimeout(timer.current);
      const write = () => {
        timer.current = undefined;
        // Read the address now, not when the render ran: two parameters may change in one tick.
        const latest = new URLSearchParams(window.location.search);
        if (next === fallback) latest.delete(name);
        else latest.set(name, next);
        const query = latest.toString();
        const address = query === '' ? pathname : `${pathname}?${query}`;
        if (server) router.replace(address, { scroll: false });
        else window.history.replaceState(null, '', address);
      };
      if (delayMs > 0) timer.current = setTimeout(write, delayMs);
      else write();
    },
    [name, fallback, pathname, router, server, delayMs],
  );

  return [value, change];
}
