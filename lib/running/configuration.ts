import { z } from 'zod';
import type { Problem } from '../identity/result';

/** One variable of the environment, for checking and for the table in the README. */
interface Variable {
  name: string;
  /** What it says, in words for who runs the server. */
  says: string;
  /** What holds without it, in words. */
  otherwise: string;
  schema: z.ZodType;
}

const port = z
  .string()
  .regex(/^\d+$/, 'use a whole number from 1 to 65535, or 0 for any free one')
  .refine((text) => Number(text) <= 65_535, 'use a whole number from 1 to 65535, or 0 for any free one');
const path = z.string().refine((text) => !text.includes('\0'), 'name a file or folder');
const timeOfNight = z.string().regex(/^(([01]\d|2[0-3]):[0-5]\d|no)$/, 'use a time such as 02:30, or no');
const whole = (from: number, to: number) =>
  z
    .string()
    .refine(
      (text) => /^\d+$/.test(text) && Number(text) >= from && Number(text) <= to,
      `use a whole number from ${from} to ${to}`,
    );

/** Every variable the running program reads, in the order of the README. */
export const VARIABLES = [
  { name: 'PORT', says: 'port it is served on', otherwise: '3000', schema: port },
  {
    name: 'HOST',
    says: 'address it listens on; `0.0.0.0` lets other machines in, behind TLS',
    otherwise: 'this machine alone',
    schema: z.string().regex(/^[A-Za-z0-9.:_-]+$/, 'use an address of this machine'),
  },
  {
    name: 'KITWRIGHT_ADDRESS',
    says: 'its own address, such as `https://kitwright.example`, under which FHIR identifiers stand',
    otherwise: 'as the reader came',
    schema: z.url({ protocol: /^https?$/, error: 'use an address such as https://kitwright.example' }),
  },
  {
    name: 'KITWRIGHT_PROXY',
    says: '`yes`: a server of yours with TLS stands in front, and what it says of where a request came from is believed',
    otherwise: '`no`',
    schema: z.enum(['yes', 'no'], 'use yes or no'),
  },
  { name: 'KITWRIGHT_DB', says: 'the database file', otherwise: '`var/kitwright.sqlite`', schema: path },
  {
    name: 'KITWRIGHT_DEMO',
    says: '`no`: an empty database becomes a hospital of its own instead of the demo',
    otherwise: '`yes`',
    schema: z.enum(['yes', 'no'], 'use yes or no'),
  },
  {
    name: 'KITWRIGHT_HOSPITAL',
    says: "the hospital's name on screens and papers",
    otherwise: 'Larkmoor Infirmary',
    schema: z.string().min(1, 'name the hospital').max(60, 'use 60 letters at most'),
  },
  {
    name: 'KITWRIGHT_LETTERS',
    says: 'first letters of case references',
    otherwise: '`LM`',
    schema: z.string().regex(/^[A-Z]{1,4}$/, 'use one to four capital letters'),
  },
  {
    name: 'KITWRIGHT_HEADS',
    says: "file for the ledger's heads, best on another disk or machine",
    otherwise: 'beside the database',
    schema: path,
  },
  {
    name: 'KITWRIGHT_BACKUPS',
    says: 'folder for backups, best on another disk or machine',
    otherwise: '`backups` beside the database',
    schema: path,
  },
  {
    name: 'KITWRIGHT_BACKUP_AT',
    says: "time of the nightly backup by the machine's clock, or `no`",
    otherwise: '`02:30`',
    schema: timeOfNight,
  },
  {
    name: 'KITWRIGHT_BACKUP_NIGHTS',
    says: 'nightly backups kept, besides the first of each of the last 12 months',
    otherwise: '14',
    schema: whole(1, 400),
  },
  {
    name: 'KITWRIGHT_BACKUP_KEY',
    says: 'public half of a key (`age1…`): backups are sealed for whoever has the other half',
    otherwise: 'backups are not sealed',
    schema: z.string().regex(/^age1[0-9a-z]{50,}$/, 'use the public half of a key, which begins with age1'),
  },
  {
    name: 'KITWRIGHT_LOG',
    says: 'file of the log, one JSON object a line, or `-` for standard output',
    otherwise: '`log/kitwright.log` beside the database',
    schema: path,
  },
  {
    name: 'KITWRIGHT_LOG_LEVEL',
    says: 'what is logged: `debug`, `info`, `warn`, `error` or `silent`',
    otherwise: '`info`',
    schema: z.enum(['debug', 'info', 'warn', 'error', 'silent'], 'use debug, info, warn, error or silent'),
  },
  {
    name: 'KITWRIGHT_METRICS_TOKEN',
    says: 'the secret with which Prometheus asks `/metrics`, 20 letters or more',
    otherwise: 'no metrics are given',
    schema: z
      .string()
      .regex(/^[\x21-\x7e]{20,200}$/, 'use 20 to 200 letters, digits and signs without spaces'),
  },
  {
    name: 'KITWRIGHT_RATE',
    says: 'how many times the usual rates one person or address may ask, from 1 to 100',
    otherwise: '1',
    schema: whole(1, 100),
  },
] as const satisfies readonly Variable[];

/**
 * What is wrong in the environment, all at once: a value that cannot be meant, or a variable of ours that nothing reads.
 * An empty variable counts as not there. The values themselves are never told: one may be a secret.
 */
export function configurationProblems(env: Record<string, string | undefined>): Problem[] {
  const problems: Problem[] = VARIABLES.flatMap(({ name, schema }): Problem[] => {
    const text = env[name];
    if (text === undefined || text.trim() === '') return [];
    const parsed = (schema as z.ZodType).safeParse(text.trim());
    if (parsed.success) return [];
    const way = parsed.error.issues[0]?.message ?? 'see the README';
    return [{ path: [name], code: 'not-usable', message: `${name} cannot be used as it is: ${way}.` }];
  });
  const known = new Set<string>([...VARIABLES.map(({ name }) => name), ...OF_DEVELOPERS]);
  for (const name of Object.keys(env).sort())
    if (name.startsWith('KITWRIGHT_') && !known.has(name))
      problems.push({
        path: [name],
        code: 'unknown',
        message: `${name} is read by nothing: ${nearest(name)}.`,
      });
  return problems;
}

/** Those of builds and tests; DEVELOPERS.md tells of them. */
const OF_DEVELOPERS = ['KITWRIGHT_DIST', 'KITWRIGHT_CHROMIUM', 'KITWRIGHT_REPORT'];

/** The backup's settings with what holds otherwise; the environment was found right before. */
export function backupSettings(env: Record<string, string | undefined>) {
  return {
    at: env.KITWRIGHT_BACKUP_AT?.trim() || '02:30',
    nights: Number(env.KITWRIGHT_BACKUP_NIGHTS?.trim() || 14),
    months: 12,
    recipient: env.KITWRIGHT_BACKUP_KEY?.trim() || null,
  };
}

/** The README's table of variables, made from what is checked. */
export function configurationTable(): string {
  const rows = VARIABLES.map(({ name, says, otherwise }) => `| \`${name}\` | ${says} | ${otherwise} |`);
  return ['| variable | says | without it |', '| --- | --- | --- |', ...rows].join('\n');
}

/** The variable most likely meant: the one that shares the longest beginning. */
function nearest(name: string): string {
  const shared = (other: string) => {
    let length = 0;
    while (length < name.length && name[length] === other[length]) length += 1;
    return length;
  };
  const [best] = VARIABLES.map((one) => one.name).sort((one, other) => shared(other) - shared(one));
  return best && shared(best) > 'KITWRIGHT_'.length + 2
    ? `perhaps ${best} is meant`
    : 'the README lists those that are';
}
