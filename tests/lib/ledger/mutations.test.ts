import { describe, expect, it } from 'vitest';
import type { LedgerRow } from '@/lib/ledger/chain';
import { exportLine, readExport } from '@/lib/ledger/exportFile';
import { type HeadLine, headText, type KnownHead, printedHead, readPrintedHead } from '@/lib/ledger/heads';
import { ledgerVerifier } from '@/lib/ledger/verify';
import { verifyLedger } from '@/scripts/ledger/standalone-verify.mjs';
import { rechained, sha256, someLedger } from '../../fixtures/ledgerRows';
import { mutated, WAY_NAMES } from './mutate';

const COPIES = 10_000;
const rows = someLedger(2, 6);
const bytesOf = (some: readonly LedgerRow[]) => Buffer.from(some.map(exportLine).join(''), 'utf8');

/** The verifier of the program on an exported file. */
function faultsOf(bytes: Uint8Array, heads: readonly KnownHead[] = []): string[] {
  const read = readExport(bytes);
  if (!read.ok) return [`line ${read.line}`];
  const verifier = ledgerVerifier(sha256, heads);
  for (const row of read.rows) verifier.take(row);
  return verifier.end().faults.map(({ kind }) => kind);
}

function headOf(ledger: readonly LedgerRow[], seq: number, at: string): HeadLine {
  return { at, because: 'entries', hash: ledger[seq - 1]?.hash ?? '', ledger: ledger[0]?.hash ?? '', seq };
}

/** Both verifiers' answers about one copy. */
function both(bytes: Uint8Array, heads: readonly HeadLine[] = []): { ours: string[]; alone: string[] } {
  return {
    ours: faultsOf(bytes, heads),
    alone: verifyLedger({ ledger: bytes, heads: heads.map(headText).join('') }).faults,
  };
}

describe('a ledger that was tampered with', () => {
  it('is whole to both verifiers before', () => {
    expect(both(bytesOf(rows))).toEqual({ ours: [], alone: [] });
    expect(both(bytesOf(someLedger(0, 4)))).toEqual({ ours: [], alone: [] });
    expect(both(bytesOf(someLedger(4, 0)))).toEqual({ ours: [], alone: [] });
    expect(both(new Uint8Array())).toEqual({ ours: [], alone: [] });
  });

  it(`is found out in each of ${COPIES.toLocaleString('en-GB')} copies, by both verifiers, without any head`, () => {
    const missed: string[] = [];
    for (let seed = 0; seed < COPIES; seed += 1) {
      const copy = mutated(rows, seed);
      const { ours, alone } = both(copy.bytes);
      if (ours.length === 0) missed.push(`seed ${seed}: ${copy.how}, not seen by the program's verifier`);
      if (alone.length === 0) missed.push(`seed ${seed}: ${copy.how}, not seen by the stand-alone verifier`);
    }
    expect(missed).toEqual([]);
    expect(COPIES / WAY_NAMES.length).toBeGreaterThan(600);
  });
});

describe('what a chain alone cannot show, and a head written outside does', () => {
  const heads = [
    headOf(rows, 4, '2026-01-14T07:00:00.000Z'),
    headOf(rows, rows.length, '2026-01-14T09:00:00.000Z'),
  ];
  const forgedPerson = rows.map((row) => (row.seq === 7 ? { ...row, personId: 'person_7' } : row));
  const lastRehashed = rechained(
    rows.map((row) => (row.seq === rows.length ? { ...row, personId: null } : row)),
  );
  const cases: [string, LedgerRow[]][] = [
    ['the last entry cut off', rows.slice(0, -1)],
    ['all but one entry cut off', rows.slice(0, 1)],
    ['everything cut off', []],
    ['the whole chain made anew from a changed entry on', rechained(forgedPerson)],
    [
      'the whole chain made anew from its first entry on',
      rechained(rows.slice(1).map((row) => ({ ...row, form: 2 }))),
    ],
    ['the last entry changed and its hash made anew', lastRehashed],
  ];

  it.each(cases)('%s', (_, copy) => {
    const bytes = bytesOf(copy);
    expect(both(bytes), 'without heads it reads as whole').toEqual({ ours: [], alone: [] });
    const seen = both(bytes, heads);
    expect(seen.ours).not.toEqual([]);
    expect(seen.alone).not.toEqual([]);
    const printed = readPrintedHead(printedHead(heads[1] as HeadLine)) as KnownHead;
    expect(faultsOf(bytes, [printed]), 'nor as the sheet says at its foot').not.toEqual([]);
    expect(
      verifyLedger({ ledger: bytes, known: [{ seq: printed.seq, hash: printed.hash }] }).faults,
    ).not.toEqual([]);
  });

  it('an older copy put back and written on: the heads run backwards, and differ', () => {
    const grown = rechained([...rows.slice(0, 5), ...someLedger(0, 2)]).map((row) => ({ ...row }));
    const after = [...heads, headOf(grown, 7, '2026-01-14T10:00:00.000Z')];
    const seen = both(bytesOf(grown), after);
    expect(seen.ours).toEqual(expect.arrayContaining(['headBackwards', 'headBeyond']));
    expect(seen.alone.length).toBeGreaterThanOrEqual(2);
  });

  it('nothing is wrong with a ledger that goes on after its heads', () => {
    const more = rechained([...rows, ...someLedger(0, 3)]);
    expect(both(bytesOf(more), heads)).toEqual({ ours: [], alone: [] });
  });
});

describe('the forms', () => {
  it('an entry of the first release still has the hash it was given then', () => {
    // worked out by the program of the first release from this very entry
    const row = {
      seq: 1,
      form: 1,
      doneAt: '2026-01-14T06:30:00.000Z',
      enteredAt: '2026-01-14T06:30:00.000Z',
      personId: null,
      action: 'load-demo',
      subjectKind: 'hospital',
      subjectId: 'larkmoor-infirmary',
      detailText: '{"9":2,"10":1,"loadedOn":"2026-01-14","b":{"y":1,"x":[1,{"d":null,"c":"é"}]}}',
      previousHash: '0'.repeat(64),
      hash: '4a9168b2a58c45c8b653467490ba967ca3b2a02971b26ba710abea127b32fca4',
    };
    expect(faultsOf(bytesOf([row]))).toEqual([]);
  });

  it('entries of form 1 whose members were put in another order are shown by the seal', () => {
    const turned = rows.map((row) =>
      row.seq === 2
        ? {
            ...row,
            detailText: JSON.stringify(
              Object.fromEntries(Object.entries(JSON.parse(row.detailText) as object).reverse()),
            ),
          }
        : row,
    );
    expect(faultsOf(bytesOf(turned))).toEqual(['seal']);
  });
});
