import { integer, primaryKey, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { flag, json } from './columns';

export const lenders = sqliteTable('lenders', {
  id: text('id').primaryKey(),
  name: text('name').notNull(),
  contact: text('contact'),
  phone: text('phone'),
  email: text('email'),
  address: text('address'),
  note: text('note'),
  withdrawnAt: text('withdrawn_at'),
  revision: integer('revision').notNull(),
});

export const loans = sqliteTable('loans', {
  id: text('id').primaryKey(),
  number: text('number').notNull(),
  lenderId: text('lender_id').notNull(),
  state: text('state').notNull(),
  /** For one case, or else for a period of whole days. */
  caseId: text('case_id'),
  fromDate: text('from_date'),
  untilDate: text('until_date'),
  askedFor: text('asked_for').notNull(),
  configurationId: text('configuration_id'),
  askedBy: text('asked_by').notNull(),
  askedAt: text('asked_at').notNull(),
  /** Who said so at the lender's. */
  answeredBy: text('answered_by'),
  answeredAt: text('answered_at'),
  expectedAt: text('expected_at'),
  backBy: text('back_by'),
  /** Fixed as it arrives, with its rule; before that it is worked out anew each time. */
  dueAt: text('due_at'),
  dueRule: json('due_rule'),
  arrivedAt: text('arrived_at'),
  broughtBy: text('brought_by'),
  traysArrived: integer('trays_arrived'),
  placeId: text('place_id'),
  declaration: text('declaration'),
  instructions: text('instructions'),
  papersBy: text('papers_by'),
  papersAt: text('papers_at'),
  unpackedAt: text('unpacked_at'),
  ourDeclaration: json('our_declaration'),
  collectedBy: text('collected_by'),
  collectedAt: text('collected_at'),
  handedOver: json('handed_over'),
  endedBecause: text('ended_because'),
  revision: integer('revision').notNull(),
});

export const loanSteps = sqliteTable('loan_steps', {
  seq: integer('seq').primaryKey(),
  loanId: text('loan_id').notNull(),
  fromState: text('from_state'),
  state: text('state').notNull(),
  note: text('note'),
  personId: text('person_id').notNull(),
  doneAt: text('done_at').notNull(),
  enteredAt: text('entered_at').notNull(),
});

export const loanLines = sqliteTable('loan_lines', {
  id: text('id').primaryKey(),
  loanId: text('loan_id').notNull(),
  position: integer('position').notNull(),
  tray: integer('tray').notNull(),
  itemId: text('item_id'),
  code: text('code'),
  gtin: text('gtin'),
  name: text('name').notNull(),
  quantity: integer('quantity').notNull(),
  implant: flag('implant'),
  mustHaveClass: integer('must_have_class'),
});

export const loanTrays = sqliteTable(
  'loan_trays',
  {
    loanId: text('loan_id').notNull(),
    tray: integer('tray').notNull(),
    gramsIn: integer('grams_in'),
    weighedInBy: text('weighed_in_by'),
    weighedInAt: text('weighed_in_at'),
    gramsOut: integer('grams_out'),
    weighedOutBy: text('weighed_out_by'),
    weighedOutAt: text('weighed_out_at'),
    tag: text('tag'),
    setId: text('set_id'),
    taggedBy: text('tagged_by'),
    taggedAt: text('tagged_at'),
  },
  (table) => [primaryKey({ columns: [table.loanId, table.tray] })],
);

export const loanCounts = sqliteTable('loan_counts', {
  id: text('id').primaryKey(),
  loanId: text('loan_id').notNull(),
  stage: text('stage').notNull(),
  purpose: text('purpose').notNull(),
  personId: text('person_id').notNull(),
  countedAt: text('counted_at').notNull(),
});

export const loanCountLines = sqliteTable(
  'loan_count_lines',
  {
    countId: text('count_id').notNull(),
    lineId: text('line_id').notNull(),
    sound: integer('sound').notNull(),
    damaged: integer('damaged').notNull(),
  },
  (table) => [primaryKey({ columns: [table.countId, table.lineId] })],
);

export const loanUses = sqliteTable(
  'loan_uses',
  {
    lineId: text('line_id').notNull(),
    caseId: text('case_id').notNull(),
    outcome: text('outcome').notNull(),
    loanId: text('loan_id').notNull(),
    quantity: integer('quantity').notNull(),
    recordedBy: text('recorded_by').notNull(),
    recordedAt: text('recorded_at').notNull(),
  },
  (table) => [primaryKey({ columns: [table.lineId, table.caseId, table.outcome] })],
);

export const loanQuestions = sqliteTable('loan_questions', {
  id: text('id').primaryKey(),
  loanId: text('loan_id').notNull(),
  kind: text('kind').notNull(),
  askedOf: text('asked_of').notNull(),
  askedBy: text('asked_by').notNull(),
  askedAt: text('asked_at').notNull(),
  words: text('words').notNull(),
  answer: text('answer'),
  answerWords: text('answer_words'),
  answeredAt: text('answered_at'),
});

export const loanClaims = sqliteTable('loan_claims', {
  id: text('id').primaryKey(),
  loanId: text('loan_id').notNull(),
  lineId: text('line_id').notNull(),
  stage: text('stage').notNull(),
  kind: text('kind').notNull(),
  quantity: integer('quantity').notNull(),
  lastThere: json('last_there').notNull(),
  words: text('words').notNull(),
  openedBy: text('opened_by').notNull(),
  openedAt: text('opened_at').notNull(),
  state: text('state').notNull(),
  saidBy: text('said_by'),
  saidWords: text('said_words'),
  settledBy: text('settled_by'),
  settledAt: text('settled_at'),
});
