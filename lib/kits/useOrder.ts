import type { ItemId } from '../identity/ids';
import { sameSource } from './allocate';
import type { ChosenChain, ChosenPack, OrderEntry, PickLine, SourceRef, StepKit, UsePhase } from './kit';
import type { ChainKind, Needs, PieceNeed, Step, StepKey } from './need';

/** The order of use (domain §4): wires that hold, plain screws that draw the plate to bone, offset, lag, then locking. */
const PHASES: UsePhase[] = [
  'plate',
  'temporaryWires',
  'plainScrews',
  'offsetScrews',
  'lagScrews',
  'lockingScrews',
];

const PHASE_OF: Record<Step['purpose'], UsePhase> = {
  plate: 'plate',
  temporaryWire: 'temporaryWires',
  neutral: 'plainScrews',
  offset: 'offsetScrews',
  lag: 'lagScrews',
  locked: 'lockingScrews',
};

/** The order in which one screw uses its chains. */
const CHAINS: ChainKind[] = [
  'wiring',
  'lagDrilling',
  'drilling',
  'tapping',
  'countersinking',
  'measuring',
  'driving',
];

type Entry = OrderEntry['items'][number];

/** The lay-up: phase by phase the instruments in the order their chains use them, then what is implanted. */
export function orderOfUse(needs: Needs, steps: StepKit[], chains: ChosenChain[]): OrderEntry[] {
  return PHASES.flatMap((phase) => {
    const mine = needs.steps.filter((step) => PHASE_OF[step.purpose] === phase).map((step) => step.key);
    if (mine.length === 0) return [];
    const kits = steps.filter((kit) => mine.includes(kit.step));
    const items: Entry[] = [];
    for (const kind of CHAINS) {
      for (const chain of chains) {
        const need = needs.chains.find((one) => one.id === chain.chainId);
        if (need?.kind !== kind || !kits.some((kit) => kit.chainIds.includes(chain.chainId))) continue;
        for (const { slot, itemId, from } of chain.links) {
          if (!items.some((one) => one.itemId === itemId)) items.push({ slot, itemId, quantity: 1, from });
        }
      }
    }
    for (const kit of kits) {
      for (const { needId, itemId, from } of kit.pieces) addPiece(items, whatOf(needs, needId), itemId, from);
    }
    return [{ phase, steps: mine, items }];
  });
}

function whatOf(needs: Needs, needId: string): PieceNeed['what'] {
  return needs.pieces.find((need) => need.id === needId)?.what ?? 'screw';
}

function addPiece(items: Entry[], slot: PieceNeed['what'], itemId: ItemId, from: SourceRef): void {
  const same = items.find((one) => one.slot === slot && one.itemId === itemId && sameSource(one.from, from));
  if (same) same.quantity += 1;
  else items.push({ slot, itemId, quantity: 1, from });
}

/**
 * The pick list by phase: each instrument once, where it is first used, with every step it serves; implants counted.
 * Back-ups that are taken along come last in the phase that would want them.
 */
export function pickLines(given: {
  needs: Needs;
  steps: StepKit[];
  chains: ChosenChain[];
  order: OrderEntry[];
  packs: ChosenPack[];
  /** Where the next one of an item is, left in store. */
  nextOf: (itemId: ItemId, from: SourceRef) => SourceRef[];
}): PickLine[] {
  const { needs, steps, chains, order, packs, nextOf } = given;
  const lines: PickLine[] = [];
  for (const { phase, items } of order) {
    for (const { slot, itemId, quantity, from } of items) {
      if (lines.some((line) => line.itemId === itemId && sameSource(line.from, from))) continue;
      const serves = stepsUsing(itemId, needs, steps, chains);
      lines.push({
        phase,
        slot,
        itemId,
        quantity,
        steps: serves,
        from,
        role: 'open',
        backUpIn: nextOf(itemId, from),
      });
    }
  }
  for (const pack of packs) {
    if (pack.role !== 'hold') continue;
    const from: SourceRef = { kind: 'pack', stockId: pack.stockId };
    const beside = lines.find((line) => line.itemId === pack.itemId);
    const need = needs.chains.find((chain) => pack.meets.includes(chain.id));
    const first = needs.steps.find((step) => step.key === need?.steps[0]);
    const slot = beside?.slot ?? slotOf(pack.itemId, needs) ?? 'pilotBit';
    lines.push({
      phase: beside?.phase ?? PHASE_OF[first?.purpose ?? 'plate'],
      slot,
      itemId: pack.itemId,
      quantity: pack.quantity,
      steps: need?.steps ?? [],
      from,
      role: 'hold',
      backUpIn: nextOf(pack.itemId, from),
    });
  }
  return PHASES.flatMap((phase) => lines.filter((line) => line.phase === phase));
}

function slotOf(itemId: ItemId, needs: Needs) {
  for (const { slots } of needs.chains) {
    const slot = slots.find(({ candidates }) => candidates.some((one) => one.itemId === itemId));
    if (slot) return slot.name;
  }
  return null;
}

function stepsUsing(itemId: ItemId, needs: Needs, steps: StepKit[], chains: ChosenChain[]): StepKey[] {
  const used = new Set(
    chains.filter(({ links }) => links.some((link) => link.itemId === itemId)).map((chain) => chain.chainId),
  );
  return needs.steps
    .map((step) => step.key)
    .filter((key) => {
      const kit = steps.find((one) => one.step === key);
      return kit?.pieces.some((piece) => piece.itemId === itemId) || kit?.chainIds.some((id) => used.has(id));
    });
}
