import { and, desc, eq, gt, or, sql } from 'drizzle-orm';
import type { IdentifierOutput } from '@/lib/calculations/identifier/schema';
import { setId as parsedSet } from '@/lib/identity/ids';
import { whySheetIsOld } from '@/lib/packs/printed';
import { type ScanMeaning, scanMeaning } from '@/lib/scanning/meaning';
import { ownCode } from '@/lib/scanning/ownCodes';
import type { Queries } from '../../client';
import { prepared } from '../../prepared';
import { cases, counts, items, loads, places, sets, sheetPrints, stock } from '../../schema';
import { packMeaning } from './packMeaning';

/**
 * What a code names here: our own first, then what its maker's code says. Every question goes by a unique index, so that
 * it takes as long in a full store as in an empty one.
 *
 * @param read inside or outside a write
 */
export async function meaningOf(
  read: Queries,
  text: string,
  reading: IdentifierOutput,
): Promise<ScanMeaning> {
  const own = ownCode(text);
  if (own?.kind === 'pack') {
    const pack = await packMeaning(read, own.number, own.copy);
    if (pack) return pack;
  }
  if (own?.kind === 'place') {
    const [place] = await read.select().from(places).where(eq(places.id, own.placeId));
    if (place) return parsed({ kind: 'place', placeId: place.id, name: place.name });
  }
  if (own?.kind === 'stock') {
    const label = await stockMeaning(read, own.stockId);
    if (label) return label;
  }
  const named = own?.kind === 'name' ? await namedHere(read, own.name) : [];
  const fromCode = reading.state === 'read' ? itemMeaning(read, reading) : null;
  const all = fromCode?.kind === 'item' ? [...named, fromCode] : named;
  const [only] = all;
  if (only && all.length === 1) return only;
  if (all.length > 1) return refusal('severalThings', all.map(candidate));
  if (fromCode) return fromCode;
  if (reading.state === 'faulty' || reading.problems.some(({ code }) => code === 'check-digit'))
    return { ...refusal('faulty'), faults: reading.problems.map(({ sentence }) => sentence) };
  if (reading.state === 'ambiguous')
    return refusal(
      'ambiguous',
      reading.readings.map(({ reading: one }) => one),
    );
  return { kind: 'unknown', text: reading.text, gtin: null };
}

const parsed = (meaning: unknown): ScanMeaning => scanMeaning.parse(meaning);

const refusal = (
  because: (ScanMeaning & { kind: 'refused' })['because'],
  candidates: string[] = [],
): ScanMeaning & { kind: 'refused' } => ({
  kind: 'refused',
  because,
  setId: null,
  packId: null,
  candidates,
  faults: [],
});

function candidate(meaning: ScanMeaning): string {
  switch (meaning.kind) {
    case 'set':
      return `set ${meaning.code}`;
    case 'item':
      return `item ${meaning.code}`;
    case 'load':
      return `load ${meaning.number}`;
    case 'case':
      return `case ${meaning.reference}`;
    default:
      return meaning.kind;
  }
}

const ITEM = { id: items.id, code: items.code, name: items.name, gtin: items.gtin, status: items.status };

const name = sql.placeholder('name');
const setNamed = prepared((read) =>
  read.select({ id: sets.id, code: sets.code }).from(sets).where(eq(sets.code, name)).prepare(),
);
const itemNamed = prepared((read) => read.select(ITEM).from(items).where(eq(items.code, name)).prepare());
const loadNamed = prepared((read) => read.select().from(loads).where(eq(loads.number, name)).prepare());
const sheetNamed = prepared((read) =>
  read.select().from(sheetPrints).where(eq(sheetPrints.number, name)).prepare(),
);
const caseNamed = prepared((read) =>
  read
    .select({ id: cases.id, reference: cases.reference })
    .from(cases)
    .where(eq(cases.reference, name))
    .prepare(),
);
const itemOfGtin = prepared((read) =>
  read
    .select(ITEM)
    .from(items)
    .where(eq(items.gtin, sql.placeholder('gtin')))
    .prepare(),
);

/** Whatever carries that name: a set, an item, a load, a count sheet, a case. More than one is not decided here. */
async function namedHere(read: Queries, code: string): Promise<ScanMeaning[]> {
  const found: ScanMeaning[] = [];
  const set = setNamed(read).get({ name: code });
  if (set) found.push(parsed({ kind: 'set', setId: set.id, code: set.code }));
  const item = itemNamed(read).get({ name: code });
  if (item)
    found.push(ofItem(item, { gtin: item.gtin, lot: null, serial: null, useBy: null, quantity: null }));
  const upper = { name: code.toUpperCase() };
  const load = loadNamed(read).get(upper);
  if (load) found.push(parsed({ kind: 'load', loadId: load.id, number: load.number, state: load.state }));
  const sheet = sheetNamed(read).get(upper);
  if (sheet) found.push(await sheetMeaning(read, sheet));
  const booked = caseNamed(read).get(upper);
  if (booked) found.push(parsed({ kind: 'case', caseId: booked.id, reference: booked.reference }));
  return found;
}

const ofItem = (
  row: { id: string; code: string; name: string; status: string },
  says: Record<'gtin' | 'lot' | 'serial' | 'useBy', string | null> & { quantity: number | null },
): ScanMeaning =>
  parsed({ kind: 'item', itemId: row.id, code: row.code, name: row.name, status: row.status, ...says });

/** What a maker's code names: the item with its GTIN, with lot, serial and use-by as the code has them. */
function itemMeaning(read: Queries, { elements, text }: IdentifierOutput): ScanMeaning {
  const plain = (meaning: string) => elements.find((one) => one.meaning === meaning)?.plain ?? null;
  const gtin = plain('gtin');
  const row = gtin === null ? undefined : itemOfGtin(read).get({ gtin });
  if (!row) return { kind: 'unknown', text, gtin };
  const quantity = Number(plain('count') ?? 0);
  return ofItem(row, {
    gtin,
    lot: plain('lot'),
    serial: plain('serial'),
    useBy: plain('useBy')?.slice(0, 10) ?? null,
    quantity: quantity > 0 ? quantity : null,
  });
}

async function stockMeaning(read: Queries, stockId: string): Promise<ScanMeaning | null> {
  const [row] = await read
    .select({ stock, code: items.code })
    .from(stock)
    .innerJoin(items, eq(items.id, stock.itemId))
    .where(eq(stock.id, stockId));
  if (!row) return null;
  const { id, itemId, lot, useBy, placeId } = row.stock;
  return parsed({ kind: 'stock', stockId: id, itemId, code: row.code, lot, useBy, placeId });
}

/**
 * A count sheet, or why it is an old one: a newer one was printed for the set, the set follows another version now, or it
 * was counted since.
 */
async function sheetMeaning(read: Queries, sheet: typeof sheetPrints.$inferSelect): Promise<ScanMeaning> {
  const [set] = await read.select().from(sets).where(eq(sets.id, sheet.setId));
  if (!set) return { kind: 'unknown', text: sheet.number, gtin: null };
  const [newer] = await read
    .select({ number: sheetPrints.number })
    .from(sheetPrints)
    .where(
      and(
        eq(sheetPrints.setId, sheet.setId),
        or(
          gt(sheetPrints.printedAt, sheet.printedAt),
          and(eq(sheetPrints.printedAt, sheet.printedAt), gt(sheetPrints.number, sheet.number)),
        ),
      ),
    )
    .limit(1);
  const [count] = await read
    .select({ countedAt: counts.countedAt })
    .from(counts)
    .where(eq(counts.setId, sheet.setId))
    .orderBy(desc(counts.countedAt))
    .limit(1);
  const stale = whySheetIsOld({
    printed: { versionId: sheet.versionId, at: sheet.printedAt },
    now: {
      versionId: set.versionId,
      contentsChangedAt: count?.countedAt ?? null,
      withdrawn: set.withdrawnAt !== null,
    },
  });
  const old = newer || stale !== null;
  if (old)
    return {
      ...refusal('oldSheet', [`${sheet.number} of ${set.code}`]),
      setId: parsedSet.parse(set.id),
    };
  const { number, setId, versionId, setRevision } = sheet;
  return parsed({ kind: 'sheet', number, setId, code: set.code, versionId, setRevision });
}
