import { expect, test } from 'vitest';
import { plainDataMatrix } from '@/app/_pdf/dataMatrix';
import { measureText } from '@/app/_pdf/label/outlines';
import { paintLabel } from '@/app/_pdf/label/paintLabel';
import { pngOf } from '@/app/_pdf/label/png';
import { rasterise } from '@/app/_pdf/label/raster';
import { LABEL_STOCKS, type LabelStock } from '@/lib/documents/label';
import { layLabel } from '@/lib/documents/layLabel';
import { labelNumbered, pictureOf, unreadable } from './labels';
import { openPdf, textOf, wordsOf } from './readPdf';
import { scan } from './scan';

/** A sample; `npm run bench labels` reads all thousand. */
const SAMPLE = 8;

test(`${SAMPLE} labels read back, sound and with one dot worn off what is black or what is white`, async () => {
  const wrong: string[] = [];
  const numbers = new Set<string>();
  for (let n = 1; n <= SAMPLE; n += 1) {
    numbers.add(labelNumbered(n * 49).text);
    wrong.push(...(await unreadable(n * 49)));
  }
  expect(wrong).toEqual([]);
  expect(numbers.size).toBe(SAMPLE);
}, 60_000);

test('the check finds a label that does not read: a symbol with its corner painted over', async () => {
  const { raster, label, text } = labelNumbered(1);
  const { x, y, moduleDots } = label.symbol;
  for (let row = y; row < y + 12 * moduleDots; row += 1)
    raster.dots.fill(1, row * raster.width + x, row * raster.width + x + 12 * moduleDots);
  expect((await scan(pictureOf(raster))).map((one) => one.text)).not.toContain(text);
});

test.each(Object.keys(LABEL_STOCKS) as LabelStock[])(
  'on %s modules are whole dots in a quiet zone',
  (stock) => {
    const symbol = plainDataMatrix('P0003187-5*2');
    const label = layLabel(
      {
        code: 'SFS-03',
        name: 'Small fragment, steel',
        short: null,
        facts: ['Packed'],
        factsOnSmall: 1,
        sterility: 'x',
        sterilityOnSmall: 'x',
        caution: '',
        number: 'P0003187-5',
        copy: 'copy 2',
      },
      stock,
      symbol.columns,
      measureText,
    );
    const { dots, width } = rasterise(label, symbol);
    const { x, y, moduleDots, quietModules } = label.symbol;
    // GS1 General Specifications, healthcare items: X-dimension of DataMatrix from 0.254 to 0.990 mm (from memory); 8 dots to the mm
    expect(moduleDots / 8).toBeGreaterThanOrEqual(0.254);
    expect(moduleDots / 8).toBeLessThanOrEqual(0.99);
    const side = symbol.columns + 2 * quietModules;
    for (let row = 0; row < side; row += 1)
      for (let column = 0; column < side; column += 1) {
        const [r, c] = [row - quietModules, column - quietModules];
        const inside = r >= 0 && c >= 0 && r < symbol.rows && c < symbol.columns;
        const expected = inside ? symbol.modules[r * symbol.columns + c] : 0;
        for (let dy = 0; dy < moduleDots; dy += 1)
          for (let dx = 0; dx < moduleDots; dx += 1)
            if (dots[(y + row * moduleDots + dy) * width + x + column * moduleDots + dx] !== expected)
              throw new Error(`module ${row}/${column} is not whole`);
      }
  },
);

test('a PNG of one bit a dot at 203 dots to the inch, and a page of exactly the label’s size with the same words', async () => {
  const { raster, label, text } = labelNumbered(6);
  const png = pngOf(raster);
  expect([...png.subarray(0, 8)]).toEqual([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
  expect([png.readUInt32BE(16), png.readUInt32BE(20), png[24], png[25]]).toEqual([
    label.width,
    label.height,
    1,
    0,
  ]);
  // ISO/IEC 15948, 11.3.5.3: pixels to the metre
  const physical = png.indexOf('pHYs');
  expect([png.readUInt32BE(physical + 4), png[physical + 12]]).toEqual([8000, 1]);
  const pdf = await paintLabel(label, plainDataMatrix(text), { title: text, author: 'x', at: new Date(0) });
  const page = await (await openPdf(pdf)).getPage(1);
  const [, , width = 0, height = 0] = page.view;
  const { widthMm, heightMm } = LABEL_STOCKS[label.stock];
  expect(width).toBeCloseTo((widthMm / 25.4) * 72, 2);
  expect(height).toBeCloseTo((heightMm / 25.4) * 72, 2);
  const words = textOf((await wordsOf(pdf)).flat()).replaceAll(/\s+/g, '');
  for (const one of label.texts) expect(words).toContain(one.text.replaceAll(/\s+/g, ''));
});
