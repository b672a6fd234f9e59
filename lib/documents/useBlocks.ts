import type { Block, Column } from './sheet';

export const column = (head: string, widthMm: number | null, align: Column['align'] = 'left'): Column => ({
  head,
  widthMm,
  align,
});
export const heading = (said: string, note: string | null = null): Block => ({
  kind: 'heading',
  level: 2,
  text: said,
  note,
});
export const paragraph = (said: string): Block => ({ kind: 'paragraph', text: said, size: 'body' });
