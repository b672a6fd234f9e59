import { Disclosure } from '@/app/_ui/disclosure';
import { EmptyState } from '@/app/_ui/empty-state';
import { Section } from '@/app/_ui/section';
import type { ConstructOnFile } from '@/db/queries/emergency/constructs';
import { addressOf, type EmergencyAsked } from '@/lib/emergency/asked';
import type { PersonId } from '@/lib/identity/ids';
import { listWords } from '@/lib/wording/numbers';
import { momentWords } from '@/lib/wording/sets';
import styles from './emergency.module.css';
import { Tile } from './tile';

const SHOWN_AT_ONCE = 8;

/** The second question: a construct that somebody stated before, or that the plan is not known yet. Nothing is proposed. */
export function AskConstruct({
  asked,
  onFile,
  me,
  now,
}: {
  asked: EmergencyAsked;
  onFile: readonly ConstructOnFile[];
  me: PersonId;
  now: string;
}) {
  // one's own first; what is left keeps its order
  const inTurn = [
    ...onFile.filter(({ surgeonId }) => surgeonId === me),
    ...onFile.filter(({ surgeonId }) => surgeonId !== me),
  ];
  const tile = (one: ConstructOnFile) => (
    <Tile
      key={one.from}
      href={addressOf({ ...asked, plan: one.from })}
      label={one.kind === 'start' ? one.name : `As planned for ${one.name}`}
      note={
        <>
          {one.plates.length === 0 ? 'Screws alone' : listWords(one.plates)}.{' '}
          {one.kind === 'start' ? 'Saved plan of' : 'Earlier plan,'} {one.surgeon}, {momentWords(one.at, now)}
          {one.platesGone.length > 0 ? `. No longer to be had: ${listWords(one.platesGone)}` : ''}
        </>
      }
    />
  );
  return (
    <Section title="2. Likely construct" note="as a surgeon stated it before">
      {inTurn.length === 0 ? (
        <EmptyState title="No plan for this site and side is on file">
          Go on without one: the sets for this site are shown.
        </EmptyState>
      ) : (
        <div className={styles.constructs}>{inTurn.slice(0, SHOWN_AT_ONCE).map(tile)}</div>
      )}
      {inTurn.length > SHOWN_AT_ONCE ? (
        <Disclosure summary={`${inTurn.length - SHOWN_AT_ONCE} more`}>
          <div className={styles.constructs}>{inTurn.slice(SHOWN_AT_ONCE).map(tile)}</div>
        </Disclosure>
      ) : null}
      <Tile
        href={addressOf({ ...asked, plan: 'unknown' })}
        label="Plan not known yet"
        note="Take whole sets now; the plan stays an open question"
      />
    </Section>
  );
}
