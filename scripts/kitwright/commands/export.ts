import { existsSync, writeFileSync } from 'node:fs';
import { extname, resolve } from 'node:path';
import { writeArchive } from '@/db/archive/write-archive';
import { listRows } from '@/db/queries/exchange/list-rows';
import { LIST_KINDS, type ListInfo } from '@/lib/exchange/list';
import { LISTS, listKindOf } from '@/lib/exchange/lists/lists';
import {
  listCsv,
  listJson,
  listWorkbook,
  type OutRows,
  templateCsv,
  templateWorkbook,
} from '@/lib/exchange/out';
import { printedHead } from '@/lib/ledger/heads';
import { type Answer, CannotDo, type Command } from '../command';
import { openAtHand } from '../open';
import { placesOf, shown } from '../places';

const USAGE = `LIST FILE [--template] | archive FILE [--force], FILE ending in .xlsx, .csv or .json; LIST is ${LIST_KINDS.join(', ')}`;

/** Takes out what the hospital holds. Only reads: whoever reaches the file of the database reads it anyway. */
export const exportCommand: Command = {
  usage: USAGE,
  does: 'writes a list as XLSX, CSV or JSON, its template, or everything as one archive',
  words: [2, 2],
  options: { template: { type: 'boolean' }, force: { type: 'boolean' } },
  async run({ words: [what = '', which = ''], options, env, now }) {
    const { database } = placesOf(env);
    const list = listKindOf(what);
    const format = formatOf(extname(which));
    if (list === null && what !== 'archive') throw new CannotDo(`Usage: kitwright export ${USAGE}`);
    if (list !== null && format === null)
      throw new CannotDo('The name of the file ends in .xlsx, .csv or .json.');
    if (!existsSync(database)) throw new CannotDo(`There is no database at ${shown(database)}.`);
    const path = resolve(which);
    if (existsSync(path) && options.force !== true)
      throw new CannotDo(`There is ${shown(path)} already: name another file, or say --force.`);
    const at = now().toISOString();
    if (list === null || format === null) return archive(database, path, at);
    const info = LISTS[list];
    if (options.template === true) {
      writeFileSync(path, await templateIn(format, info));
      return {
        exit: 0,
        lines: [`${info.name}, its template: ${shown(path)}.`],
        json: { list, template: true, file: path },
      };
    }
    const db = openAtHand(database);
    try {
      const rows = await listRows(db, list, at);
      // names of people and what lies where: for whoever wrote it alone
      writeFileSync(path, await written(format, info, rows), { mode: 0o600 });
      return {
        exit: 0,
        lines: [`${info.name}: ${rows.length} rows in ${shown(path)}.`],
        json: { list, rows: rows.length, file: path },
      };
    } finally {
      db.close();
    }
  },
};

type Format = 'xlsx' | 'csv' | 'json';

const formatOf = (end: string): Format | null =>
  (['xlsx', 'csv', 'json'] as const).find((one) => `.${one}` === end.toLowerCase()) ?? null;

async function templateIn(format: Format, info: ListInfo): Promise<string | Uint8Array> {
  if (format === 'json') throw new CannotDo('A template is XLSX or CSV.');
  return format === 'xlsx' ? templateWorkbook(info) : templateCsv(info);
}

async function written(format: Format, info: ListInfo, rows: OutRows): Promise<string | Uint8Array> {
  if (format === 'xlsx') return listWorkbook(info, rows);
  return format === 'csv' ? listCsv(info, rows) : listJson(info, rows);
}

function archive(database: string, path: string, madeAt: string): Answer {
  const { tables, ledgerHead } = writeArchive({ database, to: path, madeAt });
  const rows = tables.reduce((sum, table) => sum + table.rows, 0);
  return {
    exit: 0,
    lines: [
      `Everything: ${tables.length} tables, ${rows} rows in ${shown(path)}. Keep it as a backup is kept.`,
      ledgerHead === null ? 'The ledger has no entry.' : `The ledger ends with ${printedHead(ledgerHead)}.`,
    ],
    json: { file: path, tables: tables.length, rows, ledgerHead },
  };
}
