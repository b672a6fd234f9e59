import type { EmergencyAnswer } from '@/app/_server/emergency/answer';
import { EmptyState } from '@/app/_ui/empty-state';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import { addressOf, type EmergencyAsked } from '@/lib/emergency/asked';
import type { EmergencyOption } from '@/lib/emergency/options';
import { optionWord, readyBetween } from '@/lib/wording/emergency';
import { listWords } from '@/lib/wording/numbers';
import styles from './emergency.module.css';
import { Tile } from './tile';

const MOST_SHOWN = 6;

/** What builds the chosen construct, whole, the best first; each with one press to see what taking it does. */
export function OptionsList({
  asked,
  answer,
  neededAt,
}: {
  asked: EmergencyAsked;
  answer: EmergencyAnswer;
  neededAt: string;
}) {
  const { options, outcome } = answer;
  if (outcome === 'notKnown') return null;
  if (options.length === 0)
    return (
      <Section title="What builds it">
        <EmptyState
          title={outcome === 'nothingNeeded' ? 'This construct needs no set' : 'Nothing here builds it whole'}
        >
          {outcome === 'nothingNeeded'
            ? 'It states no plate and no screw.'
            : 'See below what each set is short of for it; a set can be taken all the same, and what is short stays shown.'}
        </EmptyState>
      </Section>
    );
  return (
    <Section
      title="What builds it"
      note={options.length > MOST_SHOWN ? `the first ${MOST_SHOWN} of ${options.length}` : undefined}
    >
      <ol className={styles.options}>
        {options.slice(0, MOST_SHOWN).map((option, at) => (
          <Option
            key={option.sets.map(({ code }) => code).join(' ')}
            option={option}
            answer={answer}
            href={takeAddress(asked, option, neededAt)}
            first={at === 0}
          />
        ))}
      </ol>
    </Section>
  );
}

/** The address that shows what taking this does; the time it is needed goes along as it was shown. */
export function takeAddress(asked: EmergencyAsked, { sets }: EmergencyOption, neededAt: string): string {
  return addressOf({ ...asked, by: neededAt, take: sets.map(({ code }) => code) });
}

function Option({
  option,
  answer,
  href,
  first,
}: {
  option: EmergencyOption;
  answer: EmergencyAnswer;
  href: string;
  first: boolean;
}) {
  const { tone, word } = optionWord(option);
  const packs = option.packs.flatMap(({ stockId, quantity }) => {
    const pack = answer.packs.find(({ id }) => id === stockId);
    const name = pack && answer.items.get(pack.itemId)?.name;
    return pack ? [`${quantity} × ${name}, ${pack.place?.name ?? 'place not stated'}`] : [];
  });
  const codes = listWords(option.sets.map(({ code }) => code));
  return (
    <li className={styles.option}>
      <div>
        <p className={styles.optionHead}>
          <strong>{codes}</strong> <Status tone={tone}>{word}</Status>
        </p>
        <ul className={styles.facts}>
          {option.sets.map((set) => {
            const stored = answer.store.sets.find(({ id }) => id === set.id);
            return (
              <li key={set.id}>
                {set.code}: {stored?.configurationName}, {stored?.place?.name ?? 'place not stated'};{' '}
                {readyBetween(set.readyMinutes, answer.facts.now)}
              </li>
            );
          })}
          {packs.map((pack) => (
            <li key={pack}>Single pack: {pack}</li>
          ))}
          {option.takesFrom.length > 0 ? (
            <li>
              <Status tone="attention" look="plain">
                Promised to {listWords(option.takesFrom)}
              </Status>
            </li>
          ) : null}
          {option.asWished ? null : <li>Without a back-up, or with a caution that another way avoids.</li>}
        </ul>
      </div>
      <Tile
        href={href}
        label={`${option.time === 'now' ? 'Take' : 'Wait for'} ${codes}`}
        look={first ? 'primary' : 'plain'}
      />
    </li>
  );
}
