import { getDocument, OPS, type PDFDocumentProxy } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { type Picture, pictureFrom } from './picture';

/** Reads a PDF back with Mozilla's reader, which shares nothing with what wrote it. */

export async function openPdf(pdf: Uint8Array): Promise<PDFDocumentProxy> {
  const task = getDocument({
    data: new Uint8Array(pdf),
    verbosity: 0,
    useSystemFonts: false,
    isEvalSupported: false,
  });
  return task.promise;
}

export interface WordOnPage {
  text: string;
  /** Type size in points. */
  points: number;
  /** From the left and the top of the page, in points; `y` is the baseline. */
  x: number;
  y: number;
}

/** Every run of text on each page, in the order it was drawn. */
export async function wordsOf(pdf: Uint8Array): Promise<WordOnPage[][]> {
  const document = await openPdf(pdf);
  const pages: WordOnPage[][] = [];
  for (let number = 1; number <= document.numPages; number += 1) {
    const page = await document.getPage(number);
    const height = page.view[3] ?? 0;
    const { items } = await page.getTextContent();
    pages.push(
      items.flatMap((item) => {
        if (!('str' in item) || item.str.trim() === '') return [];
        const [, , c = 0, d = 0, x = 0, y = 0] = item.transform as number[];
        return [{ text: item.str, points: Math.hypot(c, d), x, y: height - y }];
      }),
    );
  }
  await document.destroy();
  return pages;
}

export const textOf = (words: readonly WordOnPage[]): string => words.map(({ text }) => text).join(' ');

interface TagNode {
  role: string;
  alt?: string;
  children?: (TagNode | { type: string })[];
}

/** Tags of the whole document, outermost first. */
export async function tagsOf(pdf: Uint8Array): Promise<TagNode[]> {
  const document = await openPdf(pdf);
  const found: TagNode[] = [];
  const visit = (node: TagNode) => {
    found.push(node);
    for (const child of node.children ?? []) if ('role' in child) visit(child);
  };
  for (let number = 1; number <= document.numPages; number += 1) {
    const tree = (await (await document.getPage(number)).getStructTree()) as TagNode | null;
    if (tree) visit(tree);
  }
  await document.destroy();
  return found;
}

const COLOUR_OPS = new Map<number, string>(
  Object.entries(OPS)
    .filter(([name]) => /^set(Fill|Stroke)(RGBColor|Gray|CMYKColor|Color|ColorN)$/.test(name))
    .map(([name, code]) => [code as number, name]),
);

/** Black and white, as the reader writes them: red, green and blue from 0 to 255, or in hexadecimal. */
export const BLACK_AND_WHITE = ['0,0,0', '255,255,255', '#000000', '#ffffff'];

/** Every colour that is set on any page, as written by the reader. */
export async function coloursOf(pdf: Uint8Array): Promise<Set<string>> {
  const document = await openPdf(pdf);
  const colours = new Set<string>();
  for (let number = 1; number <= document.numPages; number += 1) {
    const { fnArray, argsArray } = await (await document.getPage(number)).getOperatorList();
    for (const [at, code] of fnArray.entries()) {
      if (COLOUR_OPS.has(code)) colours.add(String(Array.from(argsArray[at] as ArrayLike<unknown>)));
    }
  }
  await document.destroy();
  return colours;
}

/** A page as a printer of that resolution would dot it, in greys. */
export async function printed(pdf: Uint8Array, pageNumber: number, dotsPerInch: number): Promise<Picture> {
  const document = await openPdf(pdf);
  const page = await document.getPage(pageNumber);
  const viewport = page.getViewport({ scale: dotsPerInch / 72 });
  const factory = document.canvasFactory as {
    create(width: number, height: number): { canvas: unknown; context: CanvasRenderingContext2D };
  };
  const [width, height] = [Math.round(viewport.width), Math.round(viewport.height)];
  const { context } = factory.create(width, height);
  await page.render({ canvasContext: context, viewport, background: '#ffffff' }).promise;
  const { data } = context.getImageData(0, 0, width, height);
  await document.destroy();
  return pictureFrom(data, width, height);
}
