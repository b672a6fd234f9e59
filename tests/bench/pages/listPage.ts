import type { Database } from '@/db/client';

/** What the server asks the store for to draw one page, and how long that may take. */
export interface ListPage {
  /** Its address. */
  page: string;
  /** All of the page's queries, as the page asks them; `at` is the present, an ISO instant. */
  ask: (db: Database, at: string) => Promise<unknown>;
  /** Milliseconds that p95 must not exceed; a page is to be with the browser in 300, drawing and sending included. */
  bound: number;
  /** Plain work of the engine that it is a share of, in the same run. */
  beside?: (db: Database) => unknown;
}
