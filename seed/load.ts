import type { Database, Queries } from '@/db/client';
import { insertMany } from '@/db/insertMany';
import { appendLedger } from '@/db/ledger';
import { rowFromItem } from '@/db/mappers/item';
import { beginJournal } from '@/db/operations/pieces/begin-journal';
import { items, makers, people, places, settings, theatres } from '@/db/schema';
import { item } from '@/lib/catalogue/item';
import { insertBenchCounts } from './bench/insertBenchCounts';
import { insertCards, insertFeeds } from './cards/insertCards';
import { insertKits } from './caseLife/insertKits';
import { catalogueEntries } from './catalogue/catalogue';
import { MAKERS } from './catalogue/makers';
import { insertConsignment } from './consignment/insertConsignment';
import { tellHistory } from './history/history';
import { insertPastCases } from './history/insertPastCases';
import { insertPastPieces } from './history/insertPastPieces';
import { insertPastTurns } from './history/insertPastTurns';
import { PLACES, THEATRES } from './hospital/building';
import { COSTS } from './hospital/costs';
import { PEOPLE } from './hospital/people';
import { HospitalClock } from './hospitalClock';
import { insertCases } from './insertCases';
import { insertConfigurations } from './insertConfigurations';
import { insertSessions } from './insertSessions';
import { insertSets } from './insertSets';
import { insertStock } from './insertStock';
import { insertSupplyTerms } from './insertSupplyTerms';
import { insertSterilisers, insertTurns } from './insertTurns';
import { insertLoadRecords } from './loads/insertLoadRecords';
import { insertLoans } from './loans/insertLoans';
import { insertDemoSecrets } from './people/insertDemoSecrets';
import { insertRecall } from './recall/insertRecall';
import { insertOrders } from './restock/insertOrders';
import { insertStarterRules } from './rules/insertStarterRules';
import { insertReasons } from './usage/reasons';

const DEMO_KEY = 'demo';

/**
 * Fills an empty database with Larkmoor Infirmary, an invented hospital, as of `now`: all of it in one
 * transaction, or nothing, with one ledger entry for what it is made of and one for each act of the program in it. A database that holds the demo already is left as it is.
 * Throws when the database holds anything else.
 */
export async function loadDemo({
  db,
  now,
  history: withHistory = true,
}: {
  db: Database;
  now: Date;
  /** Two years of cases, turns and usage behind it. */
  history?: boolean;
}): Promise<void> {
  if (await isDemo(db)) return;
  if (!(await isEmpty(db))) throw new Error('the demo is only loaded into an empty database');
  const clock = new HospitalClock(now);
  await db.tx(async (write) => {
    await insertMany(write, people, [...PEOPLE]);
    await insertDemoSecrets(write, now.toISOString());
    await insertMany(write, places, [...PLACES]);
    await insertMany(write, theatres, [...THEATRES]);
    await insertSessions(write, clock);
    await insertCatalogue(write);
    await insertStarterRules(write);
    await insertReasons(write, now.toISOString());
    await insertConfigurations(write, clock);
    await insertSets(write, clock);
    await insertStock(write, clock);
    const history = withHistory ? await tellHistory(write, clock) : null;
    if (history) await insertPastCases(write, history);
    await insertSupplyTerms(write, now.toISOString());
    await insertCases(write, clock);
    await insertCards(write, clock);
    await insertFeeds(write, clock);
    await insertSterilisers(write);
    if (history) await insertPastTurns(write, history);
    await insertTurns(write, clock, history);
    await insertLoadRecords(write);
    await insertBenchCounts(write, clock);
    await insertKits(write, clock);
    await insertLoans(write, clock);
    if (history) await insertPastPieces(write, clock, history);
    else await beginJournal(write, { at: now.toISOString(), on: clock.today });
    await insertConsignment(write, clock);
    if (history) {
      await insertOrders(write, clock);
      await insertRecall(write, clock);
    }
    await write.insert(settings).values({ key: 'costs', value: COSTS });
    await write.insert(settings).values({ key: DEMO_KEY, value: { loadedOn: clock.today } });
    await appendLedger(write, {
      doneAt: now.toISOString(),
      enteredAt: now.toISOString(),
      personId: null,
      action: 'load-demo',
      subjectKind: 'hospital',
      subjectId: 'larkmoor-infirmary',
      detail: { loadedOn: clock.today },
    });
  });
}

/** Whether nothing was ever put into the database. */
export async function isEmpty({ read }: Pick<Database, 'read'>): Promise<boolean> {
  for (const table of [items, people, settings]) {
    const rows = await read.select().from(table).limit(1);
    if (rows.length > 0) return false;
  }
  return true;
}

/** Whether what the database holds began as the demo, so that it may be put back to it. */
export async function isDemo({ read }: Pick<Database, 'read'>): Promise<boolean> {
  const rows = await read.select({ key: settings.key }).from(settings);
  return rows.some((row) => row.key === DEMO_KEY);
}

async function insertCatalogue(write: Queries): Promise<void> {
  const named = Object.values(MAKERS).map(({ id, name }) => ({ id, name }));
  await insertMany(write, makers, named);
  const nameOf = new Map<string, string>(named.map(({ id, name }) => [id, name]));
  const rows = catalogueEntries().map((entry) => {
    const parsed = item.parse(entry);
    return rowFromItem(parsed, 1, nameOf.get(parsed.makerId) ?? '');
  });
  await insertMany(write, items, rows);
}
