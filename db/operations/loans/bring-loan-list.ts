import { and, asc, eq } from 'drizzle-orm';
import type { NewId } from '@/lib/identity/ids';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import type { Result } from '@/lib/identity/result';
import { isImplant } from '@/lib/loads/implants';
import { type KnownItem, type LoanList, readLoanList } from '@/lib/loans/listImport';
import { loanWords as words } from '@/lib/wording/loan-acts';
import type { Queries } from '../../client';
import { configurationLines, configurationVersions, items, loanLines } from '../../schema';
import { type AtLoan, atLoan, changeLoan, type LoanNow } from './at-loan';

interface BringLoanList extends AtLoan {
  /** CSV as the lender sent it; or the configuration that was asked for, where the lender sends just that. */
  source: { kind: 'csv'; text: string; fileName: string } | { kind: 'asAsked' };
  /** Says what it would be, and writes nothing. */
  dryRun: boolean;
}

export interface LoanListTried {
  trays: number;
  lines: number;
  pieces: number;
  /** Lines that are nothing in the catalogue. */
  unknown: { tray: number; name: string; quantity: number }[];
  /** Of lines whose must-have class nobody states: they count as class 1. */
  unclassed: number;
  revision: number;
}

/**
 * Brings in the content list of a loan, whole or not at all; it takes the place of an earlier one. Once something was
 * counted or tagged against a list, it stands.
 */
export async function bringLoanList(request: BringLoanList): Promise<Outcome<LoanListTried, LoanNow>> {
  const { person, now, newId, source, dryRun } = request;
  return atLoan(
    request,
    'keepLoans',
    ['asked', 'confirmed', 'here'],
    async (write, { loan, counts, trays }) => {
      if (counts.length > 0 || trays.some(({ set }) => set !== null))
        return refused('frozen', words.listStands(loan.number));
      const read =
        source.kind === 'csv'
          ? readLoanList(source.text, await catalogue(write))
          : await asAsked(write, loan);
      if (!read.ok) return refusedFor(read.problems);
      const list = read.value;
      if (loan.traysArrived !== null && loan.traysArrived !== list.trays)
        return refused('frozen', words.otherTrays(list.trays, loan.traysArrived));
      const tried = triedOf(list);
      if (dryRun) return { ok: true, value: { ...tried, revision: loan.revision } };
      await write.delete(loanLines).where(eq(loanLines.loanId, loan.id));
      await insertLines(write, loan.id, list, newId);
      const { trays: listed, lines, pieces } = tried;
      const changed = await changeLoan(write, {
        loan,
        action: 'bring-loan-list',
        person,
        now,
        detail: {
          source: source.kind,
          ...(source.kind === 'csv' ? { fileName: source.fileName } : {}),
          trays: listed,
          lines,
          pieces,
          unknown: list.unknown,
        },
      });
      return { ok: true, value: { ...tried, ...changed } };
    },
  );
}

function triedOf({ lines, trays, pieces }: LoanList): Omit<LoanListTried, 'revision'> {
  return {
    trays,
    pieces,
    lines: lines.length,
    unknown: lines
      .filter(({ itemId }) => itemId === null)
      .map(({ tray, name, quantity }) => ({ tray, name, quantity })),
    unclassed: lines.filter(({ itemId, mustHaveClass }) => itemId !== null && mustHaveClass === null).length,
  };
}

async function insertLines(write: Queries, loanId: string, list: LoanList, newId: NewId): Promise<void> {
  const rows = list.lines.map((line, at) => ({ ...line, id: newId('loanLine'), loanId, position: at + 1 }));
  await write.insert(loanLines).values(rows);
}

async function catalogue(write: Queries): Promise<KnownItem[]> {
  const rows = await write
    .select({ id: items.id, code: items.code, gtin: items.gtin, name: items.name, kind: items.kind })
    .from(items);
  return rows.map(({ kind, ...item }) => ({ ...item, implant: isImplant(kind as never) }));
}

/** The lines of the configuration that was asked for, all in one tray, with the classes our own version states. */
async function asAsked(write: Queries, loan: { configurationId: string | null }): Promise<Result<LoanList>> {
  const wrong = (message: string): Result<LoanList> => ({
    ok: false,
    problems: [{ path: [], code: 'nothing-asked', message }],
  });
  if (loan.configurationId === null) return wrong(words.noConfigurationAsked);
  const rows = await write
    .select({ line: configurationLines, item: items })
    .from(configurationVersions)
    .innerJoin(configurationLines, eq(configurationLines.versionId, configurationVersions.id))
    .innerJoin(items, eq(items.id, configurationLines.itemId))
    .where(
      and(
        eq(configurationVersions.configurationId, loan.configurationId),
        eq(configurationVersions.status, 'inForce'),
      ),
    )
    .orderBy(asc(configurationLines.layer), asc(configurationLines.row), asc(configurationLines.slot));
  if (rows.length === 0) return wrong(words.noSuchConfiguration);
  const lines = rows.map(({ line, item }) => ({
    tray: 1,
    itemId: item.id,
    code: item.code,
    gtin: item.gtin,
    name: item.name,
    quantity: line.expected,
    implant: isImplant(item.kind as never),
    mustHaveClass: line.mustHaveClass,
  }));
  return {
    ok: true,
    value: { lines, trays: 1, pieces: lines.reduce((sum, { quantity }) => sum + quantity, 0), unknown: 0 },
  };
}
