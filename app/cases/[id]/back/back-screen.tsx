'use client';

import { useRouter } from 'next/navigation';
import { useRef, useState } from 'react';
import { thingOf } from '@/app/_kit/at-hand';
import kitStyles from '@/app/_kit/kit.module.css';
import { newClientId } from '@/app/_outbox/new-id';
import { useScans } from '@/app/_scan/use-scans';
import { Button } from '@/app/_ui/button';
import { type Proof, ProofDialog } from '@/app/_ui/proof-dialog';
import { Status } from '@/app/_ui/status';
import { sendJson } from '@/app/sets/_parts/send-json';
import type { IssuedThing } from '@/db/queries/caseLife/backScreen';
import type { ReturnOutcome } from '@/lib/caseLife/account';
import { MEANING_WORDS } from '@/lib/wording/attestations';
import { OUTCOME_OF_RETURN_WORDS } from '@/lib/wording/case-life';
import { momentWords } from '@/lib/wording/sets';
import { outcomeWords } from '@/lib/wording/usage';
import { NotFoundDialog } from './not-found-dialog';

const NOT_REACHED = 'That did not reach the server. Press again: what is sent twice is done once.';

/** What the record of use says of single packs that are accounted for by it, and of those handed back unopened. */
function atTableWords({ atTable, returns }: IssuedThing): string {
  if (atTable === null || atTable.said.length === 0) return '';
  const said = atTable.said.map(({ outcome, lostAt, quantity }) => {
    const words = outcomeWords(outcome, lostAt).toLowerCase();
    return quantity > 1 ? `${quantity} ${words}` : words;
  });
  const judge = atTable.toJudge > 0 && returns.length === 0 ? ': its barrier is judged here' : '';
  return `; at the table: ${said.join(', ')}${judge}`;
}

/** What came back, thing by thing, and as what; a scan brings its thing to the front. */
export function BackScreen({
  booked,
  things,
  mayReturn,
  mayJudge,
  now,
}: {
  booked: { id: string; reference: string };
  things: readonly IssuedThing[];
  mayReturn: boolean;
  mayJudge: boolean;
  now: string;
}) {
  const router = useRouter();
  const [inHand, setInHand] = useState<string | null>(null);
  const [said, setSaid] = useState('');
  const [wrong, setWrong] = useState<string | null>(null);
  const [sending, setSending] = useState(false);
  const [judged, setJudged] = useState<IssuedThing | null>(null);
  const [lost, setLost] = useState<IssuedThing | null>(null);
  // an answer that is lost is asked for again under the same id, so that a second press does nothing twice
  const unanswered = useRef(new Map<string, string>());

  useScans(
    (scan) => {
      if (scan.verdict !== 'understood' && scan.verdict !== 'already' && !scan.another) return 'passed';
      const thing = thingOf(scan);
      if (!thing) return 'passed';
      const own = things.find(
        (one) =>
          one.stillOut > 0 &&
          ((thing.kind === 'set' && one.setId === thing.setId) ||
            (thing.kind === 'pouch' && one.packId === thing.packId) ||
            (thing.kind === 'stock' && one.stockId === thing.stockId) ||
            (thing.kind === 'item' &&
              one.itemId === thing.itemId &&
              (thing.lot === null || one.lot === thing.lot))),
      );
      setInHand(own?.pickId ?? null);
      setSaid(own ? `${own.name}: say how it came back.` : 'That is not out for this case.');
      return 'taken';
    },
    { context: { kind: 'kitBack', caseId: booked.id as never }, takes: 'everything' },
  );

  async function send(
    thing: IssuedThing,
    outcome: ReturnOutcome,
    more: { note?: string; proof?: Proof } = {},
  ) {
    if (sending) return 'The act before is still on its way.';
    const key = `${thing.pickId} ${outcome} ${thing.stillOut}`;
    const id = unanswered.current.get(key) ?? newClientId('return');
    unanswered.current.set(key, id);
    setSending(true);
    setWrong(null);
    try {
      const answer = await sendJson(`/api/v1/cases/${booked.id}/kit/returns`, {
        returned: { id, pickId: thing.pickId, outcome, quantity: 1, note: more.note ?? null },
        ...(more.proof ? { proof: more.proof } : {}),
      });
      router.refresh();
      if (answer.ok) {
        setSaid(`${thing.name}: ${OUTCOME_OF_RETURN_WORDS[outcome]}.`);
        setInHand(null);
        return undefined;
      }
      if (!more.proof && more.note === undefined) setWrong(answer.sentence);
      return answer.sentence;
    } catch {
      setWrong(NOT_REACHED);
      return NOT_REACHED;
    } finally {
      setSending(false);
    }
  }

  const open = things.filter(({ stillOut }) => stillOut > 0);
  const inTurn = [...things].sort(
    (a, b) =>
      Number(b.pickId === inHand) - Number(a.pickId === inHand) ||
      Number(b.stillOut > 0) - Number(a.stillOut > 0) ||
      a.name.localeCompare(b.name),
  );
  return (
    <div className={kitStyles.screen}>
      <p>
        {open.length === 0 ? (
          <Status tone="good">Everything is accounted for</Status>
        ) : (
          <Status tone="attention">{`${open.length} of ${things.length} still out`}</Status>
        )}
      </p>
      <p role="status" className={kitStyles.said}>
        {said}
      </p>
      {wrong ? (
        <p role="alert" className={kitStyles.refused}>
          {wrong}
        </p>
      ) : null}
      <ul className={kitStyles.list} aria-label="Issued to this case">
        {inTurn.map((thing) => (
          <li
            key={thing.pickId}
            className={kitStyles.row}
            aria-current={thing.pickId === inHand || undefined}
          >
            <div>
              <p className={kitStyles.name}>
                {thing.quantity > 1 ? `${thing.quantity} × ${thing.name}` : thing.name}
              </p>
              <p className={kitStyles.under}>
                {thing.stillOut === 0
                  ? 'accounted for'
                  : thing.quantity > 1
                    ? `${thing.stillOut} still out`
                    : 'still out'}
                {thing.held ? ', held' : ''}
                {atTableWords(thing)}
              </p>
            </div>
            <div>
              {thing.returns.map(({ outcome, quantity, note, by, at }) => (
                <p key={at + outcome}>
                  {`${quantity > 1 ? `${quantity} ` : ''}${OUTCOME_OF_RETURN_WORDS[outcome]}, ${momentWords(at, now)}, ${by}`}
                  {note === null ? '' : `: ${note}`}
                </p>
              ))}
            </div>
            {thing.stillOut > 0 && mayReturn && !thing.held ? (
              <div className={kitStyles.acts}>
                {thing.setId === null ? (
                  <>
                    <Button
                      size="bench"
                      pending={sending}
                      onClick={() => send(thing, 'opened')}
                      aria-label={`${thing.name}: opened`}
                    >
                      Opened
                    </Button>
                    <Button
                      size="bench"
                      pending={sending}
                      onClick={() => send(thing, 'damaged')}
                      aria-label={`${thing.name}: dropped or damaged`}
                    >
                      Dropped or damaged
                    </Button>
                  </>
                ) : (
                  <Button
                    size="bench"
                    pending={sending}
                    onClick={() => send(thing, 'cameBack')}
                    aria-label={`${thing.name}: came back`}
                  >
                    Came back
                  </Button>
                )}
                {mayJudge ? (
                  <Button
                    size="bench"
                    onClick={() => setJudged(thing)}
                    aria-label={`${thing.name}: returned unopened`}
                  >
                    Returned unopened…
                  </Button>
                ) : null}
                {thing.setId === null ? (
                  <Button
                    kind="quiet"
                    size="bench"
                    onClick={() => setLost(thing)}
                    aria-label={`${thing.name}: not found`}
                  >
                    Not found…
                  </Button>
                ) : null}
              </div>
            ) : null}
          </li>
        ))}
      </ul>
      <ProofDialog
        title={`Returned unopened: ${judged?.name ?? ''}`}
        meaning={`${MEANING_WORDS.iLookedAtTheBarrier}. ${judged?.name ?? ''} goes back into the sterile store on your word`}
        confirm="It goes back as sterile"
        open={judged !== null}
        onOpen={(next) => !next && setJudged(null)}
        who="me"
        onProof={async (proof) => (judged ? send(judged, 'returnedUnopened', { proof }) : undefined)}
      />
      <NotFoundDialog
        thing={lost}
        onClose={() => setLost(null)}
        onSay={async (note) => (lost ? send(lost, 'notFound', { note }) : undefined)}
      />
    </div>
  );
}
