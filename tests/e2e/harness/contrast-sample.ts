import type { Page } from '@playwright/test';

/** Carried by the texts of the sample. */
export const SAMPLED = 'data-contrast-sample';

/**
 * Marks up to three visible texts of every kind on the page: the first, the last and one between. Contrast is the dearest thing
 * axe measures, and a table of a thousand cells asks it the same thing a thousand times. Texts are of one kind when they
 * and everything they lie in have the same colours, backgrounds, opacity and letters, and the same things lie over or
 * under them without holding them.
 */
export function markContrastSample(page: Page): Promise<void> {
  return page.evaluate((mark) => {
    /** What an element and all that holds it add to the contrast of a text in it, and the part of it that is not cut off. */
    interface Ground {
      style: string;
      shown: DOMRect;
    }
    const grounds = new Map<Element, Ground>();
    const groundOf = (element: Element): Ground => {
      const known = grounds.get(element);
      if (known) return known;
      const holder = element.parentElement ? groundOf(element.parentElement) : null;
      const style = getComputedStyle(element);
      const own = element.getBoundingClientRect();
      const from = [
        style.backgroundColor,
        style.backgroundImage,
        style.opacity,
        style.position,
        style.filter,
      ];
      const ground = {
        style: `${holder?.style ?? ''}/${[...from, style.mixBlendMode, style.color, style.fill].join()}`,
        shown: style.overflow === 'visible' || !holder ? (holder?.shown ?? own) : common(own, holder.shown),
      };
      grounds.set(element, ground);
      return ground;
    };
    const common = (one: DOMRect, other: DOMRect): DOMRect => {
      const [left, top] = [Math.max(one.left, other.left), Math.max(one.top, other.top)];
      const right = Math.min(one.right, other.right);
      const bottom = Math.min(one.bottom, other.bottom);
      return new DOMRect(left, top, Math.max(0, right - left), Math.max(0, bottom - top));
    };
    const meet = (one: DOMRect, other: DOMRect) =>
      one.left < other.right && other.left < one.right && one.top < other.bottom && other.top < one.bottom;
    const isText = (element: Element) =>
      element.matches('input, select, textarea') ||
      [...element.childNodes].some(({ nodeType, nodeValue }) => nodeType === 3 && nodeValue?.trim());
    // a pixel wide is for screen readers alone
    const isSeen = (element: Element, { width, height }: DOMRect) =>
      width > 1 && height > 1 && element.checkVisibility({ visibilityProperty: true });

    const all = [...document.body.querySelectorAll('*')];
    const laidOver = all
      .filter((element) => {
        const { position, float, transform } = getComputedStyle(element);
        return position !== 'static' || float !== 'none' || transform !== 'none';
      })
      .map((element) => ({ element, box: element.getBoundingClientRect() }));
    const kinds = new Map<string, { element: Element; doubt: number }[]>();
    for (const element of all) {
      const box = element.getBoundingClientRect();
      if (!isText(element) || !isSeen(element, box)) continue;
      const { style, shown } = groundOf(element);
      const { fontSize, fontWeight, textShadow, textDecorationLine } = getComputedStyle(element);
      const around = laidOver
        .filter((other) => meet(box, other.box) && !other.element.contains(element))
        .map((other) => groundOf(other.element).style);
      const kind = [style, fontSize, fontWeight, textShadow, textDecorationLine, ...around].join('|');
      const visible = common(box, shown);
      // axe judges neither what is scrolled out of its frame nor signs and single letters
      const cutOff = visible.width < box.width || visible.height < box.height;
      const doubt = (cutOff ? 2 : 0) + (/\p{L}{2}/u.test(element.textContent) ? 0 : 1);
      kinds.set(kind, [...(kinds.get(kind) ?? []), { element, doubt }]);
    }
    for (const element of document.querySelectorAll(`[${mark}]`)) element.removeAttribute(mark);
    for (const alike of kinds.values()) {
      const least = Math.min(...alike.map(({ doubt }) => doubt));
      const sure = alike.filter(({ doubt }) => doubt === least);
      for (const at of [0, Math.floor(sure.length / 2), sure.length - 1])
        sure[at]?.element.setAttribute(mark, '');
    }
  }, SAMPLED);
}
