import Sqlite from 'better-sqlite3';
import type { Place } from './checker';

/** What is where in a database file; by the file format's description at sqlite.org/fileformat2.html, §1.6. */
export interface PageMap {
  pageSize: number;
  pages: number;
  /** The place of one byte of the file, by what the file held when it was whole. */
  placeOf(offset: number, file: Buffer): Place;
}

export function mapPages(path: string): PageMap {
  const connection = new Sqlite(path, { readonly: true });
  const pageSize = connection.pragma('page_size', { simple: true }) as number;
  const pages = connection.pragma('page_count', { simple: true }) as number;
  const kinds = new Map(
    (
      connection
        .prepare(
          `SELECT pageno, pagetype, coalesce(tbl_name, name) AS of, type IS 'index' AS isIndex
           FROM dbstat LEFT JOIN sqlite_master USING (name)`,
        )
        .all() as { pageno: number; pagetype: string; of: string; isIndex: number }[]
    ).map((one) => [one.pageno, one]),
  );
  connection.close();
  return {
    pageSize,
    pages,
    placeOf(offset, file) {
      const number = Math.floor(offset / pageSize) + 1;
      const kind = kinds.get(number);
      // pages of the free list are in no tree
      if (!kind) return 'room';
      if (kind.pagetype !== 'overflow' && isUnallocated(file, number, pageSize, offset % pageSize))
        return 'room';
      if (kind.isIndex) return 'index';
      return kind.of === 'ledger' || kind.of === 'ledger_things' ? 'ledger' : 'row';
    },
  };
}

/** Between the pointers to a tree page's cells and the first cell there is nothing. */
function isUnallocated(file: Buffer, number: number, pageSize: number, at: number): boolean {
  const start = (number - 1) * pageSize;
  const header = start + (number === 1 ? 100 : 0);
  const isInner = file[header] === 2 || file[header] === 5;
  const cells = file.readUInt16BE(header + 3);
  // 0 stands for 65,536
  const content = file.readUInt16BE(header + 5) || 65_536;
  const pointersEnd = header - start + (isInner ? 12 : 8) + 2 * cells;
  return at >= pointersEnd && at < content;
}
