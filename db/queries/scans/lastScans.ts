import { desc, eq } from 'drizzle-orm';
import type { PersonId, WorkstationId } from '@/lib/identity/ids';
import {
  type ScanHow,
  type ScanMeaning,
  type ScanVerdict,
  scanHow,
  scanMeaning,
  scanVerdict,
} from '@/lib/scanning/meaning';
import { mayRead, type Reading } from '../../reader';
import { people, scanReplies, scans } from '../../schema';

export interface LastScan {
  id: string;
  text: string;
  how: ScanHow;
  by: string;
  verdict: ScanVerdict;
  meaning: ScanMeaning;
  sentence: string;
  reply: 'another' | 'same' | null;
  doneAt: string;
  enteredAt: string;
  late: boolean;
}

const MOST = 50;

/** The last scans made at a workstation, or by a person where it is not at one; the newest first. */
export async function lastScans(
  db: Reading,
  of: { workstationId: WorkstationId } | { personId: PersonId },
): Promise<LastScan[]> {
  mayRead(db, 'recordScan');
  const rows = await db.read
    .select({ scan: scans, by: people.name, reply: scanReplies.reply })
    .from(scans)
    .innerJoin(people, eq(people.id, scans.personId))
    .leftJoin(scanReplies, eq(scanReplies.scanId, scans.id))
    .where(
      'workstationId' in of ? eq(scans.workstationId, of.workstationId) : eq(scans.personId, of.personId),
    )
    .orderBy(desc(scans.seq))
    .limit(MOST);
  return rows.map(({ scan, by, reply }) => ({
    id: scan.id,
    text: scan.text,
    how: scanHow.parse(scan.how),
    by,
    verdict: scanVerdict.parse(scan.verdict),
    meaning: scanMeaning.parse(scan.meaning),
    sentence: scan.sentence,
    reply: reply === 'another' || reply === 'same' ? reply : null,
    doneAt: scan.doneAt,
    enteredAt: scan.enteredAt,
    late: scan.late,
  }));
}
