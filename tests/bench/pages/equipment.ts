import { sql } from 'drizzle-orm';
import type { Database } from '@/db/client';
import { keptCatalogue } from '@/db/queries/caseKit';
import { listCases } from '@/db/queries/cases';
import { catalogueFacets, searchCatalogue } from '@/db/queries/catalogueSearch';
import { completenessOfSets } from '@/db/queries/completeness';
import { listConfigurations } from '@/db/queries/configurations';
import { openEmergencies } from '@/db/queries/emergency/record';
import { listFitRules, loadFitEngine } from '@/db/queries/fitRules';
import { exceptionList } from '@/db/queries/fitScreens';
import { keptSetStandings } from '@/db/queries/keptStandings';
import { listSterilisers, loadBoard } from '@/db/queries/loads/loadBoard';
import { lendersOnFile } from '@/db/queries/loans/lenders';
import { loanBoard } from '@/db/queries/loans/loanBoard';
import { loadPack } from '@/db/queries/packs/pack';
import { listPlaces, whatLiesIn } from '@/db/queries/places';
import { lastScans } from '@/db/queries/scans/lastScans';
import { loadSetStanding, loadSetStandings } from '@/db/queries/setStandings';
import { lastCounts } from '@/db/queries/sets';
import { recentStockCounts } from '@/db/queries/shelf/countScreen';
import { placesToCount } from '@/db/queries/shelf/placesToCount';
import { receivableItems, recentDeliveries } from '@/db/queries/shelf/receiving';
import { shelfItems, shelfLots } from '@/db/queries/shelf/shelfLots';
import { shelfMoves } from '@/db/queries/shelf/shelfMoves';
import { openDecisions } from '@/db/queries/short/screen';
import { asidePiecesOf } from '@/db/queries/turns/asidePieces';
import { listHeldSets } from '@/db/queries/turns/heldSets';
import { casesToSendTo, loadSetTurn } from '@/db/queries/turns/setTurn';
import { loadWorkQueue } from '@/db/queries/turns/workQueue';
import { items, packs, places, sets } from '@/db/schema';
import { searchFrom } from '@/lib/catalogue/search';
import { personId, placeId, setId } from '@/lib/identity/ids';
import { addDays } from '@/lib/quantities/plainDate';
import { wallClock } from '@/lib/theatre/localTime';
import type { ListPage } from './listPage';

/** One of each to look at, whichever hospital it is. */
const some = async (db: Database, table: typeof items | typeof sets | typeof places | typeof packs) =>
  (await db.read.select({ id: table.id }).from(table).limit(1))[0]?.id ?? '';

/** What is bought, kept, packed, run and lent. */
export const pages: ListPage[] = [
  {
    page: '/ (cases of two days)',
    bound: 20,
    ask: (db, at) => listCases(db, wallClock(at).date, addDays(wallClock(at).date, 2)),
  },
  { page: '/sets', bound: 60, ask: (db, at) => keptSetStandings(db, at) },
  { page: '/sets after an entry', bound: 400, ask: (db, at) => loadSetStandings(db, { now: at }) },
  {
    page: 'completeness of every set',
    bound: 60,
    ask: (db) => completenessOfSets(db),
    beside: (db) => db.read.all(sql`SELECT count(*), sum(found) FROM set_contents`),
  },
  {
    page: '/sets/[id]',
    bound: 120,
    ask: async (db, at) => {
      const id = setId.parse(await some(db, sets));
      return Promise.all([
        loadSetStanding(db, id, at),
        loadSetTurn(db, id),
        lastCounts(db, id, 5),
        asidePiecesOf(db, { settled: false, of: id, limit: 50 }),
        casesToSendTo(db, at, []),
        listPlaces(db),
      ]);
    },
  },
  { page: 'the cases a set may be sent to', bound: 60, ask: (db, at) => casesToSendTo(db, at) },
  { page: '/configurations', bound: 60, ask: (db) => listConfigurations(db) },
  {
    page: '/catalogue',
    bound: 60,
    ask: (db) => Promise.all([searchCatalogue(db, searchFrom(new URLSearchParams())), catalogueFacets(db)]),
  },
  { page: '/stock', bound: 100, ask: (db, at) => shelfItems(db, at) },
  {
    page: '/stock/[item]',
    bound: 40,
    ask: async (db, at) => {
      const itemId = await some(db, items);
      return Promise.all([shelfLots(db, at, { itemId }), shelfMoves(db, itemId, 100)]);
    },
  },
  {
    page: '/stock/counts',
    bound: 100,
    ask: (db, at) => Promise.all([placesToCount(db, at), recentStockCounts(db, 20)]),
  },
  {
    page: '/stock/receive',
    bound: 60,
    ask: (db) => Promise.all([receivableItems(db), listPlaces(db), recentDeliveries(db, 20)]),
  },
  { page: '/places', bound: 40, ask: (db) => listPlaces(db) },
  {
    page: '/places/[id]',
    bound: 120,
    ask: async (db) => whatLiesIn(db, placeId.parse(await some(db, places)), 100),
  },
  { page: '/work, /work/board', bound: 120, ask: (db, at) => loadWorkQueue(db, at) },
  { page: '/work/short', bound: 80, ask: (db, at) => openDecisions(db, at) },
  { page: '/scan', bound: 20, ask: (db) => lastScans(db, { personId: personId.parse('person_t1') }) },
  {
    page: '/packs/[id]',
    bound: 40,
    ask: async (db) => Promise.all([loadPack(db, await some(db, packs)), keptCatalogue(db)]),
  },
  {
    page: '/loads',
    bound: 60,
    ask: (db, at) => Promise.all([listSterilisers(db), loadBoard(db, `${at.slice(0, 10)}T00:00:00.000Z`)]),
  },
  { page: '/sterilisers', bound: 20, ask: (db) => listSterilisers(db) },
  { page: '/holds', bound: 100, ask: (db, at) => Promise.all([listHeldSets(db), keptSetStandings(db, at)]) },
  {
    page: '/repairs',
    bound: 40,
    ask: (db) =>
      Promise.all([
        asidePiecesOf(db, { settled: false, limit: 200 }),
        asidePiecesOf(db, { settled: true, limit: 50 }),
      ]),
  },
  { page: '/emergency', bound: 40, ask: (db) => openEmergencies(db) },
  { page: '/lenders', bound: 60, ask: (db, at) => lendersOnFile(db, at) },
  { page: '/loans', bound: 60, ask: (db, at) => loanBoard(db, at) },
  { page: '/fit', bound: 40, ask: (db) => Promise.all([listFitRules(db), exceptionList(db)]) },
  {
    page: '/fit/table, /fit/check, /fit/pair',
    bound: 150,
    ask: (db, at) => Promise.all([keptCatalogue(db), loadFitEngine(db, wallClock(at).date)]),
  },
];
