import { Glyph } from '@/app/_ui/glyph';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import type { Item } from '@/lib/catalogue/item';
import type { ItemId } from '@/lib/identity/ids';
import type { HeldLine } from '@/lib/sets/holdings';
import type { LayerLayout } from '@/lib/sets/layout';
import { capitalised } from '@/lib/wording/numbers';
import { familyWords } from '@/lib/wording/screw-families';
import { CONDITION_WORDS } from '@/lib/wording/sets';
import { ClassMark } from './class-mark';
import { ItemCell } from './line-cells';
import styles from './parts.module.css';
import { RackTable } from './rack-table';

/** What a set holds, by layer: drawings with their lines, racks as length grids with found over expected. */
export function Contents({
  layers,
  items,
}: {
  layers: readonly LayerLayout<HeldLine>[];
  items: ReadonlyMap<ItemId, Item>;
}) {
  const familyName = familyWords(items.values());
  return layers.map(({ layer, name, racks, loose }) => (
    <Section
      key={layer}
      level={3}
      title={`Layer ${layer}: ${name}`}
      note={layerNote([...loose, ...racks.flatMap(({ rows }) => rows.flatMap(({ cells }) => cells))])}
    >
      <div className={styles.layer}>
        {racks.map((grid) => (
          <RackTable
            key={grid.rackItemId}
            grid={grid}
            name={items.get(grid.rackItemId)?.name ?? 'Screw rack'}
            familyName={familyName}
            cell={(line) => <RackCell line={line} />}
          />
        ))}
        {loose.length > 0 ? (
          <table className={styles.lines}>
            <caption className={styles.hidden}>{`Lines of layer ${layer}`}</caption>
            <thead>
              <tr>
                <th scope="col">Row, slot</th>
                <th scope="col">Item</th>
                <th scope="col">Class</th>
                <th scope="col" className={styles.end}>
                  Found / expected
                </th>
              </tr>
            </thead>
            <tbody>
              {loose.map((line) => (
                <tr key={line.id} data-short={shortness(line)}>
                  <td data-head="Row, slot">{`${line.row}, ${line.slot}`}</td>
                  <th scope="row">
                    <ItemCell item={items.get(line.itemId)} fallback={line.itemId} />
                  </th>
                  <td data-head="Class">
                    <ClassMark mustHaveClass={line.mustHaveClass} />
                  </td>
                  <td className={styles.end} data-head="Found / expected">
                    <FoundOf line={line} />
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        ) : null}
      </div>
    </Section>
  ));
}

/** `true` short, `must` below the minimum of a must-have; nothing where whole or not counted. */
function shortness({ found, expected, minimum, mustHaveClass }: HeldLine): 'true' | 'must' | undefined {
  if (found === null || found >= expected) return undefined;
  return mustHaveClass <= 2 && found < minimum ? 'must' : 'true';
}

function FoundOf({ line }: { line: HeldLine }) {
  const { found, expected, minimum, unsound, condition } = line;
  const short = shortness(line);
  return (
    <>
      {found === null ? (
        <Status tone="unknown" look="plain">{`not counted, ${expected} expected`}</Status>
      ) : short ? (
        <Status tone={short === 'must' ? 'stop' : 'attention'} look="plain">
          {`${found} / ${expected}${short === 'must' ? `, at least ${minimum}` : ''}`}
        </Status>
      ) : (
        `${found} / ${expected}`
      )}
      {found !== null && found > expected ? (
        <span className={styles.under}>{found - expected} over</span>
      ) : null}
      {unsound > 0 ? (
        <span className={styles.under}>{`${unsound} put aside: ${CONDITION_WORDS[condition]}`}</span>
      ) : null}
    </>
  );
}

function RackCell({ line }: { line: HeldLine }) {
  const { found, expected, unsound, condition } = line;
  const short = shortness(line);
  const state = found === null ? 'uncounted' : short === 'must' ? 'must' : short ? 'short' : undefined;
  return (
    <span className={styles.cell} data-state={state}>
      <span>
        {state ? (
          <>
            <Glyph tone={state === 'uncounted' ? 'unknown' : state === 'must' ? 'stop' : 'attention'} />{' '}
          </>
        ) : null}
        {found ?? '–'}/{expected}
      </span>
      {state === 'uncounted' ? <span className={styles.cellSub}>not counted</span> : null}
      {short ? <span className={styles.cellSub}>{short === 'must' ? 'must-have' : 'short'}</span> : null}
      {unsound > 0 ? (
        <span className={styles.cellSub}>{`${unsound} ${CONDITION_WORDS[condition]}`}</span>
      ) : null}
    </span>
  );
}

function layerNote(lines: readonly (HeldLine | null)[]): string {
  const own = lines.filter((line) => line !== null);
  const uncounted = own.filter(({ found }) => found === null).length;
  const expected = own.reduce((sum, line) => sum + line.expected, 0);
  const found = own.reduce((sum, line) => sum + Math.min(line.found ?? 0, line.expected), 0);
  const pieces = `${found} of ${expected} pieces`;
  return uncounted === 0
    ? pieces
    : capitalised(`${pieces}, ${uncounted} ${uncounted === 1 ? 'line' : 'lines'} not counted`);
}
