import { DefinitionList } from '@/app/_ui/definition-list';
import { NotStated } from '@/app/_ui/not-stated';
import { ScrollRegion } from '@/app/_ui/scroll-region';
import { spelled, unitOf } from './schema';
import styles from './what-if.module.css';

type Fields = Record<string, unknown>;

/** An answer as terms and values, and each list in it as a table, whatever the calculation. */
export function AnswerView({ answer, title }: { answer: Fields; title?: string }) {
  const entries = Object.entries(answer);
  const plain = entries.filter(([, value]) => !isObject(value) && !isRows(value));
  const nested = entries.filter(([, value]) => isObject(value) || isRows(value));
  return (
    <div className={styles.answer}>
      {title ? <h3 className={styles.answerTitle}>{title}</h3> : null}
      {plain.length > 0 ? (
        <DefinitionList
          items={plain.map(([key, value]) => {
            const unit = unitOf(key);
            return {
              term: spelled(key),
              value: written(value, key),
              ...(unit && value !== null && { unit }),
            };
          })}
        />
      ) : null}
      {nested.map(([key, value]) =>
        isRows(value) ? (
          <Rows key={key} title={spelled(key)} rows={value} />
        ) : (
          <AnswerView key={key} answer={value as Fields} title={spelled(key)} />
        ),
      )}
    </div>
  );
}

/** More columns than this do not fit beside the form. */
const MOST_COLUMNS = 6;

function Rows({ title, rows }: { title: string; rows: readonly Fields[] }) {
  const keys = [...new Set(rows.flatMap((row) => Object.keys(row)))];
  if (keys.length > MOST_COLUMNS || keys.includes('sentence')) return <Entries title={title} rows={rows} />;
  return (
    <ScrollRegion label={title}>
      <table className={styles.table}>
        <caption>{title}</caption>
        <thead>
          <tr>
            {keys.map((key) => (
              <th key={key} scope="col">
                {spelled(key)}
                {unitOf(key) ? <span className={styles.unit}> {unitOf(key)}</span> : null}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row, at) => (
            // An answer is drawn whole each time; a row has no other identity than its place.
            // biome-ignore lint/suspicious/noArrayIndexKey: see above
            <tr key={at}>
              {keys.map((key) => (
                <td key={key} className={typeof row[key] === 'number' ? styles.number : undefined}>
                  {written(row[key], key) ?? <NotStated>—</NotStated>}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollRegion>
  );
}

/** Rows with too much for a table: what each one says, and its values in small beneath. */
function Entries({ title, rows }: { title: string; rows: readonly Fields[] }) {
  return (
    <div>
      <h3 className={styles.answerTitle}>{title}</h3>
      <ul className={styles.entries}>
        {rows.map(({ sentence, ...rest }, at) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: as in the table
          <li key={at}>
            {typeof sentence === 'string' ? <p>{sentence}</p> : null}
            <p className={styles.values}>{inline(rest)}</p>
          </li>
        ))}
      </ul>
    </div>
  );
}

function isObject(value: unknown): value is Fields {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function isRows(value: unknown): value is Fields[] {
  return Array.isArray(value) && value.length > 0 && value.every(isObject);
}

/** What is somebody's text or code, which stands as it is however it looks. */
const VERBATIM = new Set(['text', 'value', 'plain', 'identifier', 'reading']);

/** Single words that only programs use are spelled; sentences stay as they are. */
function written(value: unknown, key: string): string | null {
  if (value === null || value === undefined) return null;
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'number') return figure(value, key);
  if (typeof value === 'string')
    return !VERBATIM.has(key) && /^(gs1|[a-z]+)([A-Z][a-z]*)+$/.test(value)
      ? spelled(value).toLowerCase()
      : value;
  if (Array.isArray(value)) {
    if (value.length === 0) return 'none';
    return value.map((one) => (isObject(one) ? inline(one) : (written(one, key) ?? '—'))).join(', ');
  }
  return inline(value as Fields);
}

function inline(value: Fields): string {
  return Object.entries(value)
    .filter(([, inner]) => inner !== null && !(Array.isArray(inner) && inner.length === 0))
    .map(([key, inner]) => `${spelled(key).toLowerCase()} ${written(inner, key) ?? '—'}`)
    .join(' · ');
}

/** Enough figures to see what moves, none that only binary made. */
function figure(value: number, key: string): string {
  if (Number.isInteger(value)) return key === 'seed' ? String(value) : value.toLocaleString('en-GB');
  if (Math.abs(value) < 1e-4)
    return value
      .toExponential(1)
      .replace('e-', ' × 10⁻')
      .replace(/⁻(\d+)$/, (_, digits: string) => `⁻${superscript(digits)}`);
  return String(Number(value.toPrecision(5)));
}

function superscript(digits: string): string {
  return [...digits].map((digit) => '⁰¹²³⁴⁵⁶⁷⁸⁹'[Number(digit)]).join('');
}
