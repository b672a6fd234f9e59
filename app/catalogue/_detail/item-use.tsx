import Link from 'next/link';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import type { ItemUse } from '@/db/queries/catalogueItem';
import styles from './detail.module.css';

const FORM_WORDS: Record<string, string> = {
  pouch: 'pouch',
  sterilePacked: 'sterile-packed',
  unsterile: 'unsterile',
};
const PLAN_WORDS: Record<string, string> = { draft: 'draft', confirmed: 'confirmed' };

/** `inSterileStore` as people say it. */
function stepWords(step: string): string {
  if (step === 'shortAwaitingDecision') return 'short, awaiting decision';
  return step.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
}

/** Where an item is, and what counts on it. */
export function ItemUseLists({ use }: { use: ItemUse }) {
  return (
    <div className={styles.use}>
      <Section level={3} title="Sets" note={countOf(use.sets.length, 'set', 'sets')}>
        {use.sets.length === 0 ? <p>No set lists it.</p> : null}
        <ul className={styles.lines}>
          {use.sets.map((set) => (
            <li key={set.id}>
              <Link href={`/sets/${set.id}`}>{set.code}</Link>
              <span className={styles.note}>
                {set.found === null
                  ? 'not shown to whoever checks it blind'
                  : `${set.found} of ${set.expected}`}{' '}
                · {stepWords(set.step)}
                {set.place ? ` · ${set.place}` : ''}
              </span>
              {set.found !== null && set.found < set.expected ? (
                <Status tone="attention" look="plain">
                  {set.expected - set.found} short
                </Status>
              ) : null}
            </li>
          ))}
        </ul>
      </Section>
      <Section
        level={3}
        title="Pouches and packs"
        note={
          use.stock.some(({ quantity }) => quantity === null)
            ? 'you count it now'
            : countOf(
                use.stock.reduce((sum, pack) => sum + (pack.quantity ?? 0), 0),
                'piece',
                'pieces',
              )
        }
        actions={<Link href={`/stock/${use.itemId}`}>On the shelves</Link>}
      >
        {use.stock.length === 0 ? <p>None in store.</p> : null}
        <ul className={styles.lines}>
          {use.stock.map((pack) => (
            <li key={pack.id}>
              <span>
                {pack.quantity === null ? 'you count it now' : `${pack.quantity} ×`}{' '}
                {FORM_WORDS[pack.form] ?? pack.form}
              </span>
              <span className={styles.note}>
                {pack.lot ? `lot ${pack.lot} · ` : ''}
                {pack.useBy ? `use by ${pack.useBy} · ` : ''}
                {pack.place}
                {pack.owner === 'consignment' ? ' · consignment' : ''}
              </span>
              {pack.heldBecause ? (
                <Status tone="stop" look="plain">
                  Held: {stepWords(pack.heldBecause)}
                </Status>
              ) : null}
            </li>
          ))}
        </ul>
      </Section>
      <Section
        level={3}
        title="Configurations"
        note={countOf(use.configurations.length, 'version', 'versions')}
      >
        {use.configurations.length === 0 ? <p>None lists it.</p> : null}
        <ul className={styles.lines}>
          {use.configurations.map((line) => (
            <li key={`${line.id} ${line.status}`}>
              <Link href={`/configurations/${line.id}`}>{line.code}</Link>
              <span className={styles.note}>
                {line.name} · {line.as === 'line' ? `${line.expected} expected` : 'as a substitute'}
                {line.status === 'draft' ? ' · draft' : ''}
              </span>
            </li>
          ))}
        </ul>
      </Section>
      <Section level={3} title="Plans" note={countOf(use.plans.length, 'plan', 'plans')}>
        {use.plans.length === 0 ? <p>No plan names it.</p> : null}
        <ul className={styles.lines}>
          {use.plans.map((plan) => (
            <li key={plan.id}>
              <Link href={`/cases/${plan.caseId}`}>{plan.reference}</Link>
              <span className={styles.note}>
                {plan.caseDate} · {PLAN_WORDS[plan.status] ?? plan.status}
              </span>
            </li>
          ))}
        </ul>
      </Section>
    </div>
  );
}

function countOf(count: number, one: string, many: string): string {
  return count === 1 ? `1 ${one}` : `${count} ${many}`;
}
