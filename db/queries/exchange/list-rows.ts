import { asc } from 'drizzle-orm';
import type { ListKind } from '@/lib/exchange/list';
import { NONE } from '@/lib/exchange/list';
import { LISTS } from '@/lib/exchange/lists/lists';
import type { OutRows } from '@/lib/exchange/out';
import { rowsOfVersion } from '@/lib/exchange/plans/configurations';
import { rowsOfHoles } from '@/lib/exchange/plans/holes';
import { cellsOfItem } from '@/lib/exchange/plans/itemCells';
import { groupBy } from '@/lib/lists/groupBy';
import type { Queries } from '../../client';
import { mayRead, type Reading } from '../../reader';
import { people, stock } from '../../schema';
import { catalogueFacts } from './catalogue-facts';
import { configurationsFacts } from './configurations-facts';
import { receivedDeliveries } from './received-deliveries';
import { setsFacts } from './sets-facts';
import { namedItems, namedPlaces } from './shelf-facts';

/** One list as it stands, in the rows in which it would come in again. */
export async function listRows(db: Reading, kind: ListKind, now: string): Promise<OutRows> {
  mayRead(db, LISTS[kind].takeOut);
  return ROWS[kind](db.read, now);
}

const ROWS: Record<ListKind, (read: Queries, now: string) => Promise<OutRows>> = {
  async catalogue(read) {
    const { items, makers } = await catalogueFacts(read);
    const names = new Map(makers.map(({ id, name }) => [id, name]));
    return byCode(items.map(({ item }) => item)).map((item) =>
      cellsOfItem(item, names.get(item.makerId) ?? ''),
    );
  },
  async holes(read) {
    const { items } = await catalogueFacts(read);
    return byCode(items.map(({ item }) => item)).flatMap((item) =>
      item.kind === 'plate' ? rowsOfHoles(item) : [],
    );
  },
  async people(read) {
    const rows = await read.select().from(people).orderBy(asc(people.name));
    return rows.flatMap(({ name, role, leftAt }) => (leftAt === null ? [{ name, role }] : []));
  },
  async sets(read, now) {
    const { sets } = await setsFacts(read, now);
    return byCode(sets).flatMap(({ code, configuration, owner, placeName }) =>
      owner === 'ours' ? [{ code, configuration, place: placeName ?? '' }] : [],
    );
  },
  async configurations(read, now) {
    const { configurations, items } = await configurationsFacts(read, now);
    const codes = new Map<string, string>(items.map(({ id, code }) => [id, code]));
    return configurations.flatMap((one) => {
      if (one.isOnLoan) return [];
      const version = one.versions.find(({ status }) => status === 'inForce') ?? one.versions[0];
      return version ? rowsOfVersion(one, version.content, (id) => codes.get(id) ?? id) : [];
    });
  },
  async deliveries(read) {
    const [received, named] = await Promise.all([receivedDeliveries(read, null), names(read)]);
    return received.flatMap(({ supplier, reference, arrivedOn, lines }) =>
      lines.map((line) => ({
        ...{ supplier, reference, arrivedOn },
        ...heapCells(line, named),
        count: String(line.count),
        unit: line.unit,
        held: line.held ?? '',
      })),
    );
  },
  async stock(read) {
    const [rows, named] = await Promise.all([read.select().from(stock), names(read)]);
    const cells = rows.map((row) => ({
      quantity: row.quantity,
      of: { ...heapCells(row, named), held: row.heldBecause ?? '' },
    }));
    // heaps alike in all a list says are one row of it
    const alike = groupBy(cells, ({ of }) => JSON.stringify(of));
    return [...alike.values()]
      .map((same) => ({
        ...same[0]?.of,
        pieces: String(same.reduce((sum, { quantity }) => sum + quantity, 0)),
      }))
      .filter(({ pieces }) => pieces !== '0')
      .sort((a, b) => order(a).localeCompare(order(b), 'en-GB'));
  },
};

const order = (row: Readonly<Record<string, string>>) => `${row.item} ${row.lot} ${row.useBy} ${row.place}`;

const byCode = <T extends { code: string }>(all: readonly T[]): T[] =>
  [...all].sort((a, b) => a.code.localeCompare(b.code, 'en-GB'));

interface Names {
  items: ReadonlyMap<string, { code: string; gtin: string | null }>;
  places: ReadonlyMap<string, string>;
}

async function names(read: Queries): Promise<Names> {
  const [items, places] = await Promise.all([namedItems(read), namedPlaces(read)]);
  return {
    items: new Map(items.map((item) => [item.id, item])),
    places: new Map(places.map(({ id, name }) => [id, name])),
  };
}

function heapCells(
  {
    itemId,
    form,
    lot,
    useBy,
    owner,
    placeId,
  }: {
    itemId: string;
    form: string;
    lot: string | null;
    useBy: string | null;
    owner: string;
    placeId: string;
  },
  { items, places }: Names,
) {
  const item = items.get(itemId);
  return {
    item: item?.code ?? itemId,
    gtin: item?.gtin ?? '',
    form,
    lot: lot ?? NONE,
    useBy: useBy ?? NONE,
    owner,
    place: places.get(placeId) ?? placeId,
  };
}
