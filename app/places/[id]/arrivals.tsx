'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { useScans } from '@/app/_scan/use-scans';
import { Status } from '@/app/_ui/status';
import { sendJson } from '../../sets/_parts/send-json';
import styles from './place.module.css';

interface Arrival {
  key: string;
  what: string;
  /** `null` while it is on its way to the server. */
  refusal: string | null | undefined;
}

/** Puts in this place whatever is scanned: sets by their label, pouches by theirs. */
export function Arrivals({ place }: { place: { id: string; name: string } }) {
  const router = useRouter();
  const [arrivals, setArrivals] = useState<Arrival[]>([]);

  async function put(key: string, what: string, body: { setId: string } | { packId: string }) {
    setArrivals((before) =>
      [{ key, what, refusal: undefined }, ...before.filter((one) => one.key !== key)].slice(0, 20),
    );
    const settle = (refusal: string | null) =>
      setArrivals((before) => before.map((one) => (one.key === key ? { ...one, refusal } : one)));
    try {
      const answer = await sendJson(`/api/v1/places/${place.id}/arrivals`, body);
      settle(answer.ok ? null : answer.sentence);
      router.refresh();
    } catch {
      settle('That did not reach the server: scan it again.');
    }
  }

  useScans(
    ({ id, meaning }) => {
      if (meaning.kind === 'place') {
        router.push(`/places/${meaning.placeId}`);
        return 'taken';
      }
      if (meaning.kind === 'set') put(id, meaning.code, { setId: meaning.setId });
      else if (meaning.kind === 'pack' && meaning.setId !== null)
        put(id, meaning.number, { setId: meaning.setId });
      else if (meaning.kind === 'pack') put(id, meaning.number, { packId: meaning.packId });
      else return 'passed';
      return 'taken';
    },
    { takes: 'understood' },
  );

  return (
    <div aria-live="polite">
      {arrivals.length === 0 ? (
        <p className={styles.soft}>Nothing scanned yet. Scan another place’s label to go on there.</p>
      ) : (
        <ul className={styles.list} aria-label={`Put in ${place.name} just now`}>
          {arrivals.map(({ key, what, refusal }) => (
            <li key={key}>
              <strong>{what}</strong>
              {refusal === undefined ? (
                <Status tone="unknown">being put on record</Status>
              ) : refusal === null ? (
                <Status tone="good">lies here now</Status>
              ) : (
                <>
                  <Status tone="stop">not moved</Status>
                  <span>{refusal}</span>
                </>
              )}
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}
