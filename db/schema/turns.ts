import { integer, primaryKey, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { flag, json } from './columns';

/** One trip of a set round the service. */
export const turns = sqliteTable('turns', {
  id: text('id').primaryKey(),
  setId: text('set_id').notNull(),
  number: integer('number').notNull(),
  beganAt: text('began_at').notNull(),
});

/** Every step a set took; append-only. */
export const turnSteps = sqliteTable('turn_steps', {
  seq: integer('seq').primaryKey(),
  setId: text('set_id').notNull(),
  turnId: text('turn_id').notNull(),
  fromStep: text('from_step'),
  step: text('step').notNull(),
  because: text('because'),
  note: text('note'),
  personId: text('person_id'),
  workstationId: text('workstation_id'),
  placeId: text('place_id'),
  doneAt: text('done_at').notNull(),
  enteredAt: text('entered_at').notNull(),
});

/** When stages of turns ended, the latest of each kind of set and stage, kept by triggers; `seq` is that of the step that ended it. */
export const stageEnds = sqliteTable(
  'stage_ends',
  {
    configurationId: text('configuration_id').notNull(),
    stage: text('stage').notNull(),
    seq: integer('seq').notNull(),
    beganAt: text('began_at').notNull(),
    endedAt: text('ended_at').notNull(),
  },
  (table) => [primaryKey({ columns: [table.configurationId, table.stage, table.seq] })],
);

/** A count in the making; closed, it is also a row of `counts`. */
export const benchCounts = sqliteTable('bench_counts', {
  id: text('id').primaryKey(),
  setId: text('set_id').notNull(),
  turnId: text('turn_id').notNull(),
  versionId: text('version_id').notNull(),
  purpose: text('purpose').notNull(),
  personId: text('person_id').notNull(),
  workstationId: text('workstation_id'),
  baseRevision: integer('base_revision').notNull(),
  beganAt: text('began_at').notNull(),
  closedAt: text('closed_at'),
  entryCount: integer('entry_count'),
  entryDigest: text('entry_digest'),
  abandonedAt: text('abandoned_at'),
});

/** What was entered at the bench, one by one; append-only. */
export const benchEntries = sqliteTable('bench_entries', {
  seq: integer('seq').primaryKey(),
  id: text('id').notNull(),
  countId: text('count_id').notNull(),
  act: json('act').notNull(),
  personId: text('person_id').notNull(),
  secondPersonId: text('second_person_id'),
  sessionId: text('session_id'),
  scanId: text('scan_id'),
  /** A look-alike was put in: two people stand for it, here or by a blind check afterwards. */
  needsSecond: flag('needs_second').notNull().default(false),
  doneAt: text('done_at').notNull(),
  enteredAt: text('entered_at').notNull(),
});

/** Lines on which two people's counts of one turn differ; both figures are kept. */
export const disputedLines = sqliteTable(
  'disputed_lines',
  {
    firstCountId: text('first_count_id').notNull(),
    secondCountId: text('second_count_id').notNull(),
    lineId: text('line_id').notNull(),
    setId: text('set_id').notNull(),
    turnId: text('turn_id').notNull(),
    firstPieces: integer('first_pieces').notNull(),
    secondPieces: integer('second_pieces').notNull(),
    openedAt: text('opened_at').notNull(),
    settledByCountId: text('settled_by_count_id'),
    settledAt: text('settled_at'),
  },
  (table) => [primaryKey({ columns: [table.firstCountId, table.secondCountId, table.lineId] })],
);

/** Pieces taken out of a set as unfit. */
export const asidePieces = sqliteTable('aside_pieces', {
  id: text('id').primaryKey(),
  itemId: text('item_id').notNull(),
  setId: text('set_id'),
  lineId: text('line_id'),
  quantity: integer('quantity').notNull(),
  condition: text('condition').notNull(),
  route: text('route'),
  foundBy: text('found_by').notNull(),
  foundAt: text('found_at').notNull(),
  settledBy: text('settled_by'),
  settledAt: text('settled_at'),
  outcome: text('outcome'),
});

export const refillJobs = sqliteTable('refill_jobs', {
  id: text('id').primaryKey(),
  setId: text('set_id').notNull(),
  lineId: text('line_id').notNull(),
  itemId: text('item_id').notNull(),
  quantity: integer('quantity').notNull(),
  foundBy: text('found_by').notNull(),
  openedAt: text('opened_at').notNull(),
  turnId: text('turn_id'),
  fixedBy: text('fixed_by'),
  fixedAt: text('fixed_at'),
  droppedBecause: text('dropped_because'),
});

export const shortDecisions = sqliteTable('short_decisions', {
  id: text('id').primaryKey(),
  setId: text('set_id').notNull(),
  turnId: text('turn_id').notNull(),
  kind: text('kind').notNull(),
  lines: json('lines').notNull(),
  substitutes: json('substitutes').notNull(),
  reason: text('reason').notNull(),
  caseId: text('case_id'),
  approvals: json('approvals').notNull(),
  decidedAt: text('decided_at').notNull(),
  lapsesAt: text('lapses_at'),
  lapsedAt: text('lapsed_at'),
});

/** What a person is told inside the program. */
export const notices = sqliteTable('notices', {
  id: text('id').primaryKey(),
  personId: text('person_id').notNull(),
  kind: text('kind').notNull(),
  detail: json('detail').notNull(),
  href: text('href'),
  toldAt: text('told_at').notNull(),
  seenAt: text('seen_at'),
});

/** That a set is wanted back in the sterile store sooner than its turn would bring it. */
export const wantedTurns = sqliteTable('wanted_turns', {
  id: text('id').primaryKey(),
  setId: text('set_id').notNull(),
  forCaseId: text('for_case_id').notNull(),
  /** The turn after this case is meant; `null`: the one the set is in. */
  afterCaseId: text('after_case_id'),
  wantedBy: text('wanted_by').notNull(),
  askedBy: text('asked_by').notNull(),
  askedAt: text('asked_at').notNull(),
});
