import { plainDataMatrix } from '@/app/_pdf/dataMatrix';
import { measureText } from '@/app/_pdf/label/outlines';
import { type Raster, rasterise } from '@/app/_pdf/label/raster';
import { LABEL_STOCKS, type Label, type LabelContent, type LabelStock } from '@/lib/documents/label';
import { layLabel } from '@/lib/documents/layLabel';
import { labelText, packNumberOf } from '@/lib/packs/packNumber';
import { crop, type Picture } from './picture';
import { scan } from './scan';

const STOCKS = Object.keys(LABEL_STOCKS) as LabelStock[];

/** The n-th of a thousand different labels: every stock, every kind of content, numbers from one digit to ten. */
export function labelNumbered(n: number): { text: string; raster: Raster; label: Label } {
  // spread over seven to ten digits: Knuth's multiplicative hash, so that no two are alike
  const sequence = n % 4 === 0 ? (n * 2_654_435_761) % 10_000_000_000 : (n * 7_919) % 10_000_000;
  const number = packNumberOf(sequence);
  const copy = n % 7 === 0 ? 1 + (n % 120) : 1;
  const text = labelText(number, copy);
  const symbol = plainDataMatrix(text);
  const content: LabelContent = {
    code: `SET-${String(n).padStart(4, '0')}`,
    name: n % 2 === 0 ? 'Small fragment, steel' : 'Distal radius set, titanium, two-column and volar plates',
    short:
      n % 3 === 0
        ? {
            onlyFor: n % 2 === 0 ? 'LM-26-7K2P' : null,
            lines: ['LM-26-7K2P: no lag screw.', 'Short: 1 × sleeve.'],
          }
        : null,
    facts: ['Packed 14 Jan 2026, 07:12', 'by Wren Adeyemi', 'wrap', '6.42 kg'],
    factsOnSmall: 2,
    sterility: 'NOT STERILE until its load is accepted',
    sterilityOnSmall: 'NOT STERILE until accepted',
    caution: 'A person judges sterility when the pack is opened.',
    number,
    copy: copy === 1 ? null : `copy ${copy}`,
  };
  const label = layLabel(content, STOCKS[n % STOCKS.length] as LabelStock, symbol.columns, measureText);
  return { text, raster: rasterise(label, symbol), label };
}

export const pictureOf = ({ width, height, dots }: Raster): Picture => ({
  width,
  height,
  greys: Uint8ClampedArray.from(dots, (dot) => (dot === 1 ? 0 : 255)),
});

/**
 * Takes one dot off every edge of what is black (a head too cold) or of what is white (one too hot): a dot stays only where
 * all eight about it are alike.
 */
export function eroded({ width, height, greys }: Picture, what: 'black' | 'white'): Picture {
  const worn = what === 'black' ? 255 : 0;
  const out = new Uint8ClampedArray(greys);
  for (let y = 1; y < height - 1; y += 1) {
    for (let x = 1; x < width - 1; x += 1) {
      const at = y * width + x;
      if (greys[at] === worn) continue;
      if (
        greys[at - 1] === worn ||
        greys[at + 1] === worn ||
        greys[at - width] === worn ||
        greys[at + width] === worn ||
        greys[at - width - 1] === worn ||
        greys[at - width + 1] === worn ||
        greys[at + width - 1] === worn ||
        greys[at + width + 1] === worn
      )
        out[at] = worn;
    }
  }
  return { width, height, greys: out };
}

/** Which of the three prints of a label do not read back as they should: sound, thinned, thickened. */
export async function unreadable(n: number): Promise<string[]> {
  const { text, raster, label } = labelNumbered(n);
  const whole = pictureOf(raster);
  // one of twenty as a whole; of the others the part a scanner is held over, with what is printed about it
  const sound = n % 20 === 0 ? whole : about(whole, label);
  const prints = { sound, thinned: eroded(sound, 'black'), thickened: eroded(sound, 'white') };
  const wrong: string[] = [];
  for (const [how, picture] of Object.entries(prints)) {
    const found = await scan(picture);
    if (found.length !== 1 || found[0]?.text !== text)
      wrong.push(`${n} ${how}: ${found[0]?.text ?? 'nothing'}`);
  }
  return wrong;
}

const ABOUT = 30;

function about(whole: Picture, { symbol, width, height }: Label): Picture {
  const left = Math.max(0, symbol.x - ABOUT);
  const below = Math.min(height, symbol.y + (width - left) + ABOUT);
  return crop(whole, left, 0, width - left, below);
}
