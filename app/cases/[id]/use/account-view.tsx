'use client';

import { ScrollRegion } from '@/app/_ui/scroll-region';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import { wholeAccount } from '@/lib/usage/account';
import { questionText } from '@/lib/usage/questions';
import { differenceSentences, openUseWords } from '@/lib/wording/usage';
import styles from './use.module.css';
import type { Table } from './use-table';

/** Pieces out against pieces back, implanted and discarded: in all, and source by source where something is said. */
export function AccountView({ table }: { table: Table }) {
  const { accounts, differences, questions } = table.reckoned;
  const whole = wholeAccount(accounts);
  const shown = accounts.filter(
    ({ count, implanted, discarded, notFound, beyond }) =>
      count === null || implanted + discarded + notFound + beyond > 0,
  );
  const nameOfItem = (id: string) => table.items.get(id)?.name ?? id;
  return (
    <>
      <Section title="The account" note="pieces out are pieces back, implanted, discarded or not found">
        <ScrollRegion label="The account">
          <table className={styles.account}>
            <thead>
              <tr>
                <th scope="col">From</th>
                {['Out', 'Back', 'Implanted', 'Discarded', 'Not found', 'Open'].map((head) => (
                  <th key={head} scope="col">
                    {head}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {shown.map(({ key, out, back, implanted, discarded, notFound, open }) => (
                <tr key={key}>
                  <th scope="row">{table.nameOf(key)}</th>
                  {[out, back, implanted, discarded, notFound, open].map((figure, at) => (
                    // biome-ignore lint/suspicious/noArrayIndexKey: the columns of a table never change places
                    <td key={at}>{figure ?? '?'}</td>
                  ))}
                </tr>
              ))}
            </tbody>
            <tfoot>
              <tr>
                <th scope="row">Everything at the table</th>
                {[whole.out, whole.back, whole.implanted, whole.discarded, whole.notFound, whole.open].map(
                  (figure, at) => (
                    // biome-ignore lint/suspicious/noArrayIndexKey: the columns of a table never change places
                    <td key={at}>{figure}</td>
                  ),
                )}
              </tr>
            </tfoot>
          </table>
        </ScrollRegion>
        {whole.slotsUnknown > 0 ? (
          <p className={styles.soft}>
            {`What ${whole.slotsUnknown} ${whole.slotsUnknown === 1 ? 'line' : 'lines'} held nobody has counted: “?” is not established.`}
          </p>
        ) : null}
      </Section>
      <Section title="Other than planned" note="shown, and stops nothing">
        {differences.length === 0 ? (
          <p>
            <Status tone="good">As planned</Status>
          </p>
        ) : (
          <ul className={styles.sentences} aria-label="Other than planned">
            {differenceSentences(differences, nameOfItem).map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        )}
      </Section>
      <Section title="What stays open" note="a record closes with its open questions written in it">
        {questions.length === 0 ? (
          <p>
            <Status tone="good">Nothing: every piece is accounted for</Status>
          </p>
        ) : (
          <ul className={styles.sentences} aria-label="What stays open">
            {questions.map((question) => (
              <li key={questionText(question)}>{openUseWords(question, table.nameOf)}</li>
            ))}
          </ul>
        )}
      </Section>
    </>
  );
}
