import { eq } from 'drizzle-orm';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { type CycleReading, readCycle } from '@/lib/loads/cycle/readCycle';
import { type CycleSummary, summarise } from '@/lib/loads/cycle/summary';
import { programme, programmes } from '@/lib/loads/programme';
import { cycleWords } from '@/lib/wording/cycles';
import { loadWords as words } from '@/lib/wording/loads';
import type { Queries } from '../../client';
import { loadReadings, sterilisers } from '../../schema';
import { atLoad, changeLoad, type LoadNow, type LoadRequest, type LoadRow } from './at-load';

interface ImportCycle extends LoadRequest {
  /** The whole file. */
  text: string;
  fileName: string | null;
  /** Only says what would be imported, and keeps nothing. */
  dryRun: boolean;
}

export interface CycleImported {
  revision: number;
  summary: CycleSummary;
  readings: CycleReading[];
}

const ROWS_AT_ONCE = 500;

/**
 * Imports the record of a load's cycle, or says what it would be. A file with any fault is refused whole, with every
 * faulty cell by line and column. A record that was imported before is replaced, which the ledger tells.
 */
export async function importCycle(request: ImportCycle): Promise<Outcome<CycleImported, LoadNow>> {
  const { person, now, text, dryRun } = request;
  const acting = {
    act: 'makeUpLoad',
    verb: 'import its cycle',
    while: ['running', 'awaitingAcceptance'],
  } as const;
  return atLoad(request, acting, async (write, load) => {
    const read = readCycle(text);
    if (!read.ok) return refusedFor(read.problems);
    const ran = await programmeOf(write, load);
    if (!ran) return refused('frozen', words.noSuchProgramme(load.steriliserId, load.programme));
    const { readings } = read.value;
    const fileName = request.fileName?.trim().slice(0, 120) || null;
    const summary = summarise(readings, ran, {
      importedBy: person.id,
      importedAt: now,
      fileName,
      understood: cycleWords.understood(read.value),
    });
    if (dryRun) return { ok: true, value: { revision: load.revision, summary, readings } };
    await write.delete(loadReadings).where(eq(loadReadings.loadId, load.id));
    for (let at = 0; at < readings.length; at += ROWS_AT_ONCE)
      await write
        .insert(loadReadings)
        .values(readings.slice(at, at + ROWS_AT_ONCE).map((one) => ({ ...one, loadId: load.id })));
    const { dose, missing } = summary;
    const changed = await changeLoad(
      write,
      load,
      { cycle: summary },
      {
        action: 'import-cycle',
        person,
        now,
        detail: { fileName, readings: readings.length, dose, missing, replaced: load.cycle },
      },
    );
    return { ok: true, value: { ...changed, summary, readings } };
  });
}

/** As it stood when the load was started; of loads from before that was kept, as the steriliser has it now. */
export async function programmeOf(read: Queries, load: Pick<LoadRow, 'ran' | 'steriliserId' | 'programme'>) {
  if (load.ran !== null) return programme.parse(load.ran);
  const [row] = await read.select().from(sterilisers).where(eq(sterilisers.id, load.steriliserId));
  return row ? programmes.parse(row.programmes).find(({ name }) => name === load.programme) : undefined;
}
