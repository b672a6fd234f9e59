import { and, eq } from 'drizzle-orm';
import { packBars } from '@/lib/bench/packable';
import type { CompletenessInput } from '@/lib/calculations/completeness/completeness';
import { type ItemId, itemId, setId } from '@/lib/identity/ids';
import type { PackFacts } from '@/lib/packs/gate';
import { packMass } from '@/lib/packs/mass';
import type { PlainDate } from '@/lib/quantities/plainDate';
import { completenessInputOf, type HeldLine } from '@/lib/sets/holdings';
import { shortAsk } from '@/lib/sets/short/ask';
import { lapsesOf, notCovered, type ShortDecision } from '@/lib/sets/short/decision';
import { wallClock } from '@/lib/theatre/localTime';
import type { Queries } from '../../client';
import { THE_PROGRAM } from '../../reader';
import { configurationVersions, type sets } from '../../schema';
import { benchStandingOf } from '../bench/standing';
import { keptCatalogue } from '../caseKit';
import { readSetting } from '../settings';
import { presentDecisions } from '../short/decisions';
import { shortFacts } from '../short/facts';

/** What is known of a set before it is closed, and what it would be closed with. */
export interface BeforePacking {
  facts: PackFacts;
  lines: HeldLine[];
  /** The decision that stands, where one does. */
  decision: ShortDecision | null;
  forCase: { id: string; reference: string } | null;
  massInput: CompletenessInput;
  nameOf: (id: ItemId) => string;
}

/** Everything that is asked before a set is packed; inside or outside a write. */
export async function beforePacking(
  read: Queries,
  set: typeof sets.$inferSelect,
  now: string,
  weighedGrams: number | null,
): Promise<BeforePacking> {
  const reading = { read, reader: THE_PROGRAM } as const;
  const present = (await presentDecisions(read, set.id)).get(setId.parse(set.id)) ?? null;
  const today = wallClock(now).date;
  const caseDate: PlainDate = present?.named ? wallClock(present.named.startsAt).date : today;
  const [standing, version, catalogue, limits, policy, asked] = await Promise.all([
    benchStandingOf(read, set.id),
    versionOf(read, set.versionId),
    keptCatalogue(reading),
    readSetting(read, 'sets'),
    readSetting(read, 'packs'),
    shortFacts(read, set, now, caseDate > today ? caseDate : today),
  ]);
  if (!standing || !version) throw new Error(`${set.code} is not on file as a whole`);
  const items = new Map(catalogue.map((item) => [item.id, item]));
  const massInput = completenessInputOf(asked.lines, version.boxes, items, limits);
  const ask = shortAsk(asked);
  const decision = present?.decision ?? null;
  const lapses = present ? lapsesOf(present.decision, present.named, now) : [];
  return {
    facts: {
      bars: packBars(standing),
      withdrawn: set.withdrawnAt !== null,
      ask,
      decision: decision && {
        lapses,
        open: notCovered(decision, ask, asked.lines, asked.pouches),
      },
      newerVersion: version.newer,
      mass: packMass(massInput, weighedGrams, policy.scaleToleranceGrams),
      overMass: policy.overMass,
    },
    lines: [...asked.lines],
    decision: lapses.length === 0 ? decision : null,
    forCase: present?.named && present.decision.kind === 'oneCase' ? present.named : null,
    massInput,
    nameOf: (id) => items.get(id)?.name ?? id,
  };
}

async function versionOf(read: Queries, id: string) {
  const [own] = await read.select().from(configurationVersions).where(eq(configurationVersions.id, id));
  if (!own) return null;
  const [inForce] = await read
    .select()
    .from(configurationVersions)
    .where(
      and(
        eq(configurationVersions.configurationId, own.configurationId),
        eq(configurationVersions.status, 'inForce'),
      ),
    );
  return {
    boxes: [own.basketItemId, own.containerItemId].map((box) => (box === null ? null : itemId.parse(box))),
    newer: inForce && inForce.id !== own.id ? inForce.version : null,
  };
}
