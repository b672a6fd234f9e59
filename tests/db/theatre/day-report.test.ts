import { eq } from 'drizzle-orm';
import { beforeEach, expect, it } from 'vitest';
import type { Database } from '@/db/client';
import { nextOperatingDay } from '@/db/queries/theatre/dayReportFacts';
import { cases, theatreSessions } from '@/db/schema';
import { plainDate } from '@/lib/quantities/plainDate';
import { askLines, stepLines } from '@/lib/wording/day-steps';
import { reportAt } from '../../fixtures/demoReport';
import { DEMO_NOW, demoDatabase } from '../../setup/database';

const NOW = DEMO_NOW.toISOString();
let db: Database;
beforeEach(async () => {
  db = await demoDatabase();
});

it('scratch', async () => {
  for (const [kind, day] of [['morning', '2026-01-14'], ['dayBefore', '2026-01-15'], ['dayBefore','2026-01-16'], ['dayBefore','2026-01-19']] as const) {
    const t0 = Date.now();
    const { report, names } = await reportAt(db, kind, day, NOW);
    console.log(kind, day, Date.now() - t0, JSON.stringify(report.counts));
    for (const s of stepLines(report.steps, names)) console.log(' STEP', s.needBy, '|', s.about, '|', s.word, '|', s.sentence, '|', s.href, s.cases.map(c=>c.reference).join());
    for (const s of report.onTheWay) console.log(' WAY', s.set.code, s.set.step, JSON.stringify(s.expected), s.needByAt, s.marginMinutes, JSON.stringify(s.by));
    for (const s of report.lacking) console.log(' LACK', s.set.code, s.set.step, s.set.heldBecause, s.counting.join(), '/', s.askingForKind.join(), s.set.stops.length);
    for (const s of report.turned) console.log(' TURN', JSON.stringify(s));
    if (report.ask) for (const a of askLines(report.ask, names)) console.log(' ASK', a.word, '|', a.about, '|', a.sentence, '|', a.references.join());
  }
});
