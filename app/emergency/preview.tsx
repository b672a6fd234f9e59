import type { PreparedTaking } from '@/app/_server/emergency/prepare';
import type { ResolvedEmergency } from '@/app/_server/emergency/resolve';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import type { EmergencyAsked } from '@/lib/emergency/asked';
import { wallClock } from '@/lib/theatre/localTime';
import { hitWords, shortMoment } from '@/lib/wording/emergency';
import { verdictWords } from '@/lib/wording/kit';
import { isMustHave, shortSentence } from '@/lib/wording/kit-shorts';
import { listWords } from '@/lib/wording/numbers';
import { momentWords, stepWords } from '@/lib/wording/sets';
import { AnswersProvider, AnswerTile } from './answers';
import styles from './emergency.module.css';
import { TakeBar } from './take-bar';
import { WayOut } from './way-out';

/** What taking these sets does, before the confirming press: who loses what and gets what, and what is still short. */
export function Preview({
  asked,
  resolved,
  prepared,
  mayTake,
}: {
  asked: EmergencyAsked;
  resolved: ResolvedEmergency;
  prepared: PreparedTaking;
  mayTake: boolean;
}) {
  const { now, listed } = resolved;
  const { sets, taking, theatres, surgeons, surgeonId, unknown, shown, barred } = prepared;
  const notGiven = asked.gone === null && barred.length > 0;
  const theatre = theatres.find(({ id }) => id === taking.theatreId);
  const codes = listWords(sets.map(({ code }) => code));
  const later = listed === null && taking.startsAt > resolved.neededAt;
  return (
    <AnswersProvider asked={asked}>
      <WhatItDoes prepared={prepared} now={now} />
      <Section title="What is taken">
        <ul className={styles.facts}>
          {sets.map((set) => (
            <li key={set.id}>
              {set.code}, {set.configurationName}: {stepWords(set.step, set.heldBecause)}
              {set.place ? `, ${set.place.name}` : ''}
              {set.step === 'inSterileStore' ? '' : '. It goes once it is sterile, not before.'}
            </li>
          ))}
          {unknown.map((code) => (
            <li key={code}>
              <Status tone="stop">{`${code}: no such set in service`}</Status>
            </li>
          ))}
          <Packs prepared={prepared} />
          {barred.map(({ set, because }) => (
            <li key={`${set.id} barred`}>
              <Status tone="stop">
                {asked.gone === null ? `${set.code} is not given` : `${set.code}: against its record`}
              </Status>{' '}
              <WayOut set={set} because={because} />
            </li>
          ))}
        </ul>
        <Builds prepared={prepared} />
      </Section>
      {listed ? null : (
        <Section
          title="Where and who"
          note={`${momentWords(taking.startsAt, now)} to ${wallClock(taking.endsAt).time}`}
        >
          {later ? (
            <p>
              Needed {shortMoment(resolved.neededAt, now)}; it can begin {shortMoment(taking.startsAt, now)}:
              by then the sets are sterile nine times in ten and {theatre?.name} is free. Move a case on the
              theatre list to begin sooner.
            </p>
          ) : null}
          <div className={styles.tiles}>
            {theatres.map(({ id, name, freeFrom }) => (
              <AnswerTile
                key={id}
                answer="theatre"
                value={id}
                label={name}
                note={freeFrom <= resolved.neededAt ? 'free' : `free from ${shortMoment(freeFrom, now)}`}
                settled={taking.theatreId}
              />
            ))}
          </div>
          <div className={styles.tiles}>
            {surgeons.map(({ id, name }) => (
              <AnswerTile
                key={id}
                answer="surgeon"
                value={id}
                label={name}
                note={id === surgeonId ? 'operates' : undefined}
                settled={surgeonId}
              />
            ))}
          </div>
        </Section>
      )}
      {mayTake ? (
        <TakeBar
          shown={shown}
          codes={codes}
          waits={sets.some(({ step }) => step !== 'inSterileStore')}
          goneWords={asked.gone === null ? null : shortMoment(asked.gone, now)}
          ready={prepared.target !== null && unknown.length === 0 && sets.length > 0 && !notGiven}
          missing={
            surgeonId === null
              ? 'Who operates? Press the name above.'
              : notGiven
                ? 'What can’t be given is said above, with the way out.'
                : null
          }
        />
      ) : (
        <p>You can look. Technicians, leads, scrub practitioners, surgeons and theatre managers take sets.</p>
      )}
    </AnswersProvider>
  );
}

function WhatItDoes({ prepared: { hits, items, store }, now }: { prepared: PreparedTaking; now: string }) {
  const pouch = (stockId: string) => {
    const pack = store.packs.find(({ id }) => id === stockId);
    return (pack && items.get(pack.itemId)?.name) ?? 'a pouch';
  };
  return (
    <Section
      title="What it takes from others"
      note={hits.length === 0 ? 'nothing' : `${hits.length} ${hits.length === 1 ? 'case' : 'cases'}`}
    >
      {hits.length === 0 ? (
        <p>
          <Status tone="good">No other case loses a set.</Status>
        </p>
      ) : (
        <ul className={styles.options}>
          {hits.map((hit) => {
            const { tone, word, sentence } = hitWords(hit, now, pouch);
            return (
              <li key={hit.reference} className={styles.hit}>
                <p className={styles.optionHead}>
                  <strong>{hit.reference}</strong> {momentWords(hit.startsAt, now)}{' '}
                  <Status tone={tone}>{word}</Status>
                </p>
                <p>{sentence}</p>
              </li>
            );
          })}
        </ul>
      )}
    </Section>
  );
}

function Packs({ prepared: { taking, store, items } }: { prepared: PreparedTaking }) {
  return taking.packs.map(({ stockId, quantity }) => {
    const pack = store.packs.find(({ id }) => id === stockId);
    return (
      <li key={stockId}>
        Fetch with it: {quantity} × {(pack && items.get(pack.itemId)?.name) ?? stockId},{' '}
        {pack?.place?.name ?? 'place not stated'}
      </li>
    );
  });
}

/** Whether what is taken builds the construct, and what is short of it, never silently. */
function Builds({ prepared: { kit, items } }: { prepared: PreparedTaking }) {
  if (kit === null)
    return (
      <p>
        <Status tone="unknown">The plan is not known yet</Status> Whether this is enough can’t be said.
      </p>
    );
  const name = (id: Parameters<typeof items.get>[0]) => items.get(id)?.name ?? id;
  const { tone, word } = verdictWords(kit, name);
  return (
    <>
      <p>
        <Status tone={tone}>{kit.verdict.kind === 'ready' ? 'Builds the construct' : word}</Status>
      </p>
      <ul className={styles.shorts}>
        {kit.shorts.map((short) => (
          <li key={short.needId}>
            <Status tone={isMustHave(short) ? 'stop' : 'attention'} look="plain">
              {isMustHave(short) ? 'short' : 'no back-up'}
            </Status>{' '}
            {shortSentence(short, kit.needs, name)}
          </li>
        ))}
      </ul>
    </>
  );
}
