import type { Database, Queries } from '@/db/client';
import { appendLedger } from '@/db/ledger';
import { rowFromItem } from '@/db/mappers/item';
import { items, makers, people, places, settings, theatres } from '@/db/schema';
import { item } from '@/lib/catalogue/item';
import { insertBenchCounts } from './bench/insertBenchCounts';
import { insertCards, insertFeeds } from './cards/insertCards';
import { insertKits } from './caseLife/insertKits';
import { catalogueEntries } from './catalogue/catalogue';
import { MAKERS } from './catalogue/makers';
import { PLACES, THEATRES } from './hospital/building';
import { PEOPLE } from './hospital/people';
import { HospitalClock } from './hospitalClock';
import { insertAll } from './insertAll';
import { insertCases } from './insertCases';
import { insertConfigurations } from './insertConfigurations';
import { insertSessions } from './insertSessions';
import { insertSets } from './insertSets';
import { insertStock } from './insertStock';
import { insertTurns } from './insertTurns';
import { insertLoadRecords } from './loads/insertLoadRecords';
import { insertLoans } from './loans/insertLoans';
import { insertDemoSecrets } from './people/insertDemoSecrets';
import { insertOpenings } from './pieces/insertOpenings';
import { insertStarterRules } from './rules/insertStarterRules';

const DEMO_KEY = 'demo';

/**
 * Fills an empty database with Larkmoor Infirmary, an invented hospital, as of `now`: all of it in one
 * transaction with one ledger entry, or nothing. A database that holds the demo already is left as it is.
 * Throws when the database holds anything else.
 */
export async function loadDemo({ db, now }: { db: Database; now: Date }): Promise<void> {
  if (await isDemo(db)) return;
  if (!(await isEmpty(db))) throw new Error('the demo is only loaded into an empty database');
  const clock = new HospitalClock(now);
  await db.tx(async (write) => {
    await insertAll(write, people, [...PEOPLE]);
    await insertDemoSecrets(write, now.toISOString());
    await insertAll(write, places, [...PLACES]);
    await insertAll(write, theatres, [...THEATRES]);
    await insertSessions(write, clock);
    await insertCatalogue(write);
    await insertStarterRules(write);
    await insertConfigurations(write, clock);
    await insertSets(write, clock);
    await insertStock(write, clock);
    await insertCases(write, clock);
    await insertCards(write, clock);
    await insertFeeds(write, clock);
    await insertTurns(write, clock);
    await insertLoadRecords(write);
    await insertBenchCounts(write, clock);
    await insertKits(write, clock);
    await insertLoans(write, clock);
    await insertOpenings(write, clock);
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
  await insertAll(write, makers, named);
  const nameOf = new Map<string, string>(named.map(({ id, name }) => [id, name]));
  const rows = catalogueEntries().map((entry) => {
    const parsed = item.parse(entry);
    return rowFromItem(parsed, 1, nameOf.get(parsed.makerId) ?? '');
  });
  await insertAll(write, items, rows);
}
