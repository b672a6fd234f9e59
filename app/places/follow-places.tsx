'use client';

import { useRouter } from 'next/navigation';
import { useScans } from '../_scan/use-scans';

/** A scanned place opens; everything else goes its own way. */
export function FollowPlaces() {
  const router = useRouter();
  useScans(({ meaning }) => {
    if (meaning.kind !== 'place') return 'passed';
    router.push(`/places/${meaning.placeId}`);
    return 'taken';
  });
  return null;
}
