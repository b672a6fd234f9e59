import type { Item, Plate } from '../catalogue/item';
import { washerDoesNotFit } from '../plans/assessFreeScrew';
import { missingForWire, wireTooThick } from '../plans/assessHole';
import type { Construct, FreeScrew, HoleFill, PlannedPlate, ScrewFill } from '../plans/plan';
import { askOnce, holeSignature, type Rules } from './askOnce';
import { type CatalogueIndex, indexCatalogue } from './catalogueIndex';
import { type DraftChain, screwChains, wireChain } from './chainNeeds';
import type { ChainNeed, LinkVerdict, Needs, PieceNeed, PlanFault, Step, StepKey } from './need';
import { acceptedScrews, namedNeed, type PlannedScrew, screwNeed } from './pieceNeeds';

export type * from './need';

/**
 * Everything a planned construct makes necessary, whatever is in store: per step the piece that stays, and the
 * chains of instruments with every answer they rest on. Pure; answers are asked once per design and hole form.
 *
 * @param catalogue every item; the kit uses current ones only
 * @param engine    the fit rules in force
 */
export function needsOf(construct: Construct, catalogue: readonly Item[], engine: Rules): Needs {
  const index = indexCatalogue(catalogue);
  const work = new Gathering(index, askOnce(engine, catalogue), draftsOf(engine, catalogue));
  for (const plate of construct.plates) work.plate(plate, construct.limb);
  for (const screw of construct.freeScrews) work.freeScrew(screw);
  return work.needs();
}

/** Chains by their setting: twelve equal holes cost as much as one, and the next plan of the day costs nothing. */
type Drafts = Map<string, { draft: DraftChain; key: string }[]>;

const kept = new WeakMap<Rules, WeakMap<readonly Item[], Drafts>>();
const MOST_KEPT = 3_000;

function draftsOf(engine: Rules, catalogue: readonly Item[]): Drafts {
  const byCatalogue = kept.get(engine) ?? new WeakMap<readonly Item[], Drafts>();
  kept.set(engine, byCatalogue);
  const drafts = byCatalogue.get(catalogue) ?? new Map();
  if (drafts.size > MOST_KEPT) drafts.clear();
  byCatalogue.set(catalogue, drafts);
  return drafts;
}

class Gathering {
  private readonly steps: Step[] = [];
  private readonly pieces: PieceNeed[] = [];
  private readonly faults: PlanFault[] = [];
  private readonly chains = new Map<string, ChainNeed>();

  constructor(
    private readonly index: CatalogueIndex,
    private readonly rules: Rules,
    private readonly drafts: Drafts,
  ) {}

  needs(): Needs {
    const counted = new Map<string, number>();
    const chains = [...this.chains.values()].map((chain) => {
      const count = (counted.get(chain.kind) ?? 0) + 1;
      counted.set(chain.kind, count);
      return { ...chain, id: `chain:${chain.kind}:${count}` };
    });
    for (const { id, kind, steps, slots } of chains) {
      const empty = slots.some((slot) => slot.candidates.length === 0);
      if (empty) this.faults.push({ kind: 'noChainInCatalogue', chainId: id, chain: kind, steps });
    }
    return { steps: this.steps, pieces: this.pieces, chains, faults: this.faults };
  }

  plate(planned: PlannedPlate, limb: Construct['limb']): void {
    const { key, plateItemId } = planned;
    const plate = this.index.byId.get(plateItemId);
    this.steps.push({ key, kind: 'plate', plateKey: key, holeId: null, purpose: 'plate', screwFamily: null });
    if (plate?.kind !== 'plate') {
      this.faults.push({ kind: 'unknownPlate', step: key, itemId: plateItemId });
      return;
    }
    const sides: LinkVerdict[] = limb
      ? [{ itemIds: [plate.id], holeId: null, verdict: this.rules.ask({ relation: 'sides', plate, limb }) }]
      : [];
    this.add(namedNeed('plate', key, plate, sides));
    // in the plate's own order, which is the order along it
    const order = new Map(plate.holes.map((hole, at) => [hole.id, at]));
    const fills = Object.entries(planned.fills).sort(
      ([a], [b]) => (order.get(a) ?? Number.MAX_SAFE_INTEGER) - (order.get(b) ?? Number.MAX_SAFE_INTEGER),
    );
    for (const [holeId, fill] of fills) if (fill.purpose !== 'empty') this.hole(key, plate, holeId, fill);
    // a wire hole that is not named means no wire; of every other hole the surgeon says what goes in
    const holeIds = plate.holes
      .filter(({ id, holeClass }) => holeClass !== 'wireHole' && planned.fills[id] === undefined)
      .map(({ id }) => id);
    if (holeIds.length > 0) this.faults.push({ kind: 'holesNotDecided', step: key, holeIds });
  }

  private hole(
    plateKey: string,
    plate: Plate,
    holeId: string,
    fill: Exclude<HoleFill, { purpose: 'empty' }>,
  ): void {
    const key = `${plateKey}/${holeId}`;
    const screwFamily = fill.purpose === 'temporaryWire' ? null : fill.screwFamily;
    this.steps.push({ key, kind: 'hole', plateKey, holeId, purpose: fill.purpose, screwFamily });
    const hole = plate.holes.find((one) => one.id === holeId);
    if (!hole) {
      this.faults.push({ kind: 'unknownHole', step: key });
      return;
    }
    if (fill.purpose !== 'temporaryWire') {
      this.screw(plannedScrew(key, fill, fill.purpose, { hole, plate }), false);
      return;
    }
    const wire = this.index.byId.get(fill.wireItemId);
    if (wire?.kind !== 'guideWire') {
      this.faults.push({ kind: 'unknownItem', step: key, itemId: fill.wireItemId });
      return;
    }
    this.add(namedNeed('wire', key, wire, []));
    if (wireTooThick(wire, hole)) this.faults.push({ kind: 'doesNotPass', step: key, itemId: wire.id });
    const facts = missingForWire(wire, hole);
    if (facts.length > 0) this.faults.push({ kind: 'factNotStated', step: key, itemId: wire.id, facts });
    this.share(key, wire, `wire|${wire.id}|${plate.id}|${holeSignature(hole)}`, () => [
      wireChain(wire, hole, plate, this.index, this.rules),
    ]);
  }

  freeScrew(planned: FreeScrew): void {
    const { key, washerItemId } = planned;
    const screwFamily = planned.screwFamily;
    this.steps.push({ key, kind: 'freeScrew', plateKey: null, holeId: null, purpose: 'lag', screwFamily });
    this.screw(plannedScrew(key, planned, 'lag', null), washerItemId !== null);
    if (washerItemId === null) return;
    const washer = this.index.byId.get(washerItemId);
    if (washer?.kind === 'washer') {
      this.add(namedNeed('washer', key, washer, []));
      const [screw] = this.index.family(screwFamily);
      if (screw && washerDoesNotFit(washer, screw))
        this.faults.push({ kind: 'doesNotPass', step: key, itemId: washer.id });
      const facts = washer.innerUm === null ? ['washer.innerUm'] : [];
      if (facts.length > 0) this.faults.push({ kind: 'factNotStated', step: key, itemId: washer.id, facts });
    } else this.faults.push({ kind: 'unknownItem', step: key, itemId: washerItemId });
  }

  private screw(planned: PlannedScrew, hasWasher: boolean): void {
    const { step, family, use, seat } = planned;
    if (!this.index.knowsFamily(family)) {
      this.faults.push({ kind: 'unknownFamily', step, family });
      return;
    }
    const { need, faults } = screwNeed(planned, this.index, this.rules);
    this.pieces.push(need);
    this.faults.push(...faults);
    const accepted = acceptedScrews(planned, this.index).screws.map(({ screw }) => screw);
    const screws = accepted.length > 0 ? accepted : this.index.family(family);
    const first = screws[0];
    if (!first) return;
    const facts = missingFacts(first, seat === null && !hasWasher);
    if (facts.length > 0) this.faults.push({ kind: 'factNotStated', step, itemId: first.id, facts });
    const where = seat ? `${seat.plate.id}|${holeSignature(seat.hole)}` : 'bone';
    const lengths = screws.map((screw) => screw.id).join();
    this.share(step, first, `${lengths}|${use.purpose}${use.cortices}|${where}|${hasWasher}`, () =>
      screwChains({ screws, use, seat, hasWasher }, this.index, this.rules),
    );
  }

  /** Adds the chains of one setting; a chain whose candidates and pairs are all the same is one need of both steps. */
  private share(step: StepKey, forItem: Item, setting: string, make: () => DraftChain[]): void {
    let made = this.drafts.get(setting);
    if (!made) {
      made = make().map((draft) => ({ draft, key: chainKey(forItem, draft) }));
      this.drafts.set(setting, made);
    }
    for (const { draft, key } of made) {
      const known = this.chains.get(key);
      if (known) known.steps.push(step);
      else
        this.chains.set(key, {
          id: '',
          importance: 'mustHave',
          steps: [step],
          forItemId: forItem.id,
          ...draft,
        });
    }
  }

  private add({ need, faults }: { need: PieceNeed; faults: PlanFault[] }): void {
    this.pieces.push(need);
    this.faults.push(...faults);
  }
}

function plannedScrew(
  step: StepKey,
  fill: Pick<ScrewFill, 'screwFamily' | 'length' | 'acceptLongerMm' | 'cortices'>,
  purpose: ScrewFill['purpose'],
  seat: PlannedScrew['seat'],
): PlannedScrew {
  const { screwFamily: family, length, acceptLongerMm, cortices } = fill;
  return { step, family, length, acceptLongerMm, use: { purpose, cortices }, seat };
}

/** Values that decide which chains the screw needs; the chain is then asked for, and the kit not called ready. */
function missingFacts(screw: { tip: unknown; countersinkStated: unknown }, alone: boolean): string[] {
  const facts: string[] = [];
  if (screw.tip === null) facts.push('screw.tip');
  if (alone && screw.countersinkStated === null) facts.push('screw.countersinkStated');
  return facts;
}

/** Equal for chains that are the same need: same screw family or wire, same candidates, same pairs. */
function chainKey(forItem: Item, { kind, slots, links }: DraftChain): string {
  const about = forItem.kind === 'screw' ? forItem.screwFamily : forItem.id;
  const parts = slots.map(({ candidates }) =>
    candidates.map((one) => `${one.itemId}.${one.endIndex}${one.established ? '' : '?'}`).join(),
  );
  const pairs = links.map((link) =>
    link.pairs.map((pair) => `${pair.first}-${pair.second}${pair.established ? '' : '?'}`).join(),
  );
  return [kind, about, ...parts, ...pairs].join('|');
}
