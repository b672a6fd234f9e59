import type { Item } from '../catalogue/item';
import { type ItemId, type PersonId, personId } from '../identity/ids';
import type { CaseKit, SourceRef } from '../kits/kit';
import type { Needs, StepKey } from '../kits/need';
import type { Store } from '../kits/store';
import type { Construct } from '../plans/plan';
import type { PlanVersion } from '../plans/planVersion';
import { dayWords, wallClock } from '../theatre/localTime';
import type { Urgency } from '../theatre/surgicalCase';
import { coverWords, whatToTake } from '../wording/kit';
import { basisWords } from '../wording/kit-parts';
import { kitSheetWords as words } from '../wording/paper';
import { LIMB_WORDS, PLAN_STATUS_WORDS, REGION_WORDS, URGENCY_WORDS } from '../wording/plans';
import type { CardAsked } from './cardExtras';
import { dateWords, type Printing, shortDateWords } from './edition';
import type { Fact } from './sheet';

/** What the sheets of a case are made from: the booking, the plan that counts, and the kit for it from the store as it is. */
export interface KitSheetOf {
  booked: {
    reference: string;
    theatre: string;
    caseDate: PlanDate;
    startsAt: string;
    endsAt: string;
    region: Construct['region'];
    limb: 'left' | 'right';
    surgeon: string;
    urgency: Urgency;
  };
  plan: PlanVersion;
  newerDraft: number | null;
  kit: CaseKit;
  store: Store;
  catalogue: readonly Item[];
  personName: (id: PersonId) => string;
  printing: Printing;
  /** The list the kit is fetched by; left out, or `null`, where the sheet was worked out from all that is in store. */
  list?: { madeAt: string; madeBy: string | null } | null;
  /** The preference card the case was booked by; left out where there is none. */
  card?: CardAsked | undefined;
}
type PlanDate = Parameters<typeof dayWords>[0];

/** How the things of a kit are called on its sheets. */
export interface KitSheetNames {
  item: (id: ItemId) => Item | undefined;
  name: (id: ItemId) => string;
  code: (id: ItemId) => string;
  /** `SFS-02`, or `pouch, lot 4471`. */
  source: (from: SourceRef) => string;
  /** `SFS-02`, or `pouch, Pouch rack 1`: where another one is. */
  elsewhere: (from: SourceRef) => string;
  /** Place and use-by of a set or pack, each in words. */
  whereabouts: (from: SourceRef) => { place: string; useBy: string };
}

export function kitSheetNames({ catalogue, store }: Pick<KitSheetOf, 'catalogue' | 'store'>): KitSheetNames {
  const items = new Map(catalogue.map((item) => [item.id, item]));
  const sets = new Map(store.sets.map((set) => [set.id, set]));
  const packs = new Map(store.packs.map((pack) => [pack.id, pack]));
  return {
    item: (id) => items.get(id),
    name: (id) => items.get(id)?.name ?? id,
    code: (id) => items.get(id)?.code ?? id,
    source: (from) => {
      if (from.kind === 'set') return sets.get(from.setId)?.code ?? from.setId;
      const pack = packs.get(from.stockId);
      return pack ? `${words.form[pack.form]}, ${words.lot(pack.lot)}` : from.stockId;
    },
    elsewhere: (from) => {
      if (from.kind === 'set') return sets.get(from.setId)?.code ?? from.setId;
      const pack = packs.get(from.stockId);
      return pack ? `${words.form[pack.form]}, ${pack.place?.name ?? words.placeNotStated}` : from.stockId;
    },
    whereabouts: (from) => {
      const one = from.kind === 'set' ? sets.get(from.setId) : packs.get(from.stockId);
      return {
        place: one?.place?.name ?? words.placeNotStated,
        useBy: words.useBy(one?.useBy ? shortDateWords(one.useBy) : null),
      };
    },
  };
}

/** The title block of a case's sheets. */
export function kitFacts({ booked, plan, kit, list, personName }: KitSheetOf): Fact[] {
  const { facts } = words;
  return [
    {
      term: facts.when,
      value: words.when(
        dayWords(booked.caseDate),
        wallClock(booked.startsAt).time,
        wallClock(booked.endsAt).time,
      ),
    },
    { term: facts.theatre, value: booked.theatre },
    { term: facts.region, value: `${REGION_WORDS[booked.region]}, ${LIMB_WORDS[booked.limb].toUpperCase()}` },
    { term: facts.surgeon, value: booked.surgeon },
    {
      term: facts.plan,
      value: words.planVersion(plan.version, PLAN_STATUS_WORDS[plan.status].toLowerCase()),
    },
    ...(plan.status === 'draft' ? [] : [{ term: facts.confirmedBy, value: personName(plan.confirmedBy) }]),
    { term: facts.urgency, value: URGENCY_WORDS[booked.urgency] },
    ...(list
      ? [
          {
            term: facts.list,
            value: words.listMade(
              `${dateWords(wallClock(list.madeAt).date)} ${wallClock(list.madeAt).time}`,
              list.madeBy === null ? null : personName(personId.parse(list.madeBy)),
            ),
          },
        ]
      : []),
    ...(kit.lengthCover ? [{ term: facts.cover, value: coverOf(kit) }] : []),
    { term: facts.take, value: whatToTake(kit) },
  ];
}

function coverOf(kit: CaseKit): string {
  const cover = coverWords(kit.lengthCover);
  return cover === null ? words.notEstablished : words.cover(cover);
}

export function subtitleOf({ booked }: Pick<KitSheetOf, 'booked'>): string {
  return `${REGION_WORDS[booked.region]}, ${LIMB_WORDS[booked.limb].toLowerCase()} · ${booked.theatre} · ${dayWords(booked.caseDate)} ${wallClock(booked.startsAt).time}`;
}

/**
 * Where the length of a screw was worked out from a mean and spread, how: the surgeon stated the spread and not this
 * length, and the paper must not look as if anyone had. Empty for what was stated exactly.
 */
export function spreadWords(itemId: ItemId, steps: readonly StepKey[], needs: Needs): string {
  const bases = needs.pieces.flatMap(({ step, length, accepts }) =>
    length?.kind === 'spread' && steps.includes(step) && accepts.some((one) => one.itemId === itemId)
      ? [basisWords(length)]
      : [],
  );
  return [...new Set(bases)].join('; ');
}
