'use client';

import { useRouter } from 'next/navigation';
import { useEffect } from 'react';

/** Others may work on the same kit: the page looks again while it is looked at. */
const EVERY_MS = 8_000;

export function FollowOthers() {
  const router = useRouter();
  useEffect(() => {
    const timer = setInterval(() => {
      if (document.visibilityState === 'visible') router.refresh();
    }, EVERY_MS);
    return () => clearInterval(timer);
  }, [router]);
  return null;
}
