import type { LineReview, SetReviewInput, SetReviewOutput } from '@/lib/calculations/setReview/schema';
import { setReviewInput } from '@/lib/calculations/setReview/schema';
import { setReview } from '@/lib/calculations/setReview/setReview';
import type { Item } from '@/lib/catalogue/item';
import type { FitEngine } from '@/lib/fit/engine';
import { type ItemId, setId } from '@/lib/identity/ids';
import { buildableFrom } from '@/lib/kits/buildable';
import { needsOf } from '@/lib/kits/needs';
import type { Construct } from '@/lib/plans/plan';
import { type LineDemand, lineDemands } from '@/lib/review/lineDemand';
import type { PastCase } from '@/lib/review/pastCase';
import {
  askedSince,
  newlyShort,
  type Removed,
  removedItems,
  type ShortCase,
  shortCases,
} from '@/lib/review/shortCases';
import { type Overlap, overlapOf, type SetUse, setUses } from '@/lib/review/wholeSets';
import type { ConfigurationLine, ConfigurationVersion } from '@/lib/sets/configuration';
import type { SettingValue } from '@/lib/settings/local';
import { unmetWords } from '@/lib/wording/review';
import { mayRead, type Reading } from '../../reader';
import { keptCatalogue } from '../caseKit';
import { type ConfigurationOnFile, findConfiguration, listConfigurations } from '../configurations';
import { loadFitEngine } from '../fitRules';
import { keptVersions } from '../keptVersions';
import { readSetting } from '../settings';
import { loadPastCases, type Period } from './pastCases';

/** A line, what past cases asked of it, and what the calculation makes of it; `null` where nobody knows what was used. */
export interface ReviewedLine extends LineDemand {
  item: Item | null;
  review: LineReview | null;
  /** What repeats the figure on the what-if page. */
  input: SetReviewInput | null;
}

export interface ConfigurationReview {
  configuration: ConfigurationOnFile;
  inForce: ConfigurationVersion;
  draft: ConfigurationVersion | null;
  costs: SettingValue<'costs'>;
  cases: readonly PastCase[];
  lines: ReviewedLine[];
  /** Cases it takes before a line never seen to run out is bounded by the risk set. */
  casesNeeded: number | null;
  shareUsed: SetReviewOutput['shareUsed'];
  removed: (Removed & { name: string; asked: ReturnType<typeof askedSince> })[];
  sets: SetUse[];
  /** Configurations in force that are much like it, the likest first. */
  alike: (Overlap & { id: string; code: string; name: string })[];
  /** Past cases a whole set of the version in force, and of the draft, would have run short in. */
  short: { inForce: ShortCase[]; draft: { all: ShortCase[]; new: ShortCase[] } | null };
  names: ReadonlyMap<ItemId, string>;
}

/** From here on two configurations count as much alike: two pieces in three. */
export const ALIKE = 2 / 3;

/** How a configuration served past cases, line by line and as a whole; `null` where there is none of that id or none in force. */
export async function reviewConfiguration(
  db: Reading,
  id: string,
  period: Period,
  now: string,
): Promise<ConfigurationReview | null> {
  mayRead(db, 'readHospital');
  const [configuration, catalogue, engine, costs] = await Promise.all([
    findConfiguration(db, id),
    keptCatalogue(db),
    loadFitEngine(db),
    readSetting(db.read, 'costs'),
  ]);
  const versions = configuration?.versions ?? [];
  const inForce = versions.find(({ content }) => content.status === 'inForce')?.content;
  if (!configuration || !inForce) return null;
  const draft = versions.find(({ content }) => content.status === 'draft')?.content ?? null;
  const cases = await loadPastCases(db, id, period, { catalogue, engine, now });
  const items = new Map(catalogue.map((item) => [item.id, item]));
  const name = (item: ItemId) => items.get(item)?.name ?? item;
  const unmet = (lines: readonly ConfigurationLine[]) => unmetIn(lines, catalogue, engine);
  const now_ = shortCases(inForce.lines, cases, unmet(inForce.lines));
  const then = draft && shortCases(draft.lines, cases, unmet(draft.lines));
  const demands = lineDemands(inForce.lines, items, cases);
  const reviewed = reviewLines(demands, items, costs);
  return {
    configuration,
    inForce,
    draft,
    costs,
    cases,
    ...reviewed,
    removed: removedItems(
      versions
        .filter(({ content }) => content.status === 'inForce' || content.status === 'superseded')
        .map(({ content, inForceFrom }) => ({
          version: content.version,
          from: inForceFrom,
          items: new Set(content.lines.map(({ itemId }) => itemId)),
        })),
    ).map((one) => ({
      ...one,
      name: name(one.itemId),
      asked: askedSince(one, items.get(one.itemId), cases),
    })),
    sets: setUses(
      configuration.sets.map((set) => ({ ...set, id: setId.parse(set.id) })),
      cases,
      heldBy(inForce),
    ),
    alike: await alikeTo(db, inForce),
    short: { inForce: now_, draft: then && { all: then, new: newlyShort(now_, then) } },
    names: new Map(catalogue.map((item) => [item.id, item.name])),
  };
}

const heldBy = ({ lines }: ConfigurationVersion) => new Set(lines.map(({ itemId }) => itemId));

/** Lines whose use is recorded and those whose use is read off plans have their own number of cases, so each kind is worked out apart. */
function reviewLines(
  demands: readonly LineDemand[],
  items: ReadonlyMap<ItemId, Item>,
  costs: SettingValue<'costs'>,
): Pick<ConfigurationReview, 'lines' | 'casesNeeded' | 'shareUsed'> {
  const found = new Map<string, { review: LineReview; input: SetReviewInput }>();
  let casesNeeded: number | null = null;
  let shareUsed: SetReviewOutput['shareUsed'] = null;
  for (const evidence of ['recorded', 'planned'] as const) {
    const its = demands.filter((one) => one.evidence === evidence && one.cases > 0);
    if (its.length === 0) continue;
    const input = inputOf(its, items, costs);
    const said = setReview(input);
    const answer = said.outcome === 'answered' ? said.answer : said.known;
    if (!answer) continue;
    casesNeeded = answer.casesNeeded;
    // of what is recorded alone: that a piece could have served says nothing about how many were
    if (evidence === 'recorded') shareUsed = answer.shareUsed;
    for (const [at, review] of answer.lines.entries()) {
      const line = input.lines[at];
      const id = its[at]?.line.id;
      if (line && id) found.set(id, { review, input: { ...input, lines: [line] } });
    }
  }
  const lines = demands.map((one): ReviewedLine => {
    const known = found.get(one.line.id);
    return {
      ...one,
      item: items.get(one.line.itemId) ?? null,
      review: known?.review ?? null,
      input: known?.input ?? null,
    };
  });
  return { lines, casesNeeded, shareUsed };
}

function inputOf(
  demands: readonly LineDemand[],
  items: ReadonlyMap<ItemId, Item>,
  costs: SettingValue<'costs'>,
): SetReviewInput {
  const { keepPencePerPiece, pouchPence, fetchMinutes, theatrePencePerMinute, runOutPerThousand } = costs;
  return setReviewInput.parse({
    cases: demands[0]?.cases ?? 0,
    keepPencePerPiece,
    pouchPence,
    fetchMinutes,
    theatrePencePerMinute,
    risk: runOutPerThousand / 1000,
    lines: demands.map(({ line, usedIn }) => ({
      line: `${placeOf(line)} ${items.get(line.itemId)?.name ?? line.itemId}`.slice(0, 80),
      quantity: line.expected,
      mustHaveClass: line.mustHaveClass,
      usedIn,
    })),
  });
}

/** Layer, row and slot: no two lines of a version have the same. */
export const placeOf = ({ layer, row, slot }: ConfigurationLine): string => `${layer}.${row}.${slot}`;

/** Needs of a construct that whole lines do not meet by themselves, once for each construct. */
function unmetIn(
  lines: readonly ConfigurationLine[],
  catalogue: readonly Item[],
  engine: FitEngine,
): (construct: Construct) => ReadonlyMap<string, string> {
  const whole = lines.map(({ itemId, expected }) => ({ itemId, found: expected }));
  const kept = new Map<Construct, ReadonlyMap<string, string>>();
  return (construct) => {
    const known = kept.get(construct);
    if (known) return known;
    const { blocked } = buildableFrom(construct, whole, catalogue, engine);
    const needs = blocked.length === 0 ? null : needsOf(construct, catalogue, engine);
    const unmet = new Map(
      blocked.map((one) => [one.needId, needs === null ? one.needId : unmetWords(one, needs)]),
    );
    kept.set(construct, unmet);
    return unmet;
  };
}

async function alikeTo(db: Reading, version: ConfigurationVersion): Promise<ConfigurationReview['alike']> {
  const [kept, heads] = await Promise.all([keptVersions(db), listConfigurations(db)]);
  return [...kept.values()]
    .filter(
      ({ status, configurationId }) => status === 'inForce' && configurationId !== version.configurationId,
    )
    .flatMap((other) => {
      const head = heads.find(({ id, withdrawnAt }) => id === other.configurationId && withdrawnAt === null);
      const overlap = overlapOf(version.lines, other.lines);
      return head && overlap.share >= ALIKE
        ? [{ ...overlap, id: head.id, code: head.code, name: head.name }]
        : [];
    })
    .sort((a, b) => b.share - a.share);
}
