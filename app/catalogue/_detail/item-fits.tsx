import Link from 'next/link';
import { Disclosure } from '@/app/_ui/disclosure';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import type { Item } from '@/lib/catalogue/item';
import type { Partner, Partners } from '@/lib/catalogue/partners';
import { writeMm } from '@/lib/quantities/length';
import { RELATION_WORDS } from '@/lib/wording/fit';
import styles from './detail.module.css';

/** As many as are read at a glance; the rest is folded away. */
const SHOWN = 8;

/** What the item goes together with, by the fit rules in force; not established is never counted as a fit. */
export function ItemFits({ partners }: { partners: readonly Partners[] }) {
  if (partners.length === 0) return <p>No fit rule relates an item of this kind to another.</p>;
  return (
    <div className={styles.fits}>
      {partners.map(({ relation, fits, notEstablished, doesNotFit }) => (
        <Section
          key={relation}
          level={3}
          title={RELATION_WORDS[relation].name}
          note={RELATION_WORDS[relation].between}
          actions={<Link href={`/fit/table?relation=${relation}`}>Fit table</Link>}
        >
          <div className={styles.outcomes}>
            <div>
              <Status tone={fits.length > 0 ? 'good' : 'neutral'} look="plain">
                {fits.length === 0 ? 'Fits nothing current' : `Fits ${countWords(fits)}`}
              </Status>
              <PartnerList partners={fits} />
            </div>
            {notEstablished.length > 0 ? (
              <div>
                <Status tone="unknown" look="plain">
                  Not established with {countWords(notEstablished)}
                </Status>
                <PartnerList partners={notEstablished} />
              </div>
            ) : null}
            {doesNotFit > 0 ? <p className={styles.note}>Does not fit {doesNotFit} others.</p> : null}
          </div>
        </Section>
      ))}
    </div>
  );
}

function countWords(partners: readonly Partner[]): string {
  const items = partners.reduce((count, partner) => count + partner.items.length, 0);
  return items === 1 ? '1 item' : `${items} items`;
}

function PartnerList({ partners }: { partners: readonly Partner[] }) {
  if (partners.length === 0) return null;
  const [shown, more] = [partners.slice(0, SHOWN), partners.slice(SHOWN)];
  return (
    <>
      <ul className={styles.partners}>
        {shown.map((partner) => (
          <PartnerLine key={partner.items[0]?.id} partner={partner} />
        ))}
      </ul>
      {more.length > 0 ? (
        <Disclosure summary={`${more.length} more`}>
          <ul className={styles.partners}>
            {more.map((partner) => (
              <PartnerLine key={partner.items[0]?.id} partner={partner} />
            ))}
          </ul>
        </Disclosure>
      ) : null}
    </>
  );
}

function PartnerLine({ partner: { items, by } }: { partner: Partner }) {
  const [first] = items;
  if (!first) return null;
  return (
    <li>
      <Link href={`/catalogue/${first.id}`}>{first.kind === 'screw' ? first.screwFamily : first.code}</Link>{' '}
      <span className={styles.note}>
        {first.kind === 'screw' ? lengthsOf(items) : first.name}
        {by.length > 0
          ? ` · ${by.length > 6 ? `${by.slice(0, 6).join(', ')} and ${by.length - 6} more` : by.join(', ')}`
          : ''}
      </span>
    </li>
  );
}

function lengthsOf(items: readonly Item[]): string {
  const lengths = items.flatMap((item) =>
    item.kind === 'screw' && item.lengthUm !== null ? [item.lengthUm] : [],
  );
  if (lengths.length === 0) return 'length not stated';
  const [least, most] = [Math.min(...lengths), Math.max(...lengths)];
  return least === most
    ? `${writeMm(least)} mm`
    : `${items.length} lengths, ${writeMm(least)} to ${writeMm(most)} mm`;
}
