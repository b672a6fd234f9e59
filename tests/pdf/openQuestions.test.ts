import { expect, it } from 'vitest';
import { plainDataMatrix } from '@/app/_pdf/dataMatrix';
import { measureText } from '@/app/_pdf/label/outlines';
import { countSheet } from '@/lib/documents/countSheet';
import { LABEL_STOCKS, type LabelStock } from '@/lib/documents/label';
import { labelContent } from '@/lib/documents/labelContent';
import { layLabel } from '@/lib/documents/layLabel';
import { setForSheet } from '../lib/documents/setForSheet';

const QUESTION = { thing: 'Drill bit 2.5', expected: 2, counted: 1, reference: 'LM-26-U4HT' };

it.each(['onBench', 'packed', 'inSterileStore'] as const)(
  'a set %s with an open question says so on its sheet',
  (step) => {
    const sheet = countSheet({ ...setForSheet({ step }), questions: [QUESTION] });
    const notice = sheet.blocks.find((block) => block.kind === 'notice' && block.word === 'OPEN QUESTION');
    expect(notice).toMatchObject({
      shape: 'stop',
      lines: ['Drill bit 2.5: 2 expected, 1 counted, at a count in theatre for LM-26-U4HT.'],
    });
    const without = countSheet({ ...setForSheet({ step }), questions: [] });
    expect(without.blocks.some((block) => block.kind === 'notice' && block.word === 'OPEN QUESTION')).toBe(
      false,
    );
  },
);

it.each(Object.keys(LABEL_STOCKS) as LabelStock[])(
  'and on its label of %s, whole and before all other facts',
  (stock) => {
    const pack = {
      number: 'P0003187-5',
      code: 'SFT-03',
      name: 'Small fragment locking, titanium',
      version: 2,
      lot: null,
      barrier: 'wrap' as const,
      packedBy: 'Wren Adeyemi',
      packedAt: '2026-01-14T07:12:00.000Z',
      massGrams: 6420,
      state: 'closed' as const,
      useBy: null,
      short: null,
    };
    const textsOf = (openQuestions: number) => {
      const content = labelContent({ ...pack, openQuestions }, 1, 'useBy', (id) => id);
      const label = layLabel(content, stock, plainDataMatrix('P0003187-5*1').columns, measureText);
      return { text: label.texts.map(({ text }) => text).join(' '), cut: label.cut };
    };
    const told = textsOf(2);
    expect(told.text).toContain('2 OPEN QUESTIONS from theatre');
    expect(told.text.indexOf('OPEN QUESTIONS')).toBeLessThan(told.text.indexOf('Packed'));
    expect(told.cut).toEqual(textsOf(0).cut);
    expect(textsOf(0).text).not.toContain('OPEN QUESTION');
  },
);
