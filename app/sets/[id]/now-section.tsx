import Link from 'next/link';
import { DefinitionList } from '@/app/_ui/definition-list';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import type { SetOnFile } from '@/db/queries/sets';
import type { SetTurn } from '@/db/queries/turns/setTurn';
import { capitalised, listWords } from '@/lib/wording/numbers';
import { HELD_BECAUSE_WORDS, momentWords, TURN_STEP_WORDS } from '@/lib/wording/sets';
import styles from './set.module.css';
import { TurnLine } from './turn-line';

/** Where a set is, since when, by whom, and how far round it is. */
export function NowSection({
  set,
  turn,
  now,
  children,
}: {
  set: SetOnFile;
  turn: SetTurn;
  now: string;
  /** The steps offered from here. */
  children: React.ReactNode;
}) {
  const last = turn.turn?.steps.at(-1);
  return (
    <Section
      title={turn.withdrawn ? 'Out of service' : capitalised(TURN_STEP_WORDS[set.step])}
      note={`since ${momentWords(set.stepSince, now)}${last?.by ? `, by ${last.by}` : ''}`}
      actions={<Link href={`/sets/${set.id}/history`}>All its turns</Link>}
      id="now"
    >
      {turn.withdrawn ? (
        <p>
          <Status tone="stop">out of service</Status>{' '}
          {`since ${momentWords(turn.withdrawn.at, now)}: ${turn.withdrawn.because}`}
        </p>
      ) : null}
      {turn.turn === null ? (
        <p className={styles.soft}>No turn of it is on record yet.</p>
      ) : (
        <TurnLine turn={turn.turn} step={set.step} heldFrom={turn.heldFrom} now={now} />
      )}
      {turn.reasons.length > 0 ? (
        <div className={styles.held} id="hold">
          <ul aria-label="Held, because">
            {turn.reasons.map(({ because, note, at, by }) => (
              <li key={`${because}${at}`}>
                <Status tone="stop">{`held, because ${HELD_BECAUSE_WORDS[because]}`}</Status>
                <p>
                  {note === null ? 'Nothing more was noted.' : `“${note}”`}
                  <span
                    className={styles.soft}
                  >{` ${momentWords(at, now)}${by === null ? '' : `, ${by}`}`}</span>
                </p>
              </li>
            ))}
          </ul>
          <p className={styles.soft}>
            {`Decontamination lead or incident lead may lift it; then it can go ${listWords(
              turn.after.map((step) => TURN_STEP_WORDS[step]),
              'or',
            )}.`}
          </p>
        </div>
      ) : null}
      {children}
      <DefinitionList
        columns={2}
        items={[
          {
            term: 'Pack',
            value:
              turn.pack === null ? (
                'in no pack'
              ) : (
                <>
                  {turn.pack.number}
                  {turn.pack.short ? (
                    <>
                      {' '}
                      <Status tone="attention">SHORT</Status>
                    </>
                  ) : null}
                </>
              ),
            note: turn.pack === null ? undefined : `closed ${momentWords(turn.pack.packedAt, now)}`,
          },
          {
            term: 'Load',
            value:
              turn.load === null ? (
                'in no load'
              ) : (
                <Link href={`/loads/${turn.load.id}`}>{turn.load.number}</Link>
              ),
          },
          {
            term: 'In theatre for',
            value:
              turn.forCase === null ? (
                'no case'
              ) : (
                <Link href={`/cases/${turn.forCase.id}`}>{turn.forCase.reference}</Link>
              ),
          },
          {
            term: 'Refill jobs open',
            value:
              turn.refills === null
                ? 'not shown while you count it blind'
                : turn.refills.length === 0
                  ? 'none'
                  : turn.refills.map(({ id, item, quantity, foundBy, openedAt }) => (
                      <span key={id} className={styles.job}>
                        {`${quantity} × ${item}`}
                        <span
                          className={styles.soft}
                        >{` found by ${foundBy}, ${momentWords(openedAt, now)}`}</span>
                      </span>
                    )),
          },
        ]}
      />
    </Section>
  );
}
