import { expect, it } from 'vitest';
import { readAs } from '@/db/client';
import { sha256 } from '@/db/ledger';
import { loadKitOfCase } from '@/db/queries/caseKit';
import { kitScreen } from '@/db/queries/caseLife/kitScreen';
import { kitsToday } from '@/db/queries/caseLife/kitsToday';
import { kitOnRecord } from '@/db/queries/caseLife/standing';
import { workOutList } from '@/db/queries/caseLife/workOutList';
import { theatreEntriesOf } from '@/db/queries/theatreCounts/counted';
import { countsScreen } from '@/db/queries/theatreCounts/countsScreen';
import { openQuestionsOf } from '@/db/queries/theatreCounts/questions';
import { theatreCounts } from '@/db/schema';
import { caseId, personId } from '@/lib/identity/ids';
import type { PlainDate } from '@/lib/quantities/plainDate';
import { theatreDigestText } from '@/lib/theatreCounts/digest';
import { KITS } from '@/seed/caseLife/insertKits';
import { DEMO_NOW, demoDatabase } from '../../setup/database';

const idOf = (reference: string) => caseId.parse(`case_${reference.toLowerCase()}`);

it('the demo’s kits are what their plans ask for, and stand where their stories say', async () => {
  const db = await demoDatabase();
  const stages: Record<string, string> = {};
  for (const { reference, list, issued } of KITS) {
    const kit = await kitOnRecord(db.read, idOf(reference));
    stages[reference] = kit?.stage ?? '';
    if (issued !== undefined) continue;
    const worked = await workOutList(db, idOf(reference), { solver: null });
    expect(worked?.planVersion, reference).toBe(kit?.life?.planVersion);
    const codes = worked?.list.map((line) => (line.kind === 'set' ? line.code : line.stockId));
    expect(codes, reference).toEqual(list);
  }
  expect(stages).toEqual({ 'LM-26-D3XE': 'picked', 'LM-26-3JFA': 'picking', 'LM-26-U4HT': 'inTheatre' });
});

it('a kit in theatre is at hand for its own case: the case does not show as short', async () => {
  const db = await demoDatabase();
  const answer = await loadKitOfCase(db, idOf('LM-26-U4HT'), { solver: null, lengthCover: 'none' });
  expect(answer.kind === 'kit' && answer.answer.kit.verdict).toEqual({ kind: 'ready' });
});

it('whoever may still check a kit is shown nothing of what was picked, on any screen', async () => {
  const db = await demoDatabase();
  const picker = {
    id: personId.parse('person_wren-adeyemi'),
    name: 'Wren Adeyemi',
    role: 'technician' as const,
  };
  const checker = { ...picker, id: personId.parse('person_tomas-birkett'), name: 'Tomas Birkett' };
  const at = DEMO_NOW.toISOString();
  const own = await kitScreen(readAs(db, picker), idOf('LM-26-D3XE'), at);
  const blind = await kitScreen(readAs(db, checker), idOf('LM-26-D3XE'), at);
  expect(own?.lines.flatMap(({ picked }) => picked.map(({ name }) => name))).toEqual(['CLO-01']);
  expect(blind).toMatchObject({ hidden: true, lines: [], toPutBack: [] });
  expect(JSON.stringify(blind)).not.toContain('CLO-01');
  const days = ['2026-01-14', '2026-01-16'] as [PlainDate, PlainDate];
  const of = async (reader: typeof picker) =>
    (await kitsToday(readAs(db, reader), ...days)).find(({ reference }) => reference === 'LM-26-D3XE');
  expect(await of(picker)).toMatchObject({ own: true, things: { wanted: 1, picked: 1 } });
  expect(await of(checker)).toMatchObject({ own: false, things: null });
});

it('the first count of the demo is whole, digested as the program digests, and leaves one open question', async () => {
  const db = await demoDatabase();
  const [count] = await db.read.select().from(theatreCounts);
  if (!count) throw new Error('no count');
  const entries = await theatreEntriesOf(db.read, count.id);
  expect(count.entryDigest).toBe(sha256(theatreDigestText(count.id, count.personId, entries)));
  const { closed, questions } = await countsScreen(db, count.caseId);
  expect(closed[0]?.figures.every(({ counted }) => counted !== null)).toBe(true);
  const wrong = closed[0]?.figures.filter(({ expected, counted }) => expected !== counted);
  expect(wrong?.map(({ name }) => name)).toEqual(questions.map(({ thing }) => thing));
  expect(await openQuestionsOf(db, ['set_sft-03'])).toHaveLength(1);
});
