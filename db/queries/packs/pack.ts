import { asc, desc, eq } from 'drizzle-orm';
import type { LabelledPack } from '@/lib/documents/labelContent';
import { packId as packIdSchema } from '@/lib/identity/ids';
import { barrier, type PackState, packContents, packShort, packState } from '@/lib/packs/pack';
import { mayRead, type Reading } from '../../reader';
import {
  configurations,
  configurationVersions,
  items,
  labelPrints,
  loads,
  packs,
  people,
  sets,
  shortDecisions,
} from '../../schema';
import { decisionFromRow } from '../short/decisions';

/** A pack as its page and its label show it. */
export type PackOnFile = NonNullable<Awaited<ReturnType<typeof loadPack>>>;

/** One pack with what lay in it, its labels and its load; `null` when there is none of that id. */
export async function loadPack(db: Reading, id: string) {
  mayRead(db, 'readHospital');
  const [row] = await db.read
    .select({
      pack: packs,
      packedBy: people.name,
      set: { id: sets.id, code: sets.code, packId: sets.packId, revision: sets.revision },
      configuration: configurations.name,
      version: configurationVersions.version,
      item: { id: items.id, code: items.code, name: items.name },
      load: { id: loads.id, number: loads.number, state: loads.state },
      decision: shortDecisions,
    })
    .from(packs)
    .innerJoin(people, eq(people.id, packs.packedBy))
    .leftJoin(sets, eq(sets.id, packs.setId))
    .leftJoin(configurationVersions, eq(configurationVersions.id, packs.versionId))
    .leftJoin(configurations, eq(configurations.id, configurationVersions.configurationId))
    .leftJoin(items, eq(items.id, packs.itemId))
    .leftJoin(loads, eq(loads.id, packs.loadId))
    .leftJoin(shortDecisions, eq(shortDecisions.id, packs.decisionId))
    .where(eq(packs.id, id));
  if (!row) return null;
  const prints = await db.read
    .select({ print: labelPrints, by: people.name })
    .from(labelPrints)
    .innerJoin(people, eq(people.id, labelPrints.printedBy))
    .where(eq(labelPrints.packId, id))
    .orderBy(desc(labelPrints.copy));
  const { pack } = row;
  const state: PackState = packState.parse(pack.state);
  // packs from before the whole line was kept name only what was found
  const contents = packContents.safeParse(pack.contents);
  const labelled: LabelledPack = {
    number: pack.number,
    code: row.set?.code ?? row.item?.code ?? pack.number,
    name: row.configuration ?? row.item?.name ?? '',
    version: row.version,
    lot: pack.lot,
    barrier: barrier.parse(pack.barrier),
    packedBy: row.packedBy,
    packedAt: pack.packedAt,
    massGrams: pack.weighedGrams ?? pack.workedGrams,
    state,
    useBy: pack.useBy,
    short: pack.short === null ? null : packShort.parse(pack.short),
  };
  return {
    id: packIdSchema.parse(pack.id),
    revision: pack.revision,
    kind: pack.kind === 'pouch' ? ('pouch' as const) : ('set' as const),
    labelled,
    contents: contents.success ? contents.data : null,
    workedGrams: pack.workedGrams,
    weighedGrams: pack.weighedGrams,
    set: row.set,
    item: row.item,
    load: row.load,
    decision: row.decision && decisionFromRow(row.decision),
    copies: prints.map(({ print, by }) => ({
      copy: print.copy,
      because: print.because,
      by,
      at: print.printedAt,
    })),
  };
}

/** The newest packs, for the page that packs pouches. */
export async function lastPouches(db: Reading, limit: number) {
  mayRead(db, 'readHospital');
  const rows = await db.read
    .select({ pack: packs, item: items.name, by: people.name })
    .from(packs)
    .innerJoin(items, eq(items.id, packs.itemId))
    .innerJoin(people, eq(people.id, packs.packedBy))
    .orderBy(desc(packs.packedAt), asc(packs.id))
    .limit(limit);
  return rows.map(({ pack, item, by }) => ({
    id: pack.id,
    number: pack.number,
    item,
    by,
    at: pack.packedAt,
    state: packState.parse(pack.state),
  }));
}
