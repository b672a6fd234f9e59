import Link from 'next/link';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import { type CardAsked, whereLines } from '@/lib/documents/cardExtras';
import { cardPaperWords as words } from '@/lib/wording/card-paper';
import { cardWords } from '@/lib/wording/cards';
import styles from './kit.module.css';
import type { KitNames } from './kit-names';

/** What the surgeon's preference card asks for beside the plan, and where it is. */
export function CardExtras({ card, names }: { card: CardAsked & { id: string }; names: KitNames }) {
  return (
    <Section title={words.asked} note={`version ${card.version}`} id="card">
      <p>
        <Link href={`/plans/cards/${card.id}`}>{`${card.procedure}, ${card.surgeon}`}</Link>.{' '}
        {cardWords.notAsked}
        {card.newest > card.version ? ` ${words.newer(card.version, card.newest)}` : ''}
      </p>
      {card.note === null ? null : <p>{card.note}</p>}
      {card.extras.length === 0 ? null : (
        <ul className={styles.take} aria-label={words.caption}>
          {card.extras.map((extra) => (
            <li key={extra.itemId} className={styles.takeRow}>
              <div className={styles.takeRole}>
                <Status tone={extra.lacking > 0 ? 'attention' : 'good'}>
                  {extra.lacking > 0 ? 'Not all there' : 'There'}
                </Status>
              </div>
              <div>
                <p className={styles.takeName}>{`${extra.quantity} × ${names.item(extra.itemId)}`}</p>
                {extra.note === null ? null : <p className={styles.aside}>{extra.note}</p>}
              </div>
              <div>
                {whereLines(extra).map((line) => (
                  <p key={line} className={styles.aside}>
                    {line}
                  </p>
                ))}
              </div>
            </li>
          ))}
        </ul>
      )}
    </Section>
  );
}
