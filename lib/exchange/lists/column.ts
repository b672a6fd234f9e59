import type { Entry, ListColumn } from '../list';

type More = Partial<Omit<ListColumn, 'key' | 'heading' | 'says' | 'entry'>>;

/** A column of a list, not required and without an example unless told. */
export function column(
  key: string,
  heading: string,
  entry: Entry,
  says: string,
  { required = false, example = '', ...more }: More = {},
): ListColumn {
  return { key, heading, says, entry, required, example, ...more };
}
