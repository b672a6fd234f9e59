import type { Metadata } from 'next';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { ButtonRow } from '@/app/_ui/button-row';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { Section } from '@/app/_ui/section';
import { listImports } from '@/db/queries/exchange/imports';
import { LISTS } from '@/lib/exchange/lists/lists';
import { may } from '@/lib/people/permissions';
import styles from './[list]/exchange.module.css';
import { ImportsMade } from './imports-made';

export const metadata: Metadata = { title: 'Lists in and out' };
export const dynamic = 'force-dynamic';

/** Every list the hospital can bring in and take out, and what came in. */
export default async function ExchangePage() {
  const { db, person } = await enter('/exchange');
  const lists = Object.values(LISTS).filter(({ takeOut }) => may(person, takeOut));
  const imports = await listImports(db);
  return (
    <Page
      title="Lists in and out"
      lead="The hospital’s own lists come in as XLSX or CSV, tried first and then all or nothing; everything goes out as XLSX, CSV or JSON, and comes in again as it is."
    >
      <Section title="Lists" note="in the order in which a new hospital brings them in">
        <ul className={styles.lists}>
          {lists.map(({ kind, name, rowIs, bringIn }) => (
            <li key={kind} className={styles.list}>
              <div className={styles.part}>
                <h3>{name}</h3>
                <p className={styles.soft}>{rowIs}</p>
              </div>
              <ButtonRow>
                {may(person, bringIn) ? (
                  <LinkButton href={`/exchange/${kind}`}>{`Bring in: ${name}`}</LinkButton>
                ) : null}
                {(['xlsx', 'csv', 'json'] as const).map((ends) => (
                  <LinkButton
                    key={ends}
                    kind="quiet"
                    href={`/exchange/${kind}/file?as=list.${ends}`}
                    download
                  >
                    {`${name} as ${ends.toUpperCase()}`}
                  </LinkButton>
                ))}
              </ButtonRow>
            </li>
          ))}
          <li className={styles.list}>
            <div className={styles.part}>
              <h3>Theatre lists</h3>
              <p className={styles.soft}>One case a row. They come in by a way of their own.</p>
            </div>
            {may(person, 'keepTheatreList') ? (
              <ButtonRow>
                <LinkButton href="/cases/import">Bring in: Theatre lists</LinkButton>
              </ButtonRow>
            ) : null}
          </li>
        </ul>
      </Section>
      <Section title="What came in" note={imports.length === 0 ? 'nothing yet' : String(imports.length)}>
        <ImportsMade imports={imports} at={now()} mayTakeBack={false} />
      </Section>
    </Page>
  );
}
