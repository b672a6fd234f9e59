import { and, asc, eq, gte, lt } from 'drizzle-orm';
import type { LifeStage } from '@/lib/caseLife/life';
import { matchPicks, type Picked } from '@/lib/caseLife/match';
import type { PlainDate } from '@/lib/quantities/plainDate';
import { mayRead, type Reading, THE_PROGRAM } from '../../reader';
import { cases, theatres } from '../../schema';
import { blindToKit, pickedOf } from './blind';
import { type KitOnRecord, kitsOnRecord, stands } from './standing';

/** The kit of a case of these days, in a line. */
export interface KitToday {
  caseId: string;
  reference: string;
  theatre: string;
  startsAt: string;
  stage: LifeStage;
  /** Things on the list and things there; `null` where the reader is to check it and must not know. */
  things: { wanted: number; picked: number } | null;
  /** Things still out. */
  stillOut: number;
  /** The reader had a hand in picking it: another person checks it. */
  own: boolean;
}

/** Kits of the cases of some days, by time: what is to be picked, checked, issued, brought back or put back. */
export async function kitsToday(db: Reading, from: PlainDate, before: PlainDate): Promise<KitToday[]> {
  mayRead(db, 'readHospital');
  const { read, reader } = db;
  const rows = await read
    .select({ booked: cases, theatre: theatres.name })
    .from(cases)
    .innerJoin(theatres, eq(theatres.id, cases.theatreId))
    .where(and(gte(cases.caseDate, from), lt(cases.caseDate, before)))
    .orderBy(asc(cases.startsAt), asc(cases.reference));
  const kits = await kitsOnRecord(
    read,
    rows.map(({ booked }) => booked),
  );
  return rows.flatMap(({ booked, theatre }): KitToday[] => {
    const kit = kits.get(booked.id);
    if (!kit) return [];
    const standing = kit.picks.filter(stands);
    const matched = matchPicks(kit.list, standing as Picked[]);
    return [
      {
        caseId: booked.id,
        reference: booked.reference,
        theatre,
        startsAt: booked.startsAt,
        stage: kit.stage,
        things: blindToKit(db, kit)
          ? null
          : {
              wanted: matched.lines.length,
              picked: matched.lines.filter(({ picked, wanted }) => picked >= wanted).length,
            },
        stillOut: kit.picks.filter(({ issuedAt }) => issuedAt !== null).length - returnedOf(kit),
        own: reader !== THE_PROGRAM && pickedOf(kit, reader.id),
      },
    ];
  });
}

/** Issued picks of which nothing is out any more. */
function returnedOf(kit: KitOnRecord): number {
  return kit.picks.filter(({ id, issuedAt, quantity }) => {
    const back = kit.returns
      .filter(({ pickId }) => pickId === id)
      .reduce((sum, one) => sum + one.quantity, 0);
    return issuedAt !== null && back >= quantity;
  }).length;
}
