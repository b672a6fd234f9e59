import { describe, expect, it } from 'vitest';
import { whereLines } from '@/lib/documents/cardExtras';
import { configurationId, itemId, placeId, setId, stockId } from '@/lib/identity/ids';
import { findExtras } from '@/lib/kits/extras';
import type { CaseKit } from '@/lib/kits/kit';
import type { Store, StoredPack, StoredSet } from '@/lib/kits/store';
import { plainDate } from '@/lib/quantities/plainDate';

const HOOK = itemId.parse('item_hook');
const WIRE = itemId.parse('item_wire');
const DAY = plainDate.parse('2026-01-15');

const set = (code: string, found: number, more: Partial<StoredSet> = {}): StoredSet => ({
  id: setId.parse(`set_${code.toLowerCase()}`),
  code,
  configurationId: configurationId.parse('configuration_x'),
  configurationName: 'Small fragments',
  step: 'inSterileStore',
  heldBecause: null,
  readyAt: null,
  useBy: null,
  place: null,
  massGrams: null,
  promisedTo: [],
  contents: [{ itemId: HOOK, found, expected: found, mustHaveClass: 4 }],
  ...more,
});
const pack = (id: string, quantity: number, more: Partial<StoredPack> = {}): StoredPack => ({
  id: stockId.parse(`stock_${id}`),
  itemId: HOOK,
  form: 'pouch',
  quantity,
  lot: null,
  useBy: null,
  owner: 'ours',
  place: { id: placeId.parse('place_rack'), name: 'Pouch rack 1', metres: 4 },
  heldBecause: null,
  ...more,
});
const opens = (...codes: string[]): Pick<CaseKit, 'sets' | 'packs' | 'pickList'> => ({
  sets: codes.map((code) => ({
    setId: setId.parse(`set_${code.toLowerCase()}`),
    code,
    role: 'open',
  })) as CaseKit['sets'],
  packs: [],
  pickList: [],
});
const find = (store: Store, kit: Parameters<typeof findExtras>[1]['kit'], quantity = 2) => {
  const [found] = findExtras([{ itemId: HOOK, quantity, note: null }], { kit, store, caseDate: DAY });
  if (!found) throw new Error('nothing was answered');
  return found;
};

describe('what a card asks for', () => {
  it('is found in trays that are opened anyway, and then nothing lacks', () => {
    const found = find({ sets: [set('SFS-01', 2), set('CLO-01', 1)], packs: [] }, opens('SFS-01'));
    expect(found).toMatchObject({ opened: [{ code: 'SFS-01', pieces: 2 }], closed: ['CLO-01'], lacking: 0 });
    // a closed tray is only spoken of where something lacks
    expect(whereLines(found)).toEqual(['SFS-01, opened anyway: 2']);
  });

  it('is not what the plan itself takes out of the tray', () => {
    const kit = opens('SFS-01');
    kit.pickList = [
      { itemId: HOOK, quantity: 1, from: { kind: 'set', setId: setId.parse('set_sfs-01') } },
      { itemId: WIRE, quantity: 9, from: { kind: 'set', setId: setId.parse('set_sfs-01') } },
    ] as CaseKit['pickList'];
    expect(find({ sets: [set('SFS-01', 2)], packs: [] }, kit)).toMatchObject({
      opened: [{ pieces: 1 }],
      lacking: 1,
    });
  });

  it('is found in packs that the plan leaves, the first to expire first, and none past its use-by on the day', () => {
    const kit = opens();
    kit.packs = [{ stockId: stockId.parse('stock_b'), itemId: HOOK, quantity: 1 }] as CaseKit['packs'];
    const packs = [
      pack('a', 1, { useBy: plainDate.parse('2026-06-01') }),
      pack('b', 2, { useBy: plainDate.parse('2026-03-01'), lot: '4471' }),
      pack('c', 5, { useBy: plainDate.parse('2026-01-14') }),
      pack('d', 5, { heldBecause: 'recall' }),
      pack('e', 5, { itemId: WIRE }),
    ];
    const found = find({ sets: [], packs }, kit);
    expect(found.packs.map(({ stockId: id, pieces }) => [id, pieces])).toEqual([
      ['stock_b', 1],
      ['stock_a', 1],
    ]);
    expect(found.lacking).toBe(0);
    expect(whereLines(found)[0]).toBe('Pouch rack 1: 1 in pouch, lot 4471, use-by 1 Mar 2026');
  });

  it('lacks what neither has, says so last, and names closed trays without opening them', () => {
    const found = find(
      { sets: [set('CLO-01', 4), set('CLO-02', 4, { step: 'washing' })], packs: [pack('a', 1)] },
      opens(),
      3,
    );
    expect(found).toMatchObject({ opened: [], closed: ['CLO-01'], lacking: 2 });
    expect(whereLines(found)).toEqual([
      'Pouch rack 1: 1 in pouch, lot not stated, use-by not stated',
      'also in CLO-01, not opened for this plan',
      '2 not to be had',
    ]);
  });

  it('is found in a tray that comes back in time and is opened then', () => {
    const found = find({ sets: [set('SFS-01', 2, { step: 'washing' })], packs: [] }, opens('SFS-01'));
    expect(found.lacking).toBe(0);
  });
});
