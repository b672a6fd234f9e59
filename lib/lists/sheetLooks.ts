/** A block of cells shown as one: the file has a value for its first cell alone. */
export interface MergedCells {
  top: number;
  left: number;
  bottom: number;
  right: number;
}

/** How a spreadsheet shows a sheet, which the values of its cells do not tell. Rows and columns count from 1. */
export interface SheetLook {
  isHidden: boolean;
  hiddenRows: ReadonlySet<number>;
  /** From and to, both hidden. */
  hiddenColumns: readonly (readonly [number, number])[];
  merged: readonly MergedCells[];
}

/**
 * How the sheets of an unpacked workbook look, in their order.
 *
 * Source: ECMA-376 Part 1, 18.2.19 (sheet, state), 18.3.1.73 (row, hidden), 18.3.1.13 (col, hidden), 18.3.1.55 (mergeCell).
 */
export function sheetLooks(xmlOf: (name: string) => string | null): SheetLook[] {
  const targets = new Map(
    elements(xmlOf('xl/_rels/workbook.xml.rels') ?? '', 'Relationship').map((attributes) => [
      attributes.Id ?? '',
      attributes.Target ?? '',
    ]),
  );
  return elements(xmlOf('xl/workbook.xml') ?? '', 'sheet').flatMap((sheet) => {
    const target = targets.get(sheet.id ?? '') ?? '';
    const xml = xmlOf(target.startsWith('/') ? target.slice(1) : `xl/${target}`);
    if (xml === null || !/<(?:\w+:)?sheetData\b/.test(xml)) return [];
    return [{ isHidden: sheet.state === 'hidden' || sheet.state === 'veryHidden', ...lookOf(xml) }];
  });
}

function lookOf(xml: string): Omit<SheetLook, 'isHidden'> {
  return {
    hiddenRows: new Set(
      elements(xml, 'row')
        .filter(isHidden)
        .map(({ r }) => Number(r)),
    ),
    hiddenColumns: elements(xml, 'col')
      .filter(isHidden)
      .map(({ min, max }) => [Number(min), Number(max)] as const),
    merged: elements(xml, 'mergeCell').flatMap(({ ref = '' }) => {
      const [, left = '', top, right = '', bottom] =
        /^([A-Z]{1,3})(\d{1,7}):([A-Z]{1,3})(\d{1,7})$/.exec(ref) ?? [];
      return top === undefined
        ? []
        : [
            {
              top: Number(top),
              left: columnNumber(left),
              bottom: Number(bottom),
              right: columnNumber(right),
            },
          ];
    }),
  };
}

const isHidden = ({ hidden }: Record<string, string>) => hidden === '1' || hidden === 'true';

/** The attributes of each element of a name, without their prefixes. */
function elements(xml: string, name: string): Record<string, string>[] {
  const found = xml.matchAll(new RegExp(`<(?:\\w+:)?${name}\\s([^<>]*)>`, 'g'));
  return [...found].map(([, attributes = '']) =>
    Object.fromEntries(
      [...attributes.matchAll(/(?<![\w:])(?:\w+:)?(\w+)\s*=\s*(?:"([^"]*)"|'([^']*)')/g)].map(
        ([, key = '', quoted, single]) => [key, quoted ?? single ?? ''],
      ),
    ),
  );
}

/** `A → 1`, `AA → 27`. */
export const columnNumber = (letters: string): number =>
  [...letters].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0);
