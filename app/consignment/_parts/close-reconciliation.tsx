'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { Button } from '@/app/_ui/button';
import { type Proof, ProofDialog } from '@/app/_ui/proof-dialog';
import { sendJson } from '@/app/sets/_parts/send-json';
import { MEANING_WORDS } from '@/lib/wording/attestations';
import { reconciliationWords as words } from '@/lib/wording/reconciliation';

/** Closes a reconciliation: alone where all is explained, with a second person where a difference stays unexplained. */
export function CloseReconciliation({
  reconciliation: { id, number, revision },
  left,
  silent,
}: {
  reconciliation: { id: string; number: string; revision: number };
  /** Differences nothing explains, and those of which no reason is written. */
  left: number;
  silent: number;
}) {
  const router = useRouter();
  const [asking, setAsking] = useState<'second' | 'me' | null>(null);
  const [second, setSecond] = useState<Proof | null>(null);

  async function close(proof: Proof) {
    const sent = await sendJson(`/api/v1/consignment/reconciliations/${id}`, {
      baseRevision: revision,
      act: { kind: 'close', proof, second: left > 0 ? second : null },
    });
    if (sent.ok) {
      setSecond(null);
      router.refresh();
      return undefined;
    }
    const said = sent.problems.map(({ sentence }) => sentence).filter(Boolean);
    return said.length > 0 ? said.join(' ') : sent.sentence;
  }

  if (silent > 0) return <p>{words.reasonsLacking(silent)}</p>;
  return (
    <>
      {left > 0 ? <p>{words.needsTwo(left)}</p> : <p>What is on record explains every difference.</p>}
      <div>
        <Button kind="primary" onClick={() => setAsking(left > 0 ? 'second' : 'me')}>
          {left > 0 ? `Close ${number} with a second person` : `Close ${number}`}
        </Button>
      </div>
      <ProofDialog
        title={`Close ${number}: the second person`}
        meaning={MEANING_WORDS.iCloseThisReconciliation}
        confirm="I stand for it too"
        open={asking === 'second'}
        onOpen={(open) => setAsking((now) => (open ? 'second' : now === 'second' ? null : now))}
        who="another"
        onProof={async (proof) => {
          setSecond(proof);
          setAsking('me');
        }}
      />
      <ProofDialog
        title={`Close ${number}`}
        meaning={MEANING_WORDS.iCloseThisReconciliation}
        confirm="Close it"
        open={asking === 'me'}
        onOpen={(open) => setAsking((now) => (open ? 'me' : now === 'me' ? null : now))}
        who="me"
        onProof={close}
      />
    </>
  );
}
