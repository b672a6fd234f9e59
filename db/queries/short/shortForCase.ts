import { asc, eq } from 'drizzle-orm';
import { setId } from '@/lib/identity/ids';
import { type PackShort, packShort } from '@/lib/packs/pack';
import { type Lapse, lapsesOf, type ShortDecision } from '@/lib/sets/short/decision';
import { mayRead, type Reading } from '../../reader';
import { packs, setPromises, sets } from '../../schema';
import { hiddenFrom } from '../bench/blind';
import { presentDecisions } from './decisions';

/** A set that goes short for a case. */
export interface ShortForCase {
  setId: string;
  code: string;
  lines: PackShort['lines'];
  /** What that stops, as it was when the set was packed; nothing before. */
  stops: PackShort['stops'];
  /** Until when the decision holds; `null` where it does not end by a time. */
  until: string | null;
  kind: ShortDecision['kind'];
  lapses: Lapse[];
}

/** Sets promised to a case, or decided for it alone, that go short by a decision, by code. */
export async function shortForCase(db: Reading, caseId: string, now: string): Promise<ShortForCase[]> {
  mayRead(db, 'readHospital');
  const [decisions, hidden, promised, rows] = await Promise.all([
    presentDecisions(db.read),
    hiddenFrom(db),
    db.read.select({ id: setPromises.setId }).from(setPromises).where(eq(setPromises.caseId, caseId)),
    db.read
      .select({ set: sets, short: packs.short })
      .from(sets)
      .leftJoin(packs, eq(packs.id, sets.packId))
      .orderBy(asc(sets.code)),
  ]);
  const isPromised = new Set(promised.map(({ id }) => id));
  return rows.flatMap(({ set, short }): ShortForCase[] => {
    const present = decisions.get(setId.parse(set.id));
    if (!present || set.withdrawnAt !== null || hidden.has(set.id)) return [];
    const { decision, named } = present;
    // one that goes for another case alone is refused to this one, and said where its kit is shown
    const concerned = decision.kind === 'oneCase' ? decision.caseId === caseId : isPromised.has(set.id);
    if (!concerned) return [];
    const packed = short === null ? null : packShort.parse(short);
    return [
      {
        setId: set.id,
        code: set.code,
        lines: packed?.lines ?? decision.lines,
        stops: packed?.stops ?? [],
        until: decision.lapsesAt,
        kind: decision.kind,
        lapses: lapsesOf(decision, named, now),
      },
    ];
  });
}
