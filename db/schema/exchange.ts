import { integer, primaryKey, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { json } from './columns';

/** Lists that came in. Nothing of the file is kept but its digest. */
export const imports = sqliteTable('imports', {
  id: text('id').primaryKey(),
  list: text('list').notNull(),
  fileSha256: text('file_sha256').notNull(),
  readAs: text('read_as').notNull(),
  added: integer('added').notNull(),
  changed: integer('changed').notNull(),
  unchanged: integer('unchanged').notNull(),
  broughtInBy: text('brought_in_by').notNull(),
  broughtInAt: text('brought_in_at').notNull(),
  takenBackBy: text('taken_back_by'),
  takenBackAt: text('taken_back_at'),
  /** What could not be taken back: `{ name, because }` each. */
  leftAsItIs: json('left_as_it_is'),
});

/** What a list did, thing by thing; append-only. */
export const importEffects = sqliteTable(
  'import_effects',
  {
    importId: text('import_id').notNull(),
    effectNo: integer('effect_no').notNull(),
    did: text('did').notNull(),
    subjectKind: text('subject_kind').notNull(),
    subjectId: text('subject_id').notNull(),
    name: text('name').notNull(),
    revision: integer('revision'),
    before: json('before'),
  },
  (table) => [primaryKey({ columns: [table.importId, table.effectNo] })],
);

/** Which column says what in files with the same headings, by the key of our column. */
export const columnMappings = sqliteTable(
  'column_mappings',
  {
    list: text('list').notNull(),
    signature: text('signature').notNull(),
    columns: json('columns').notNull(),
    keptBy: text('kept_by').notNull(),
    keptAt: text('kept_at').notNull(),
  },
  (table) => [primaryKey({ columns: [table.list, table.signature] })],
);
