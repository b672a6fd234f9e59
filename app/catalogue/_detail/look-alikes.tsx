import Link from 'next/link';
import { Drawing } from '@/app/_ui/drawing/Drawing';
import { NotStated } from '@/app/_ui/not-stated';
import { ScrollRegion } from '@/app/_ui/scroll-region';
import type { Plate } from '@/lib/catalogue/item';
import { drawPlate } from '@/lib/documents/drawing/plate';
import { holesInWords } from '@/lib/wording/catalogue';
import { itemValues } from '@/lib/wording/itemValues';
import styles from './detail.module.css';

const COMPARED = new Set([
  'side',
  'lengthUm',
  'widthUm',
  'headWidthUm',
  'thicknessUm',
  'material',
  'takesThreadsUm',
  'shape',
]);

/** Plates easily taken for each other, at one scale, with only what differs. */
export function LookAlikes({
  plates,
  makers,
}: {
  plates: readonly Plate[];
  makers: ReadonlyMap<string, string>;
}) {
  const longest = Math.max(...plates.map((plate) => drawPlate(plate).widthUm));
  const columns = plates.map((plate) => ({
    plate,
    values: new Map(
      [
        ...itemValues(plate, makers.get(plate.makerId) ?? '').filter(
          ({ key }) => COMPARED.has(key) || key === 'makerId',
        ),
        { key: 'holes', term: 'Holes', value: holesInWords(plate.holes) },
      ].map((value) => [value.key, value]),
    ),
  }));
  const keys = [...new Set(columns.flatMap(({ values }) => [...values.keys()]))];
  const differing = keys.filter(
    (key) => new Set(columns.map(({ values }) => values.get(key)?.value ?? '')).size > 1,
  );
  return (
    <ScrollRegion label="Look-alike plates">
      <table className={styles.table}>
        <caption className={styles.note}>At one scale; only what differs is listed.</caption>
        <thead>
          <tr>
            <th scope="col">Plate</th>
            {columns.map(({ plate }) => (
              <th key={plate.id} scope="col">
                <Link href={`/catalogue/${plate.id}`}>{plate.code}</Link>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          <tr>
            <th scope="row">Drawing</th>
            {columns.map(({ plate }) => (
              <td key={plate.id} className={styles.twin}>
                <Drawing
                  scene={drawPlate(plate)}
                  pxPerMm={260_000 / longest}
                  title={`Drawing of ${plate.code}`}
                />
              </td>
            ))}
          </tr>
          {differing.map((key) => (
            <tr key={key}>
              <th scope="row">{columns.map(({ values }) => values.get(key)?.term).find(Boolean)}</th>
              {columns.map(({ plate, values }) => {
                const value = values.get(key);
                return (
                  <td key={plate.id}>
                    {value?.value ? (
                      `${value.value}${value.unit ? ` ${value.unit}` : ''}`
                    ) : value ? (
                      <NotStated />
                    ) : (
                      '–'
                    )}
                  </td>
                );
              })}
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollRegion>
  );
}
