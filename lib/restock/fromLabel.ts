import { identify } from '@/lib/calculations/identifier/identify';

/** What the label of a pack says; `null` where it does not say it. */
export interface LabelRead {
  gtin: string | null;
  lot: string | null;
  useBy: string | null;
}

/** Reads a scanned or typed label; `null` where it is no code that can be read without a doubt. */
export function fromLabel(text: string, currentYear: number): LabelRead | null {
  const found = identify({ text, currentYear, separators: 'mayBeLost' });
  if (found.state !== 'read') return null;
  const plainOf = (meaning: string) => found.elements.find((one) => one.meaning === meaning)?.plain ?? null;
  const read = { gtin: plainOf('gtin'), lot: plainOf('lot'), useBy: plainOf('useBy') };
  return Object.values(read).every((value) => value === null) ? null : read;
}
