import { highsSolver } from '@/app/_server/solver/highs';
import { listCards } from '@/db/queries/cards/cards';
import { listStarts, startFigures } from '@/db/queries/cards/starts';
import { keptCatalogue, loadKitOfCase } from '@/db/queries/caseKit';
import { kitScreen } from '@/db/queries/caseLife/kitScreen';
import { bookingChoices, listCases, listPlanVersions } from '@/db/queries/cases';
import { keptCaseCosts } from '@/db/queries/costs/caseCosts';
import { readLedgerPage } from '@/db/queries/ledger/entries';
import { thingNamed } from '@/db/queries/ledger/thingNamed';
import { loanBoard } from '@/db/queries/loans/loanBoard';
import { loadNotFound, loadRepairs, loadShelfWaste } from '@/db/queries/loss/goneMissing';
import { loadServiceLives } from '@/db/queries/loss/serviceLives';
import { loadShelfLosses } from '@/db/queries/loss/shelfLosses';
import { lotsNearUseBy } from '@/db/queries/morning/lotsNearUseBy';
import { wasteOfMonth } from '@/db/queries/morning/wasteOfMonth';
import { listPeople } from '@/db/queries/people';
import { itemNames } from '@/db/queries/planner';
import { urgentGaps } from '@/db/queries/restock/gaps';
import { listOrders } from '@/db/queries/restock/orders';
import { latestProposal } from '@/db/queries/restock/proposal';
import { slotsToRefill } from '@/db/queries/restock/refills';
import { listTerms } from '@/db/queries/restock/terms';
import { openDecisions } from '@/db/queries/short/screen';
import { shortForCase } from '@/db/queries/short/shortForCase';
import { loadStore, setsOnFile } from '@/db/queries/store';
import { listChanges } from '@/db/queries/theatre/listChanges';
import { planningFacts } from '@/db/queries/theatre/planningFacts';
import { theatreDay } from '@/db/queries/theatre/theatreDay';
import { sessionsOn } from '@/db/queries/theatre/theatreSessions';
import { findForTrace } from '@/db/queries/trace/find';
import { listClosedRecalls, listOpenRecalls } from '@/db/queries/trace/recallList';
import { listHeldSets } from '@/db/queries/turns/heldSets';
import { noticesFor } from '@/db/queries/turns/notices';
import { loadWorkQueue } from '@/db/queries/turns/workQueue';
import { setTurnaroundInput } from '@/lib/calculations/setTurnaround/schema';
import { setTurnaround } from '@/lib/calculations/setTurnaround/setTurnaround';
import { addDays, type PlainDate } from '@/lib/quantities/plainDate';
import { wallClock } from '@/lib/theatre/localTime';
import { turnaroundInput } from '@/lib/theatre/planning/turnaroundInput';
import type { ListPage } from './listPage';

const PAST_CASE = 'case_y1000';
const NOTHING_ASKED = { things: [], action: null, from: null, to: null };
const todayOf = (at: string) => wallClock(at).date;
const before = (day: PlainDate) => ({ from: addDays(day, -365), until: day });

/** What is planned, ordered, reported and looked up. What is worked out after a page stands is measured beside it. */
export const pages: ListPage[] = [
  { page: '/cases', bound: 60, ask: (db, at) => listCases(db, todayOf(at), addDays(todayOf(at), 7)) },
  {
    page: '/cases/new',
    bound: 40,
    ask: (db) => Promise.all([bookingChoices(db), listStarts(db), listCards(db)]),
  },
  {
    page: '/cases/[id]',
    bound: 100,
    ask: (db, at) =>
      Promise.all([
        listPlanVersions(db, PAST_CASE),
        listPeople(db),
        itemNames(db),
        shortForCase(db, PAST_CASE, at),
        kitScreen(db, PAST_CASE, at),
      ]),
  },
  { page: '/cases/[id]/kit (what is in store)', bound: 300, ask: (db) => loadStore(db, null) },
  // what follows the head of `/`, the reports and `/emergency`, which tell that it is being worked out
  { page: '/ (what could serve each case to come)', bound: 3_000, ask: (db, at) => planningFacts(db, at) },
  {
    page: '/ (who gets which set)',
    bound: 9_000,
    ask: async (db, at) => {
      const input = turnaroundInput(await planningFacts(db, at));
      return input && setTurnaround(setTurnaroundInput.parse(input), { solver: highsSolver });
    },
  },
  // after an act that touches none of them: each is at hand, and is only held against the store as it is
  {
    page: '/ (the kits of two days, after an act elsewhere)',
    bound: 1_500,
    ask: async (db, at) => {
      const cases = await listCases(db, todayOf(at), addDays(todayOf(at), 2));
      const sets = await setsOnFile(db);
      for (const { id } of cases)
        await loadKitOfCase(db, id, { solver: highsSolver, lengthCover: 'figure', sets });
    },
  },
  {
    page: '/ (what waits for whoever looks)',
    bound: 600,
    ask: (db, at) => Promise.all([loadWorkQueue(db, at), openDecisions(db, at), loanBoard(db, at)]),
  },
  { page: '/theatre-list', bound: 60, ask: (db, at) => theatreDay(db, todayOf(at)) },
  {
    page: '/theatre-list/week',
    bound: 80,
    ask: (db, at) => {
      const [from, until] = [todayOf(at), addDays(todayOf(at), 7)];
      return Promise.all([listCases(db, from, until), sessionsOn(db, from, until), bookingChoices(db)]);
    },
  },
  {
    page: '/plans',
    bound: 40,
    ask: (db) => Promise.all([listCards(db), listStarts(db), startFigures(db, null)]),
  },
  {
    page: '/morning (but for who gets which set)',
    bound: 120,
    ask: (db, at) =>
      Promise.all([
        listOpenRecalls(db),
        listHeldSets(db),
        listOrders(db, { closedSince: null }),
        lotsNearUseBy(db, addDays(todayOf(at), 30)),
        wasteOfMonth(db, todayOf(at)),
      ]),
  },
  { page: '/reports/loss (how far pieces are in their lives)', bound: 600, ask: loadServiceLives },
  {
    page: '/reports/loss (but for lives)',
    bound: 200,
    ask: (db, at) =>
      Promise.all([
        loadShelfLosses(db, todayOf(at), 12),
        loadShelfWaste(db, before(todayOf(at))),
        loadNotFound(db, before(todayOf(at))),
        loadRepairs(db, before(todayOf(at))),
      ]),
  },
  {
    page: '/reports/costs',
    bound: 200,
    ask: (db, at) => keptCaseCosts(db, { from: addDays(todayOf(at), -730), until: todayOf(at) }, at),
  },
  { page: '/restock/gaps', bound: 60, ask: (db, at) => urgentGaps(db, at, 14) },
  { page: '/restock', bound: 250, ask: (db, at) => Promise.all([latestProposal(db), slotsToRefill(db, at)]) },
  { page: '/restock/orders', bound: 60, ask: (db, at) => listOrders(db, { closedSince: at }) },
  { page: '/restock/terms', bound: 40, ask: (db) => Promise.all([listTerms(db), keptCatalogue(db)]) },
  {
    page: '/ledger',
    bound: 40,
    ask: (db) => readLedgerPage(db, NOTHING_ASKED, { before: null, limit: 50 }),
  },
  {
    page: '/ledger, of a person',
    bound: 40,
    ask: (db) => readLedgerPage(db, { ...NOTHING_ASKED, things: ['person_t3'] }, { before: null, limit: 50 }),
  },
  {
    page: '/ledger, of what nothing is called',
    bound: 20,
    ask: (db) => thingNamed(db, 'nothing-of-that-name'),
  },
  {
    page: '/trace',
    bound: 60,
    ask: (db, at) =>
      Promise.all([findForTrace(db, 'nothing-of-that-name', at), findForTrace(db, 'screw', at)]),
  },
  {
    page: '/recalls',
    bound: 60,
    ask: (db) => Promise.all([listOpenRecalls(db), listClosedRecalls(db, null)]),
  },
  {
    page: '/notices',
    bound: 60,
    ask: async (db, at) => {
      const [person] = await listPeople(db);
      return person && Promise.all([noticesFor(db, person.id, 200), listChanges(db, person, at)]);
    },
  },
  { page: '/people', bound: 20, ask: (db) => listPeople(db) },
];
