import { existsSync, statSync } from 'node:fs';
import { resolve } from 'node:path';
import { loadArchive } from '@/db/archive/load-archive';
import { readAs } from '@/db/client';
import { takeListBack } from '@/db/operations/exchange/take-back';
import { LIST_KINDS } from '@/lib/exchange/list';
import { listKindOf } from '@/lib/exchange/lists/lists';
import { importId } from '@/lib/identity/ids';
import { printedHead } from '@/lib/ledger/heads';
import { exchangeWords } from '@/lib/wording/exchange';
import { answerOf, newId, provenPerson } from '../administrator';
import { type Answer, CannotDo, type Command, type Given } from '../command';
import type { AtWork } from '../imports/at-work';
import { importOneList } from '../imports/list';
import { IMPORT_OPTIONS, onlyThese } from '../imports/options';
import { importTheatreList } from '../imports/theatre-list';
import { openAtHand } from '../open';
import { placesOf, shown } from '../places';

const USAGE = `LIST FILE --as PERSON [--yes] [--column NAME=NUMBER …] [--repair COLUMN:DAMAGE …] [--dates day-first] … | archive FILE --db NEW | take-back IMPORT --as PERSON; LIST is ${[...LIST_KINDS, 'theatre-list'].join(', ')}`;

/**
 * Brings in what the hospital has elsewhere. Lists are tried, and written with `--yes` alone, by a person who proves who they
 * are, through the operations of the screens; an archive is loaded where no database is.
 */
export const importCommand: Command = {
  usage: USAGE,
  does: 'tries a list in XLSX or CSV and brings it in, takes one back, or loads an archive into a new database',
  words: [2, 2],
  options: IMPORT_OPTIONS,
  async run(given) {
    const [what = '', which = ''] = given.words;
    const { database } = placesOf(given.env);
    if (what === 'archive') return archive(given, resolve(which), database);
    const act = actOf(what, which);
    const store = openAtHand(database);
    try {
      const person = await provenPerson(store, given);
      return await act({ given, db: readAs(store, person), person });
    } finally {
      store.close();
    }
  },
};

function actOf(what: string, which: string): (at: AtWork) => Promise<Answer> {
  if (what === 'take-back') return (at) => takeBack(at, which);
  const list = listKindOf(what);
  if (list === null && what !== 'theatre-list') throw new CannotDo(`Usage: kitwright import ${USAGE}`);
  const path = resolve(which);
  if (!existsSync(path) || !statSync(path).isFile()) throw new CannotDo(`There is no file ${shown(path)}.`);
  return (at) => (list === null ? importTheatreList(at, path) : importOneList(at, list, path));
}

async function takeBack({ given, db, person }: AtWork, which: string): Promise<Answer> {
  onlyThese(given, ['as']);
  const id = importId.safeParse(which);
  if (!id.success) throw new CannotDo(exchangeWords.noSuchImport);
  const now = given.now().toISOString();
  const done = answerOf(await takeListBack({ db, now, newId, person, importId: id.data }));
  return {
    exit: 0,
    lines: [
      `${done.takenBack} taken back${done.left.length === 0 ? '.' : `, ${done.left.length} stay as they are:`}`,
      ...done.left.map(({ name, because }) => `  ${name}: ${because}`),
    ],
    json: { importId: id.data, ...done },
  };
}

function archive(given: Given, file: string, database: string): Answer {
  onlyThese(given, []);
  const loaded = loadArchive({ archive: file, database });
  if (!loaded.ok) throw new CannotDo(loaded.sentences.join('\n'));
  const { tables, ledgerHead } = loaded.manifest;
  return {
    exit: 0,
    lines: [
      `Loaded into ${shown(database)}: ${tables.length} tables.`,
      ledgerHead === null
        ? 'The ledger has no entry.'
        : `The ledger ends with ${printedHead(ledgerHead)}, as it was packed.`,
    ],
    json: { database, tables: tables.length, ledgerHead },
  };
}
