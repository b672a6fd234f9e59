import { expect, test } from 'vitest';
import { random } from '../random';
import { Disk, type DiskEvent, SECTOR } from './disk';

const page = (fill: number, sectors = 4) => Buffer.alloc(SECTOR * sectors, fill);
const write = (path: string, at: number, bytes: Buffer): DiskEvent => ({ kind: 'write', path, at, bytes });
const sync = (path: string): DiskEvent => ({ kind: 'sync', path });

function after(events: readonly DiskEvent[], files: Record<string, Buffer> = { '/d/a': page(1) }): Disk {
  const disk = new Disk(new Map(Object.entries(files)));
  for (const event of events) disk.take(event);
  return disk;
}

/** What hundreds of cuts leave of a file, as its first byte of each sector, or “gone”. */
function outcomes(disk: Disk, path: string): Set<string> {
  const draw = random(1);
  return new Set(
    Array.from({ length: 400 }, () => {
      const bytes = disk.cut(draw).get(path);
      if (!bytes) return 'gone';
      return Array.from({ length: bytes.length / SECTOR }, (_, at) => bytes[at * SECTOR]).join('');
    }),
  );
}

test('what was synced is there, whatever happens; what was written since may be, sector by sector', () => {
  expect(outcomes(after([write('/d/a', 0, page(2)), sync('/d/a')]), '/d/a')).toEqual(new Set(['2222']));
  const since = outcomes(after([write('/d/a', 0, page(2))]), '/d/a');
  for (const one of ['1111', '2222', '2111', '1112', '1212']) expect(since).toContain(one);
});

test('a later write may be there and an earlier one not', () => {
  const disk = after([write('/d/a', 0, page(2, 1)), write('/d/a', SECTOR, page(3, 1))]);
  expect(outcomes(disk, '/d/a')).toContain('1311');
});

test('a sector may be torn in the middle, and no byte changes that nobody wrote', () => {
  const disk = after([write('/d/a', 100, Buffer.alloc(200, 9))]);
  const draw = random(2);
  const torn = Array.from({ length: 400 }, () => disk.cut(draw).get('/d/a') ?? page(0)).filter(
    (bytes) => bytes[100] === 9 && bytes[299] === 1,
  );
  expect(torn.length).toBeGreaterThan(0);
  for (const bytes of torn) expect([bytes[99], bytes[300]]).toEqual([1, 1]);
});

test('a file that grew may have any length it had, with zeros or noise where nothing was written', () => {
  const disk = after([write('/d/a', 4 * SECTOR, page(2, 1))]);
  const draw = random(3);
  const cuts = Array.from({ length: 400 }, () => disk.cut(draw).get('/d/a') ?? page(0));
  expect(new Set(cuts.map(({ length }) => length))).toEqual(new Set([4 * SECTOR, 5 * SECTOR]));
  const ends = new Set(cuts.filter(({ length }) => length > 4 * SECTOR).map((bytes) => bytes[4 * SECTOR]));
  expect([...ends]).toEqual(expect.arrayContaining([0, 2]));
  expect(ends.size).toBeGreaterThan(5);
});

test('a new file, a name and a removal are durable once their folder is synced, and the content is another matter', () => {
  const made: DiskEvent[] = [{ kind: 'create', path: '/d/b' }, write('/d/b', 0, page(5, 1)), sync('/d/b')];
  expect(outcomes(after(made), '/d/b')).toEqual(new Set(['gone', '5']));
  expect(outcomes(after([...made, sync('/d')]), '/d/b')).toEqual(new Set(['5']));
  const renamed = after([...made, sync('/d'), { kind: 'rename', path: '/d/b', to: '/d/a' }]);
  expect(outcomes(renamed, '/d/a')).toEqual(new Set(['1111', '5']));
  const removed = after([{ kind: 'remove', path: '/d/a' }]);
  expect(outcomes(removed, '/d/a')).toEqual(new Set(['gone', '1111']));
  removed.take(sync('/d'));
  expect(outcomes(removed, '/d/a')).toEqual(new Set(['gone']));
});

test('without a cut everything is there in order', () => {
  const disk = after([
    write('/d/a', 0, page(2)),
    { kind: 'length', path: '/d/a', length: SECTOR },
    write('/d/a', 2 * SECTOR, page(7, 1)),
  ]);
  expect(disk.files().get('/d/a')).toEqual(Buffer.concat([page(2, 1), page(0, 1), page(7, 1)]));
});
