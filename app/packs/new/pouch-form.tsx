'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { useScans } from '@/app/_scan/use-scans';
import { Button } from '@/app/_ui/button';
import { ComboField, type ComboOption } from '@/app/_ui/combo-field';
import { ProofDialog } from '@/app/_ui/proof-dialog';
import { Section } from '@/app/_ui/section';
import { TextField } from '@/app/_ui/text-field';
import { type SentProblem, sendJson } from '@/app/sets/_parts/send-json';
import styles from './pouch.module.css';

const NOT_REACHED = 'That did not reach the server. Press again: what is sent twice is done once.';

/** Which item, and its lot where one is known: chosen, typed or scanned; then proof of who packed it. */
export function PouchForm({ packId, items }: { packId: string; items: ComboOption[] }) {
  const router = useRouter();
  const [itemId, setItemId] = useState<string | null>(null);
  const [lot, setLot] = useState('');
  const [asked, setAsked] = useState(false);
  const [proving, setProving] = useState(false);
  const [problems, setProblems] = useState<SentProblem[]>([]);
  useScans((scan) => {
    if (scan.meaning.kind !== 'item') return 'passed';
    setItemId(scan.meaning.itemId);
    setLot(scan.meaning.lot ?? '');
    return 'taken';
  });
  const of = (path: string) => problems.filter((one) => one.path === path).map(({ sentence }) => sentence);
  const name = items.find(({ value }) => value === itemId)?.label;
  return (
    <Section title="What goes in">
      <div className={styles.form}>
        <ComboField
          name="itemId"
          label="Item"
          hint="Type a word of its name, or scan its code."
          required
          options={items}
          value={itemId}
          onValue={setItemId}
          problems={[...(asked && itemId === null ? ['Choose the item.'] : []), ...of('itemId')]}
        />
        <TextField
          name="lot"
          label="Maker’s lot"
          hint="Leave it empty where it is not known."
          width="medium"
          maxLength={60}
          value={lot}
          onValue={setLot}
          problems={of('lot')}
        />
        <div>
          <Button
            kind="primary"
            size="bench"
            onClick={() => {
              setAsked(true);
              if (itemId !== null) setProving(true);
            }}
          >
            Pack it
          </Button>
        </div>
      </div>
      <ProofDialog
        title={`Pack ${name ?? 'a pouch'}`}
        meaning="I packed it"
        confirm="Pack it"
        open={proving}
        onOpen={setProving}
        who="me"
        onProof={async (proof) => {
          try {
            const body = { id: packId, itemId, lot: lot.trim() === '' ? null : lot, proof };
            const answer = await sendJson('/api/v1/packs', body);
            if (!answer.ok) {
              setProblems(answer.problems);
              return answer.sentence;
            }
            router.push(`/packs/${packId}?packed=now`);
            return undefined;
          } catch {
            return NOT_REACHED;
          }
        }}
      />
    </Section>
  );
}
