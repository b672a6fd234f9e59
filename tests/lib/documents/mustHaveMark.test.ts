import { createElement } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { ClassMark } from '@/app/sets/_parts/class-mark';
import { markOutline } from '@/lib/documents/markOutline';
import { mustHaveMark } from '@/lib/documents/mustHaveMark';

const CLASSES = [1, 2, 3, 4] as const;

describe('the mark of a must-have class', () => {
  it('is told apart by its outline and its number alone', () => {
    const drawn = CLASSES.map((one) => JSON.stringify(markOutline(mustHaveMark(one))));
    expect(new Set(drawn).size).toBe(4);
    expect(CLASSES.map((one) => mustHaveMark(one).character)).toEqual(['1', '2', '3', '4']);
  });

  it('has on a screen the shape it has on paper: as many outlines, of the same form and filling', () => {
    for (const one of CLASSES) {
      const mark = mustHaveMark(one);
      const { outlines } = markOutline(mark);
      const markup = renderToStaticMarkup(createElement(ClassMark, { mustHaveClass: one }));
      const of = (form: 'square' | 'circle') => outlines.filter((outline) => outline.form === form).length;
      expect(markup.match(/<rect/g)?.length ?? 0, `squares of class ${one}`).toBe(of('square'));
      expect(markup.match(/<circle/g)?.length ?? 0, `circles of class ${one}`).toBe(of('circle'));
      expect(markup).toContain(`data-shape="${mark.shape}"`);
      expect(markup).toMatch(new RegExp(`<text[^>]*>${one}</text>`));
      expect(markup).toContain(mark.words);
    }
  });
});
