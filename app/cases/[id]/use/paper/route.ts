import { printingNow, sheetAnswer } from '@/app/_pdf/answer';
import { noSheetAnswer } from '@/app/_pdf/noSheet';
import { endpoint } from '@/app/_server/enter';
import { recordToGive } from '@/app/_server/use-record';
import { recordOfUseSheet } from '@/lib/documents/recordOfUse';
import { noSheetWords } from '@/lib/wording/paper';

export const dynamic = 'force-dynamic';

/** The record of use of a case as a PDF; `?paper=letter` for Letter. */
export const GET = endpoint('GET /cases/[id]/use/paper', async ({ db, person, request, params }) => {
  const given = await recordToGive(db, params.id);
  if (!given) return noSheetAnswer({ status: 404, ...noSheetWords.noCase });
  const { booked, record, reckoned, lines, delays, open, itemName, nameOf } = given;
  if (record.hidden.length > 0)
    return noSheetAnswer({
      status: 409,
      ...noSheetWords.blindUse(
        record.hidden.map(({ code }) => code),
        `/cases/${booked.id}`,
      ),
    });
  const printing = printingNow(person);
  const sheet = recordOfUseSheet({
    booked,
    planVersion: record.plan?.version ?? null,
    plates: (record.plan?.construct.plates ?? []).map((planned) => ({
      planned,
      plate: record.plates.find(({ id }) => id === planned.plateItemId) ?? null,
    })),
    closed: record.closed,
    lines,
    delays,
    accounts: reckoned.accounts.map((account) => ({ ...account, name: nameOf(account.key) })),
    differences: reckoned.differences,
    open,
    nameOf: itemName,
    printing,
  });
  return sheetAnswer(sheet, request, printing);
});
