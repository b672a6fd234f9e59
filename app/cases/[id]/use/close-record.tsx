'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import kitStyles from '@/app/_kit/kit.module.css';
import { SavedLine } from '@/app/_kit/saved-line';
import { Button } from '@/app/_ui/button';
import { ProofDialog } from '@/app/_ui/proof-dialog';
import { showToast } from '@/app/_ui/toast';
import { sendJson } from '@/app/sets/_parts/send-json';
import { questionText } from '@/lib/usage/questions';
import { MEANING_WORDS } from '@/lib/wording/attestations';
import { capitalised, countWord } from '@/lib/wording/numbers';
import type { Table } from './use-table';

/** Closing: with everything saved, and with what stays open seen; whoever closes proves who they are. */
export function CloseRecord({ booked, table }: { booked: { id: string; reference: string }; table: Table }) {
  const router = useRouter();
  const [asked, setAsked] = useState(false);
  const { entries, reckoned, outbox } = table;
  const pending = outbox.pending.length;
  const open = reckoned.questions.length;
  const stays = `${countWord(open)} ${open === 1 ? 'thing stays' : 'things stay'} open`;
  return (
    <>
      <SavedLine outbox={outbox} />
      {entries.length > 0 ? (
        <div className={kitStyles.acts}>
          <Button kind="primary" size="bench" onClick={() => (pending > 0 ? table.flush() : setAsked(true))}>
            {pending > 0
              ? `Close: ${pending} pending`
              : open === 0
                ? 'Close the record'
                : `Close the record: ${stays}`}
          </Button>
        </div>
      ) : null}
      <ProofDialog
        title={`Record of use of ${booked.reference}`}
        meaning={`${MEANING_WORDS.iRecordedThis} in ${booked.reference}. ${open === 0 ? 'Every piece is accounted for' : `${capitalised(stays)}, and ${open === 1 ? 'is' : 'are'} written into it by name`}`}
        confirm="Close the record"
        open={asked}
        onOpen={setAsked}
        who="me"
        onProof={async (proof) => {
          const answer = await sendJson<{ questions: number }>(`/api/v1/cases/${booked.id}/use/close`, {
            entryIds: entries.map(({ id }) => id),
            questions: reckoned.questions.map(questionText),
            proof,
          });
          router.refresh();
          if (!answer.ok) return answer.sentence;
          const left = answer.value.questions;
          showToast(
            left === 0
              ? { tone: 'good', word: 'Closed', text: `${booked.reference}: every piece is accounted for.` }
              : {
                  tone: 'attention',
                  word: 'Closed',
                  text: `${booked.reference}: ${countWord(left)} ${left === 1 ? 'thing stays' : 'things stay'} open.`,
                },
          );
          return undefined;
        }}
      />
    </>
  );
}
