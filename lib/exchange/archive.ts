import { z } from 'zod';

const sha256 = z.string().regex(/^[0-9a-f]{64}$/);

/** What is in an archive of a whole hospital: enough to tell, before anything is loaded, that it is whole and fits. */
export const archiveManifest = z.strictObject({
  form: z.literal('hospital-archive-1'),
  madeAt: z.iso.datetime(),
  /** Migrations the database had, in order, each with the digest of its text. */
  schema: z.array(z.strictObject({ name: z.string(), hash: sha256 })).min(1),
  /** The last entry of the ledger; `null`: it has none. */
  ledgerHead: z.strictObject({ seq: z.number().int().positive(), hash: sha256 }).nullable(),
  tables: z.array(
    z.strictObject({
      name: z.string().regex(/^[a-z_]+$/),
      /** In the order in which every line has their values. */
      columns: z.array(z.string()).min(1),
      rows: z.number().int().min(0),
      /** Of the file `tables/NAME.jsonl`, unpacked. */
      sha256,
    }),
  ),
});
export type ArchiveManifest = z.infer<typeof archiveManifest>;

export const MANIFEST_FILE = 'manifest.json';
export const tableFile = (name: string): string => `tables/${name}.jsonl`;

/** A value of the database as a line has it; bytes, which a hospital’s tables do not hold, are refused. */
export type ArchiveValue = string | number | null;

export const archiveLine = (values: readonly ArchiveValue[]): string => `${JSON.stringify(values)}\n`;

/** A line read back; `null` where it is no line of a table with so many columns. */
export function readArchiveLine(line: string, columns: number): ArchiveValue[] | null {
  try {
    const values: unknown = JSON.parse(line);
    const isValue = (value: unknown) =>
      value === null || typeof value === 'string' || typeof value === 'number';
    return Array.isArray(values) && values.length === columns && values.every(isValue) ? values : null;
  } catch {
    return null;
  }
}

/** Why an archive can't be loaded here, in a sentence each; none where it fits this program and is whole. */
export function archiveMisfits(
  manifest: ArchiveManifest,
  files: readonly string[],
  schema: ArchiveManifest['schema'],
): string[] {
  const misfits: string[] = [];
  const own = new Map(schema.map(({ name, hash }) => [name, hash]));
  const newer = manifest.schema.filter(({ name }) => !own.has(name));
  const missing = schema.filter(({ name }) => !manifest.schema.some((one) => one.name === name));
  const other = manifest.schema.filter(({ name, hash }) => own.has(name) && own.get(name) !== hash);
  if (newer.length > 0)
    misfits.push(`It was made by a newer program (${newer.at(-1)?.name}): load it with that one.`);
  if (missing.length > 0)
    misfits.push(
      `It was made by an older program, before ${missing[0]?.name}: load it with the program that made it, and bring that up to date.`,
    );
  if (other.length > 0) misfits.push(`It was made by a program with another ${other[0]?.name}.`);
  const due = new Set([MANIFEST_FILE, ...manifest.tables.map(({ name }) => tableFile(name))]);
  const lacking = [...due].filter((name) => !files.includes(name));
  const strange = files.filter((name) => !due.has(name));
  if (lacking.length > 0) misfits.push(`It lacks ${lacking.join(', ')}.`);
  if (strange.length > 0) misfits.push(`It holds what its manifest does not name: ${strange.join(', ')}.`);
  if (new Set(files).size < files.length) misfits.push('It holds a file twice.');
  return misfits;
}
