import { printingNow, sheetAnswer } from '@/app/_pdf/answer';
import { noSheetAnswer } from '@/app/_pdf/noSheet';
import { buildsToday } from '@/app/_server/builds-today';
import { endpoint } from '@/app/_server/enter';
import { findCard } from '@/db/queries/cards/cards';
import { listStarts } from '@/db/queries/cards/starts';
import { keptCatalogue } from '@/db/queries/caseKit';
import { preferenceCardSheet } from '@/lib/documents/preferenceCard';
import { noSheetWords } from '@/lib/wording/paper';

export const dynamic = 'force-dynamic';

/** A preference card as a PDF; `?paper=letter` for Letter. */
export const GET = endpoint('GET /plans/cards/[id]/paper', async ({ db, person, request, params }) => {
  const card = await findCard(db, params.id);
  if (!card) return noSheetAnswer({ status: 404, ...noSheetWords.noCard });
  const [all, catalogue] = await Promise.all([listStarts(db), keptCatalogue(db)]);
  const starts = card.body.startIds.flatMap((id) => all.find((one) => one.id === id) ?? []);
  const builds = await buildsToday(db, starts);
  const items = new Map<string, (typeof catalogue)[number]>(catalogue.map((item) => [item.id, item]));
  const printing = printingNow(person);
  const sheet = preferenceCardSheet({
    card,
    starts: starts.map((start, at) => ({ ...start, today: builds[at] ?? null })),
    item: (id) => items.get(id),
    printing,
  });
  return sheetAnswer(sheet, request, printing);
});
