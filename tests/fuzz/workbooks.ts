import fc from 'fast-check';
import { unzipSync, type Zippable, zipSync } from 'fflate';
import { LIST_KINDS, type ListKind } from '@/lib/exchange/list';
import { LISTS } from '@/lib/exchange/lists/lists';
import { templateWorkbook } from '@/lib/exchange/out';
import { plainDate } from '@/lib/quantities/plainDate';
import { sampleRows } from '@/lib/theatre/import/sample';
import { sampleXlsx } from '@/lib/theatre/import/sampleXlsx';
import { readAsList, readAsTheatreList } from './readLists';
import { spoiltBytes, spoiltText } from './spoilt';
import { target } from './target';

const KINDS: readonly ('theatre' | ListKind)[] = ['theatre', ...LIST_KINDS];
const SOUND = new Map<string, Uint8Array>(
  await Promise.all(
    KINDS.map(async (kind): Promise<[string, Uint8Array]> => {
      const rows = sampleRows(['Theatre 1'], ['Ada Quill'], plainDate.parse('2026-01-20'));
      return [kind, await (kind === 'theatre' ? sampleXlsx(rows) : templateWorkbook(LISTS[kind]))];
    }),
  ),
);
const soundOf = (kind: string) => SOUND.get(kind) ?? new Uint8Array();

/** The whole file spoilt as bytes: broken archives for the most part. */
const broken = (kind: string) => spoiltBytes(fc.constant(soundOf(kind)), 4);

/** One part of the workbook spoilt as text inside a sound archive; or left out, or there twice under odd names. */
const spoiltInside = (kind: string) => {
  const parts = unzipSync(soundOf(kind));
  const names = Object.keys(parts);
  return fc.constantFrom(...names).chain((name) => {
    const text = new TextDecoder().decode(parts[name]);
    return fc
      .tuple(spoiltText(fc.constant(text), 4), fc.constantFrom('spoilt', 'spoilt', 'spoilt', 'gone', 'odd'))
      .map(([spoilt, how]) => {
        const now: Zippable = { ...parts };
        if (how === 'gone') delete now[name];
        else if (how === 'odd') now[`../${name}`] = new TextEncoder().encode(spoilt);
        else now[name] = new TextEncoder().encode(spoilt);
        return zipSync(now, { level: 1 });
      });
  });
};

/** A part that unpacks to far more than it seems to be. */
const bombs = (kind: string) =>
  fc.integer({ min: 1, max: 80 }).map((megabytes) => {
    const parts: Zippable = { ...unzipSync(soundOf(kind)) };
    parts['xl/worksheets/sheet1.xml'] = [new Uint8Array(megabytes * 1_000_000).fill(0x20), { level: 9 }];
    return zipSync(parts);
  });

const files = fc.constantFrom(...KINDS).chain((kind) =>
  fc.record({
    kind: fc.constant(kind),
    bytes: fc.oneof(
      { weight: 60, arbitrary: broken(kind) },
      { weight: 60, arbitrary: spoiltInside(kind) },
      { weight: 1, arbitrary: bombs(kind) },
    ),
  }),
);

export const workbooks = target({
  name: 'workbooks',
  unit: 'XLSX files and archives',
  runs: { long: 20_000, short: 60 },
  arbitrary: files,
  hold: ({ kind, bytes }) => (kind === 'theatre' ? readAsTheatreList(bytes) : readAsList(bytes, kind, 0)),
});
