import Link from 'next/link';
import type { EmergencyAnswer, SetStandingNow } from '@/app/_server/emergency/answer';
import { Disclosure } from '@/app/_ui/disclosure';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import { addressOf, type EmergencyAsked } from '@/lib/emergency/asked';
import type { ItemId } from '@/lib/identity/ids';
import { lacksWords, mattersWords, readyBetween } from '@/lib/wording/emergency';
import { stepsWords } from '@/lib/wording/kit-parts';
import { listWords } from '@/lib/wording/numbers';
import { stepWords, TURN_STEP_WORDS } from '@/lib/wording/sets';
import styles from './emergency.module.css';
import { Tile } from './tile';
import { WayOut } from './way-out';

/** The sets that could matter: sterile now, in process and when, and those that can't be had with the way out. */
export function SetsNow({
  asked,
  answer,
  neededAt,
}: {
  asked: EmergencyAsked;
  answer: EmergencyAnswer;
  neededAt: string;
}) {
  const { sets } = answer;
  const cannot = sets.filter(({ barred }) => barred);
  const there = sets.filter(({ barred, stored }) => !barred && stored.step === 'inSterileStore');
  const coming = sets
    .filter(({ barred, stored }) => !barred && stored.step !== 'inSterileStore')
    .sort((a, b) => (a.readyMinutes?.p90 ?? 1e9) - (b.readyMinutes?.p90 ?? 1e9));
  const list = (some: readonly SetStandingNow[]) => (
    <ul className={styles.setList}>
      {some.map((set) => (
        <SetNow key={set.id} set={set} answer={answer} asked={asked} neededAt={neededAt} />
      ))}
    </ul>
  );
  const none = <p>None.</p>;
  return (
    <>
      <Section title="Sterile now" note={String(there.length)}>
        {there.length > 0 ? list(there) : none}
      </Section>
      <Section title="In process" note={String(coming.length)}>
        {coming.length > 0 ? list(coming) : none}
      </Section>
      <Section title="Not to be had" note={String(cannot.length)}>
        {cannot.length > 0 ? list(cannot) : none}
      </Section>
    </>
  );
}

function SetNow({
  set,
  answer,
  asked,
  neededAt,
}: {
  set: SetStandingNow;
  answer: EmergencyAnswer;
  asked: EmergencyAsked;
  neededAt: string;
}) {
  const { stored, barred, promisedTo, builds } = set;
  const sterile = stored.step === 'inSterileStore';
  return (
    <li className={styles.setNow}>
      <div>
        <p className={styles.optionHead}>
          <Link href={`/sets/${set.id}`}>{set.code}</Link> <span>{stored.configurationName}</span>{' '}
          {barred ? (
            <Status tone="stop">
              {sterile ? 'not for this case' : stepWords(stored.step, stored.heldBecause)}
            </Status>
          ) : sterile ? (
            <Status tone="good">sterile now</Status>
          ) : (
            <Status tone={set.readyMinutes ? 'attention' : 'unknown'}>{TURN_STEP_WORDS[stored.step]}</Status>
          )}
        </p>
        <ul className={styles.facts}>
          <li>{stored.place?.name ?? 'Place not stated'}</li>
          {sterile || barred ? null : <li>{readyBetween(set.readyMinutes, answer.facts.now)}</li>}
          {promisedTo.length > 0 ? <li>Promised to {listWords(promisedTo)}</li> : null}
          {barred ? (
            <li>
              <WayOut set={stored} because={set.because} />
            </li>
          ) : null}
          <li>
            <ShortOf set={set} answer={answer} />
          </li>
          {builds === null ? null : (
            <li>
              {BUILDS[builds]} <Lacks set={set} answer={answer} />
            </li>
          )}
        </ul>
      </div>
      {barred ? null : (
        <Tile
          href={addressOf({ ...asked, by: neededAt, take: [set.code] })}
          label={`${sterile ? 'Take' : 'Wait for'} ${set.code}`}
        />
      )}
    </li>
  );
}

const BUILDS = {
  yes: 'Builds this construct by itself.',
  no: 'Does not build this construct by itself.',
  notEstablished: 'Whether it builds this construct is not established.',
} as const;

/** What it lacks for the construct, and whether that is in a single pack. */
function Lacks({
  set: { lacks },
  answer: { needs, items, packs },
}: {
  set: SetStandingNow;
  answer: EmergencyAnswer;
}) {
  if (lacks.length === 0 || needs === null) return null;
  const name = (id: ItemId) => items.get(id)?.name ?? id;
  const packed = (ids: readonly ItemId[]) =>
    ids.length > 0 && ids.every((id) => packs.some(({ itemId }) => itemId === id));
  const rows = lacks.map((one) => {
    const ways = one.kind === 'piece' ? one.accepts.map((id) => [id]) : one.wouldClose;
    return { one, inPack: ways.some(packed), what: ways.map((way) => listWords(way.map(name))) };
  });
  const list = (
    <ul className={styles.shorts}>
      {rows.map(({ one, inPack, what }) => (
        <li key={one.needId}>
          <Status tone={inPack ? 'attention' : 'stop'} look="plain">
            {`lacks ${what.length === 0 ? 'pieces that fit each other' : listWords(what, 'or')}`}
          </Status>{' '}
          for {stepsWords(one.steps, needs)}
          {inPack ? '; there is one in a single pack' : ''}
        </li>
      ))}
    </ul>
  );
  if (rows.length <= MOST_SHOWN) return list;
  const nowhere = rows.filter(({ inPack }) => !inPack).length;
  return (
    <Disclosure plain summary={lacksWords(rows.length, nowhere)}>
      {list}
    </Disclosure>
  );
}

/** A set that lacks more than this is hardly the answer: what it lacks is folded away, its number is not. */
const MOST_SHOWN = 2;

function ShortOf({ set: { short }, answer }: { set: SetStandingNow; answer: EmergencyAnswer }) {
  if (short === null)
    return <>What it is short of is not shown to you: you check it without seeing the first count.</>;
  if (short.length === 0) return <>Short of nothing.</>;
  const said = short.map((line) => ({ ...line, ...mattersWords(line.matters, answer.needs) }));
  const weighty = said.filter(({ matters }) => matters.kind !== 'no');
  const rest = said.filter(({ matters }) => matters.kind === 'no');
  const row = (line: (typeof said)[number]) => (
    <li key={line.itemId}>
      {line.short} × {answer.items.get(line.itemId)?.name ?? line.itemId} (class {line.mustHaveClass}):{' '}
      <Status tone={line.tone} look="plain">
        {line.words}
      </Status>
    </li>
  );
  return (
    <>
      Short of
      <ul className={styles.shorts}>{weighty.map(row)}</ul>
      {rest.length === 0 ? null : rest.length <= 2 ? (
        <ul className={styles.shorts}>{rest.map(row)}</ul>
      ) : (
        <Disclosure plain summary={`${rest.length} lines that do not matter for this construct`}>
          <ul className={styles.shorts}>{rest.map(row)}</ul>
        </Disclosure>
      )}
    </>
  );
}
