'use client';

import { useRouter } from 'next/navigation';
import { useScans } from '../_scan/use-scans';

/** On a screen of many sets: a scanned label opens its set with the next step in focus. What names no set goes its own way. */
export function FollowScans() {
  const router = useRouter();
  useScans(({ meaning }) => {
    const id = meaning.kind === 'set' ? meaning.setId : meaning.kind === 'pack' ? meaning.setId : null;
    if (id === null) return 'passed';
    router.push(`/sets/${id}#next`);
    return 'taken';
  });
  return null;
}
