import type { LotBalance } from '@/lib/trace/lotTrace';
import { BALANCE_WORDS } from '@/lib/wording/recall';
import { boundsWord } from '@/lib/wording/trace';
import styles from '../trace.module.css';

const TERMS = ['implanted', 'wasted', 'held', 'returned', 'unaccounted'] as const;
const PARTS = ['notFound', 'setAside', 'lotLost'] as const;

/** received = implanted + wasted + held + returned + unaccounted; a term known between bounds shows both. */
export function BalanceTable({ balance }: { balance: LotBalance }) {
  return (
    <table className={styles.balance}>
      <caption className={styles.soft}>{BALANCE_WORDS.caption}</caption>
      <tbody>
        {TERMS.map((term) => (
          <tr key={term}>
            <th scope="row">{BALANCE_WORDS[term]}</th>
            <td>{boundsWord(balance[term])}</td>
          </tr>
        ))}
        {PARTS.filter((part) => balance[part].hi > 0).map((part) => (
          <tr key={part}>
            <th scope="row" className={styles.part}>
              {BALANCE_WORDS[part]}
            </th>
            <td>{boundsWord(balance[part])}</td>
          </tr>
        ))}
      </tbody>
      <tfoot>
        <tr>
          <th scope="row">{BALANCE_WORDS.received}</th>
          <td>{balance.received}</td>
        </tr>
      </tfoot>
    </table>
  );
}
