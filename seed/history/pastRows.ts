import type { pieceMoves } from '@/db/schema';

type Columns = typeof pieceMoves.$inferInsert;

/** A row of the journal of pieces before it is put in order, its moment in milliseconds. */
export type Row = Omit<
  Columns,
  'seq' | 'owner' | 'doneOn' | 'doneAt' | 'enteredAt' | 'unitPence' | 'personId'
> & {
  at: number;
  owner?: string;
  personId: string | null;
};
