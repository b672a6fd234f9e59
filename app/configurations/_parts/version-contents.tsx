import { Section } from '@/app/_ui/section';
import { ClassMark } from '@/app/sets/_parts/class-mark';
import { ItemCell } from '@/app/sets/_parts/line-cells';
import styles from '@/app/sets/_parts/parts.module.css';
import { RackTable } from '@/app/sets/_parts/rack-table';
import type { Item } from '@/lib/catalogue/item';
import type { ItemId } from '@/lib/identity/ids';
import type { ConfigurationLine } from '@/lib/sets/configuration';
import type { LayerLayout } from '@/lib/sets/layout';
import { familyWords } from '@/lib/wording/screw-families';

/** What a version asks for, by layer: drawings with their lines, racks as length grids. */
export function VersionContents({
  layers,
  items,
}: {
  layers: readonly LayerLayout<ConfigurationLine>[];
  items: ReadonlyMap<ItemId, Item>;
}) {
  const familyName = familyWords(items.values());
  const name = (id: ItemId) => items.get(id)?.name ?? id;
  return layers.map(({ layer, name: layerName, racks, loose }) => (
    <Section key={layer} level={3} title={`Layer ${layer}: ${layerName}`}>
      <div className={styles.layer}>
        {racks.map((grid) => (
          <RackTable
            key={grid.rackItemId}
            grid={grid}
            name={name(grid.rackItemId)}
            familyName={familyName}
            cell={(line) => (
              <span className={styles.cell}>
                <strong>{line.expected}</strong>
                <span className={styles.cellSub}>
                  <ClassMark mustHaveClass={line.mustHaveClass} short />
                </span>
                <span className={styles.cellSub}>{`min ${line.minimum}`}</span>
              </span>
            )}
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
                <th scope="col">Substitutes</th>
                <th scope="col" className={styles.end}>
                  Expected
                </th>
                <th scope="col" className={styles.end}>
                  Minimum
                </th>
              </tr>
            </thead>
            <tbody>
              {loose.map((line) => (
                <tr key={line.id}>
                  <td data-head="Row, slot">{`${line.row}, ${line.slot}`}</td>
                  <th scope="row">
                    <ItemCell item={items.get(line.itemId)} fallback={line.itemId} />
                  </th>
                  <td data-head="Class">
                    <ClassMark mustHaveClass={line.mustHaveClass} />
                  </td>
                  <td data-head="Substitutes">
                    {line.substitutes.length === 0 ? '–' : line.substitutes.map(name).join(', ')}
                  </td>
                  <td className={styles.end} data-head="Expected">
                    {line.expected}
                  </td>
                  <td className={styles.end} data-head="Minimum">
                    {line.minimum}
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
