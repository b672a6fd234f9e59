import { and, eq } from 'drizzle-orm';
import type { NewId } from '@/lib/identity/ids';
import { isJust, kindCodeOf, knownLines } from '@/lib/loans/trayKind';
import { wallClock } from '@/lib/theatre/localTime';
import { loanWords as words } from '@/lib/wording/loan-acts';
import type { Queries } from '../../client';
import type { LoanRecord, LoanRow } from '../../queries/loans/facts';
import { configurationLines, configurations, configurationVersions } from '../../schema';
import { insertConfigurationVersion } from '../insert-configuration-version';

interface VersionForTray {
  loan: LoanRow;
  tray: number;
  lines: LoanRecord['lines'];
  lender: string;
  now: string;
  newId: NewId;
}

/** A row of the layout has this many slots. */
const SLOTS_IN_A_ROW = 10;

/**
 * What the tray should hold, for the bench: the version of the configuration that was asked for, where the list is just
 * that, else a kind of its own made from the lender's list. The latter has no approver: it is the lender's, not ours.
 */
export async function versionForTray(write: Queries, request: VersionForTray): Promise<string> {
  const { loan, tray, lines, lender, now, newId } = request;
  const asked = loan.configurationId === null ? null : await versionInForce(write, loan.configurationId);
  if (asked && isJust(lines, asked.lines)) return asked.id;
  const [configurationId, id] = [newId('configuration'), newId('version')];
  await write.insert(configurations).values({
    id: configurationId,
    code: kindCodeOf(loan.number, tray),
    name: words.kindName(lender, loan.number, tray),
    loanId: loan.id,
  });
  await insertConfigurationVersion(write, {
    version: {
      id,
      configurationId,
      version: 1,
      status: 'inForce',
      layers: [{ layer: 1, name: words.trayName(tray) }],
      promises: [],
      note: words.kindNote(loan.number),
      inForceFrom: wallClock(now).date,
      revision: 1,
    },
    lines: knownLines(lines).map(({ itemId, quantity, mustHaveClass }, at) => ({
      id: newId('line'),
      itemId,
      layer: 1,
      row: Math.floor(at / SLOTS_IN_A_ROW) + 1,
      slot: (at % SLOTS_IN_A_ROW) + 1,
      rackItemId: null,
      expected: quantity,
      minimum: quantity,
      mustHaveClass,
      substitutes: [],
    })),
  });
  return id;
}

async function versionInForce(write: Queries, configurationId: string) {
  const rows = await write
    .select({ id: configurationVersions.id, line: configurationLines })
    .from(configurationVersions)
    .innerJoin(configurationLines, eq(configurationLines.versionId, configurationVersions.id))
    .where(
      and(
        eq(configurationVersions.configurationId, configurationId),
        eq(configurationVersions.status, 'inForce'),
      ),
    );
  const id = rows[0]?.id;
  return id === undefined ? null : { id, lines: rows.map(({ line }) => line) };
}
