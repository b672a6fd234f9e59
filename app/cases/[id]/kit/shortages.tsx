import { FindingList, type FindingView } from '@/app/_ui/finding';
import { LinkButton } from '@/app/_ui/link-button';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import type { CaseKit, NearMiss, Short } from '@/lib/kits/caseKit';
import { LEFT_OPEN } from '@/lib/kits/chosen';
import { SLOT_WORDS, stepsWords } from '@/lib/wording/kit-parts';
import {
  faultSentence,
  isMustHave,
  shortName,
  shortSentence,
  unavailableWords,
} from '@/lib/wording/kit-shorts';
import { answerViews } from './answer-views';
import styles from './kit.module.css';
import type { KitNames } from './kit-names';

/** What is short and what it stops, what the plan leaves open, and what is not established. Nothing when all is well. */
export function Shortages({ kit, names, caseId }: { kit: CaseKit; names: KitNames; caseId: string }) {
  const faults = kit.faults.filter(
    (fault) =>
      fault.kind !== 'noChainInCatalogue' || !kit.shorts.some((short) => short.needId === fault.chainId),
  );
  // where the plan itself asks in vain, that sentence says it all
  const said = new Set(faults.flatMap((fault) => ('step' in fault ? [fault.step] : [])));
  const shorts = kit.shorts.filter(
    (short) => !(short.kind === 'piece' && short.accepts.length === 0 && said.has(short.steps[0] ?? '')),
  );
  const open = kit.notEstablished.filter((one) => !one.lengthNotStated);
  if (shorts.length + faults.length + open.length + kit.withCaution.length === 0) return null;
  return (
    <Section title="What is short, and what it stops" look="sheet" id="short">
      {faults.length > 0 ? (
        <ul className={styles.plainList} aria-label="What the plan leaves open">
          {faults.map((fault) => {
            const sentence = faultSentence(fault, kit.needs, names.item);
            const unknown = LEFT_OPEN.has(fault.kind);
            return (
              <li key={sentence} className={styles.short}>
                <Status tone={unknown ? 'unknown' : 'stop'}>
                  {unknown ? 'Not established' : 'Stops the step'}
                </Status>
                <p>{sentence}</p>
              </li>
            );
          })}
        </ul>
      ) : null}
      {shorts.length > 0 ? (
        <ul className={styles.plainList} aria-label="Shortages">
          {shorts.map((short) => (
            <Shortage
              key={`${short.needId}-${short.kind === 'chain' ? short.importance : ''}`}
              short={short}
              kit={kit}
              names={names}
            />
          ))}
        </ul>
      ) : null}
      {open.map((one) => (
        <div key={one.needId} className={styles.short}>
          <Status tone="unknown">Not established</Status>
          <div>
            <p>
              {stepsWords(one.steps, kit.needs)}: something in store might serve, but a value is missing. It
              is not counted as a fit.
            </p>
            <FindingList
              label="Missing values"
              findings={uniqueViews(one.answers.flatMap((answer) => answerViews(answer, names, 'missing')))}
            />
          </div>
        </div>
      ))}
      {kit.withCaution.map((one) => (
        <div key={one.needId} className={styles.short}>
          <Status tone="attention">Only with a caution</Status>
          <div>
            <p>{stepsWords(one.steps, kit.needs)}: what is in store fits, but carries a caution.</p>
            <FindingList
              label="Cautions"
              findings={uniqueViews(one.answers.flatMap((answer) => answerViews(answer, names, 'notMet')))}
            />
          </div>
        </div>
      ))}
      {kit.verdict.kind === 'planStopped' || faults.length > 0 ? (
        <p>
          <LinkButton href={`/cases/${caseId}/plan`}>Go to the plan</LinkButton>
        </p>
      ) : null}
    </Section>
  );
}

function Shortage({ short, kit, names }: { short: Short; kit: CaseKit; names: KitNames }) {
  const must = isMustHave(short);
  return (
    <li className={styles.short}>
      <Status tone={must ? 'stop' : 'attention'}>{must ? 'Short' : 'No back-up'}</Status>
      <div>
        <p className={styles.shortName}>{capital(shortName(short, kit.needs, names.item))}</p>
        <p>{shortSentence(short, kit.needs, names.item)}</p>
        {short.kind === 'chain' && short.nearMisses.length > 0 ? (
          <NearMisses misses={short.nearMisses} names={names} />
        ) : null}
        {short.elsewhere.length > 0 ? (
          <p className={styles.aside}>
            Not to be had for this case:{' '}
            {short.elsewhere
              .slice(0, 4)
              .map(
                (one) =>
                  `${names.code(one.itemId)} ${one.in.kind === 'set' ? `in ${one.in.code}` : 'as a pack'}, ${unavailableWords(one.because)}`,
              )
              .join('; ')}
            .
          </p>
        ) : null}
      </div>
    </li>
  );
}

function NearMisses({ misses, names }: { misses: NearMiss[]; names: KitNames }) {
  return (
    <details className={styles.near}>
      <summary>Why what is on the tray does not do</summary>
      {misses.map((miss) => (
        <div key={`${miss.slot}-${miss.itemId}`}>
          <p className={styles.aside}>
            {names.item(miss.itemId)} as {SLOT_WORDS[miss.slot]}
          </p>
          <FindingList
            label={`${names.item(miss.itemId)} as ${SLOT_WORDS[miss.slot]}`}
            findings={uniqueViews(miss.answers.flatMap((answer) => answerViews(answer, names, 'refused')))}
          />
        </div>
      ))}
    </details>
  );
}

export function uniqueViews(views: FindingView[]): FindingView[] {
  return views.filter(
    (view, at) =>
      views.findIndex((other) => other.sentence === view.sentence && other.subject === view.subject) === at,
  );
}

const capital = (text: string) => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
