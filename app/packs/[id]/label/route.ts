import { labelOfPack } from '@/app/_pdf/label/ofPack';
import { paintLabel } from '@/app/_pdf/label/paintLabel';
import { pngOf } from '@/app/_pdf/label/png';
import { rasterise } from '@/app/_pdf/label/raster';
import { noSheetAnswer } from '@/app/_pdf/noSheet';
import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { loadPack } from '@/db/queries/packs/pack';
import { LABEL_STOCKS, type LabelStock } from '@/lib/documents/label';
import { noLabelWords } from '@/lib/wording/label';

export const dynamic = 'force-dynamic';

const isStock = (text: string | null): text is LabelStock =>
  text !== null && Object.hasOwn(LABEL_STOCKS, text);

/**
 * The newest copy of a pack's label, in the usual size or `?stock=50x25`: a page of that size, or with `?as=png` the dots
 * a label printer burns. Looking prints nothing: a further copy is asked for on the pack's page.
 */
export const GET = endpoint('GET /packs/[id]/label', async ({ db, person, request, params }) => {
  const pack = await loadPack(db, params.id ?? '');
  if (!pack) return noSheetAnswer({ status: 404, ...noLabelWords.noPack });
  const { state, number } = pack.labelled;
  if (state === 'opened' || state === 'undone')
    return noSheetAnswer({ status: 409, ...noLabelWords.open(number, pack.id) });
  const query = new URL(request.url).searchParams;
  const stock = query.get('stock');
  const made = await labelOfPack(db, pack, isStock(stock) ? stock : null);
  if (!made) return noSheetAnswer({ status: 409, ...noLabelWords.neverPrinted(number, pack.id) });
  const { label, symbol, title } = made;
  const png = query.get('as') === 'png';
  const bytes = png
    ? pngOf(rasterise(label, symbol))
    : await paintLabel(label, symbol, { title: `Label ${title}`, author: person.name, at: new Date(now()) });
  const name = `label-${title.replaceAll(/[^A-Za-z0-9]+/g, '-')}.${png ? 'png' : 'pdf'}`;
  return new Response(new Uint8Array(bytes), {
    headers: {
      'Content-Type': png ? 'image/png' : 'application/pdf',
      'Content-Disposition': `inline; filename="${name}"`,
      'Content-Length': String(bytes.length),
      'Cache-Control': 'no-store',
    },
  });
});
