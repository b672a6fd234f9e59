import 'server-only';
import { now } from '@/app/_server/clock';
import { hospitalName } from '@/app/_server/hospital';
import { headForPaper } from '@/app/_server/ledger-head';
import type { Printing } from '@/lib/documents/edition';
import type { Sheet } from '@/lib/documents/sheet';
import { printedHead } from '@/lib/ledger/heads';
import { paintSheet } from './paintSheet';
import type { PaperSize } from './paper';

/** Who prints, and when. */
export function printingNow(person: { name: string }): Printing {
  return { hospital: hospitalName(), at: now(), by: person.name };
}

/** A4 unless the address asks for `?paper=letter`; anything else it may say is not known here, and is A4. */
export function paperOf(request: Request): PaperSize {
  return new URL(request.url).searchParams.get('paper')?.toLowerCase() === 'letter' ? 'letter' : 'a4';
}

/** The sheet as an answer: shown in the browser, saved under a name that says what it is, kept by nobody. */
export async function sheetAnswer(sheet: Sheet, request: Request, printing: Printing): Promise<Response> {
  const pdf = await paintSheet(await withLedgerHead(sheet), paperOf(request), new Date(printing.at));
  return new Response(new Uint8Array(pdf), {
    headers: {
      'Content-Type': 'application/pdf',
      'Content-Disposition': `inline; filename="${fileName(sheet, printing.at)}"`,
      'Content-Length': String(pdf.length),
      'Cache-Control': 'no-store',
    },
  });
}

/** Paper is a second place of the ledger's head: whoever rewrote the ledger would have to gather the sheets. */
async function withLedgerHead(sheet: Sheet): Promise<Sheet> {
  const head = await headForPaper();
  return head === null ? sheet : { ...sheet, edition: { ...sheet.edition, ledgerHead: printedHead(head) } };
}

/** `count-sheet-SFS-01-20260114T0630Z.pdf`. */
export function fileName({ kindWords, title }: Pick<Sheet, 'kindWords' | 'title'>, at: string): string {
  const minute = `${at.slice(0, 16).replaceAll(/[-:]/g, '')}Z`;
  const plain = `${kindWords.toLowerCase()}-${title}`.replaceAll(/[^A-Za-z0-9]+/g, '-').slice(0, 80);
  return `${plain}-${minute}.pdf`;
}
