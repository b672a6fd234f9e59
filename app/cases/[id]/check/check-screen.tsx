'use client';

import { useRouter } from 'next/navigation';
import { useMemo, useState } from 'react';
import { isSingle, thingOf } from '@/app/_kit/at-hand';
import kitStyles from '@/app/_kit/kit.module.css';
import { RefusedEntries } from '@/app/_kit/refused-entries';
import { SavedLine } from '@/app/_kit/saved-line';
import { newClientId } from '@/app/_outbox/new-id';
import { useOutbox } from '@/app/_outbox/use-outbox';
import { useScans } from '@/app/_scan/use-scans';
import { Button } from '@/app/_ui/button';
import { type Proof, ProofDialog } from '@/app/_ui/proof-dialog';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import { showToast } from '@/app/_ui/toast';
import { sendJson } from '@/app/sets/_parts/send-json';
import type { CheckScreen as Check } from '@/db/queries/caseLife/checkScreen';
import type { SentCheckEntry } from '@/lib/caseLife/act';
import { wallClock } from '@/lib/theatre/localTime';
import { MEANING_WORDS } from '@/lib/wording/attestations';
import { thingWords } from '@/lib/wording/scans';

type Open = NonNullable<Check['open']>;

/** The check in the making: what this person has seen, and nothing of what anybody picked. */
export function CheckScreen({ booked, check }: { booked: { id: string; reference: string }; check: Open }) {
  const router = useRouter();
  const [said, setSaid] = useState('');
  /** Saved from here; the page that lists them comes a moment later. */
  const [stored, setStored] = useState<ReadonlySet<string>>(new Set());
  const [asked, setAsked] = useState(false);
  /** What pending entries are called; the server names them once they are saved. */
  const [names, setNames] = useState<ReadonlyMap<string, string>>(new Map());
  const { outbox, add, doneAt, dismiss, flush } = useOutbox<SentCheckEntry>({
    room: `check.${check.id}`,
    address: `/api/v1/kit-checks/${check.id}/entries`,
    onStored: ({ id }) => {
      setStored((now) => new Set(now).add(id));
      router.refresh();
    },
  });
  const undone = useMemo(
    () =>
      new Set(
        outbox.pending.flatMap(({ entry }) =>
          entry.act.kind === 'undo' ? [entry.act.entryId as string] : [],
        ),
      ),
    [outbox.pending],
  );
  const enter = (act: SentCheckEntry['act'], name: string, scanId: string | null = null) => {
    const id = newClientId('entry') as SentCheckEntry['id'];
    setNames((now) => new Map(now).set(id, name));
    add({ id, act, doneAt: doneAt(), scanId: scanId as never });
  };

  useScans(
    (scan) => {
      if (scan.verdict !== 'understood' && scan.verdict !== 'already' && !scan.another) return 'passed';
      const thing = thingOf(scan);
      if (!thing) return 'passed';
      const name = thingWords(scan.meaning);
      if (scan.verdict === 'already' && isSingle(thing)) {
        setSaid(`${name}: already scanned${scan.before ? ` ${wallClock(scan.before.at).time}` : ''}.`);
        return 'taken';
      }
      enter({ kind: 'seen', thing, quantity: 1 }, name, scan.id);
      setSaid(`${name}: seen.`);
      return 'taken';
    },
    { context: { kind: 'kitCheck', checkId: check.id as never }, takes: 'everything' },
  );

  const known = new Set(check.entries.map(({ id }) => id));
  const waiting = outbox.pending.filter(({ entry }) => entry.act.kind === 'seen' && !known.has(entry.id));

  async function close(proof: Proof) {
    const answer = await sendJson<{ differences: unknown[] }>(`/api/v1/kit-checks/${check.id}/close`, {
      entryIds: [...new Set([...check.entries.map(({ id }) => id as string), ...stored])],
      proof,
    });
    if (!answer.ok) return answer.sentence;
    const { differences } = answer.value;
    showToast(
      differences.length === 0
        ? { tone: 'good', word: 'Checked', text: `${booked.reference}: everything is as it was picked.` }
        : {
            tone: 'attention',
            word: 'They differ',
            text: `${booked.reference}: what was picked and what you saw differ.`,
          },
    );
    router.refresh();
    return undefined;
  }

  const pending = outbox.pending.length;
  return (
    <div className={kitStyles.screen}>
      <RefusedEntries
        refused={outbox.refused.map(({ item, sentence }) => ({ id: item.id, sentence }))}
        word="Not entered"
        onRead={dismiss}
      />
      <Section title="What you have seen" note="scan everything that lies with the kit">
        <p role="status" className={kitStyles.said}>
          {said}
        </p>
        {check.seen.length + waiting.length === 0 ? (
          <p className={kitStyles.soft}>Nothing yet.</p>
        ) : (
          <ul className={kitStyles.list} aria-label="Seen">
            {check.seen.map(({ entryId, name, quantity, at }) => (
              <li key={entryId} className={kitStyles.row}>
                <p className={kitStyles.name}>{quantity > 1 ? `${quantity} × ${name}` : name}</p>
                <p className={kitStyles.under}>{wallClock(at).time}</p>
                {undone.has(entryId) ? (
                  <Status tone="unknown">pending</Status>
                ) : (
                  <Button
                    kind="quiet"
                    size="bench"
                    aria-label={`${name} was a mistake`}
                    onClick={() => enter({ kind: 'undo', entryId: entryId as never }, name)}
                  >
                    A mistake
                  </Button>
                )}
              </li>
            ))}
            {waiting.map(({ entry }) => (
              <li key={entry.id} className={kitStyles.row} data-pending>
                <p className={kitStyles.name}>{names.get(entry.id) ?? 'kept from before'}</p>
                <Status tone="unknown">pending</Status>
              </li>
            ))}
          </ul>
        )}
      </Section>
      <SavedLine outbox={outbox} />
      <div className={kitStyles.acts}>
        <Button
          kind="primary"
          size="bench"
          onClick={() => {
            if (pending > 0) flush();
            else setAsked(true);
          }}
        >
          {pending > 0 ? `Finish: ${pending} pending` : 'That is everything'}
        </Button>
      </div>
      <ProofDialog
        title={`Check of ${booked.reference}`}
        meaning={`${MEANING_WORDS.iChecked} the kit of ${booked.reference}`}
        confirm="I checked it"
        open={asked}
        onOpen={setAsked}
        who="me"
        onProof={close}
      />
    </div>
  );
}
