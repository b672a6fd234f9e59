import type { Hole } from '../catalogue/hole';
import type {
  DrillBit,
  DrillingPosition,
  DrillSleeve,
  GuideWire,
  Handle,
  Item,
  Plate,
  Screw,
  SleeveEnd,
  TorqueLimiter,
} from '../catalogue/item';
import type { Question, ScrewUse, Shanked } from '../fit/question';
import type { Rules } from './askOnce';
import type { CatalogueIndex } from './catalogueIndex';
import { candidateFrom, type DraftSlot, linkBetween, nothingNeeded, type Part, prune } from './chainParts';
import type { ChainKind, LinkVerdict, Slot, SlotLink, SlotName } from './need';

/** A chain as the rules give it, before steps that share it are brought together. */
export interface DraftChain {
  kind: ChainKind;
  slots: Slot[];
  links: SlotLink[];
}

/** What a chain is asked for: a screw in its place. */
export interface ChainSetting {
  /** The accepted lengths of one design; the answers must hold for each. */
  screws: Screw[];
  use: ScrewUse;
  seat: { hole: Hole; plate: Plate } | null;
  hasWasher: boolean;
}

type Seat = Extract<Question, { relation: 'guides' }>['seat'];
type SleevePart = DrillSleeve & { endIndex: number };

/** Every instrument chain that one planned screw makes necessary (domain §4). */
export function screwChains(setting: ChainSetting, index: CatalogueIndex, rules: Rules): DraftChain[] {
  const screw = setting.screws[0];
  if (!screw) return [];
  const kit = makers(index, rules);
  const chains: DraftChain[] = [];
  const selfDrilling = screw.tip === 'selfDrillingSelfTapping';
  // a self-drilling screw makes its own hole, needs no tap, and is not measured
  if (!selfDrilling) {
    chains.push(
      setting.use.purpose === 'lag' ? kit.lagDrilling(screw, setting) : kit.drilling(screw, setting),
    );
    // a tip that is not stated may be blunt: the tap is asked for
    if (screw.tip !== 'selfTapping') chains.push(kit.tapping(screw));
    chains.push(kit.measuring(setting.screws, setting.use));
  }
  if (!setting.seat && !setting.hasWasher && screw.countersinkStated !== false)
    chains.push(kit.countersinking(screw));
  chains.push(kit.driving(screw));
  return chains;
}

/** The chain for a temporary wire in a hole: a sleeve where the hole is wider than a wire hole, and what drives it. */
export function wireChain(
  wire: GuideWire,
  hole: Hole,
  plate: Plate,
  index: CatalogueIndex,
  rules: Rules,
): DraftChain {
  return makers(index, rules).wiring(wire, hole, plate);
}

/** Where the drill stands in the hole for each purpose; a lag screw's hole is drilled in the neutral position. */
const POSITION: Record<ScrewUse['purpose'], DrillingPosition> = {
  neutral: 'neutral',
  offset: 'offset',
  lag: 'neutral',
  locked: 'centred',
};

function makers(index: CatalogueIndex, rules: Rules) {
  const say = (question: Question, items: Item[], holeId: string | null = null): LinkVerdict => ({
    itemIds: items.map((item) => item.id),
    holeId,
    verdict: rules.ask(question),
  });
  const slotOf = <T extends Item>(
    name: SlotName,
    items: T[],
    ask: (item: T) => LinkVerdict[],
  ): DraftSlot<T> => ({
    name,
    parts: items.map((item) => candidateFrom(item, null, ask(item))).filter((part) => part !== null),
  });
  const sleeveSlot = (
    name: SlotName,
    seat: Seat,
    position: DrillingPosition | null,
    suits: (end: SleeveEnd) => boolean = () => true,
  ): DraftSlot<SleevePart> => {
    const parts: Part<SleevePart>[] = [];
    for (const sleeve of index.current('drillSleeve')) {
      sleeve.ends.forEach((end, endIndex) => {
        if (!suits(end)) return;
        const question = { relation: 'guides', by: { sleeve, end, endIndex }, seat, position } as const;
        const answer = say(question, [sleeve], seat.on === 'hole' ? seat.hole.id : null);
        const part = candidateFrom({ ...sleeve, endIndex }, endIndex, [answer]);
        if (!part) return;
        // an outside nobody has described may be threaded or not: no fit until it is said
        if (end.outerForm === null) part.candidate.established = false;
        parts.push(part);
      });
    }
    return { name, parts };
  };
  const handles = (name: SlotName): DraftSlot<Handle> => slotOf(name, index.current('handle'), () => []);
  const passes = (tool: DrillBit | GuideWire, sleeve: SleevePart): LinkVerdict => {
    const { endIndex } = sleeve;
    const original = index.byId.get(sleeve.id) as DrillSleeve;
    const end = original.ends[endIndex] as DrillSleeve['ends'][number];
    return say({ relation: 'passes', tool, by: { sleeve: original, end, endIndex } }, [tool, original]);
  };
  const joins = (shank: Shanked, socket: Handle | TorqueLimiter): LinkVerdict =>
    say({ relation: 'joins', shank, socket }, [shank, socket]);
  /** A shank in its handle; what has a handle of its own needs none, and takes none. */
  const held = (tool: Shanked | null, handle: Handle | null) => {
    const fixed = tool !== null && 'fixedHandle' in tool && tool.fixedHandle;
    if (handle === null || tool === null) return fixed && handle === null;
    return fixed ? false : joins(tool, handle);
  };
  const seatOf = (seat: ChainSetting['seat']): Seat => (seat ? { on: 'hole', ...seat } : { on: 'bone' });
  const positionOf = ({ seat, use }: ChainSetting) => (seat ? POSITION[use.purpose] : null);
  const pilotBits = (screw: Screw) =>
    slotOf('pilotBit', index.current('drillBit'), (bit) => [
      say({ relation: 'pilots', bit, screw }, [bit, screw]),
    ]);

  function finish(kind: ChainKind, slots: DraftSlot<never>[], links: SlotLink[]): DraftChain {
    const plain = slots.map(
      (slot): Slot => ({ name: slot.name, candidates: slot.parts.map((part) => part.candidate), pieces: 1 }),
    );
    return { kind, ...prune(plain, links) };
  }
  const all = (...slots: DraftSlot<unknown>[]) => slots as DraftSlot<never>[];

  return {
    drilling(screw: Screw, setting: ChainSetting): DraftChain {
      // the direction of a locking screw is that of its thread: its sleeve is screwed into the hole, a plain one's is not
      const locked = setting.use.purpose === 'locked';
      const sleeve = sleeveSlot('sleeve', seatOf(setting.seat), positionOf(setting), (end) =>
        end.outerForm === null ? true : (end.outerForm === 'threaded') === locked,
      );
      const bit = pilotBits(screw);
      const handle = handles('handle');
      return finish('drilling', all(sleeve, bit, handle), [
        linkBetween(0, 1, [sleeve, bit], (s, b) => s !== null && b !== null && passes(b, s)),
        linkBetween(1, 2, [bit, handle], held),
      ]);
    },

    /** Gliding bit and its sleeve through the near cortex, then an insert sleeve in that hole guides the pilot bit. */
    lagDrilling(screw: Screw, setting: ChainSetting): DraftChain {
      const glidingSleeve = sleeveSlot(
        'glidingSleeve',
        seatOf(setting.seat),
        positionOf(setting),
        (end) => end.outerForm !== 'threaded',
      );
      const glidingBit = slotOf('glidingBit', index.current('drillBit'), (bit) => [
        say({ relation: 'glides', bit, screw }, [bit, screw]),
      ]);
      // the insert sits in the hole that the gliding bit made, so every width of hole is asked about apart
      const insert: DraftSlot<SleevePart> = { name: 'insertSleeve', parts: [] };
      for (const sleeve of index.current('drillSleeve')) {
        sleeve.ends.forEach((_, endIndex) => {
          insert.parts.push({
            item: { ...sleeve, endIndex },
            candidate: { itemId: sleeve.id, endIndex, answers: [], established: true },
          });
        });
      }
      const sitsIn = (bit: DrillBit, sleeve: SleevePart): LinkVerdict => {
        const original = index.byId.get(sleeve.id) as DrillSleeve;
        const { endIndex } = sleeve;
        const end = original.ends[endIndex] as DrillSleeve['ends'][number];
        const seat = { on: 'glidingHole', diameterUm: bit.diameterUm } as const;
        return say({ relation: 'guides', by: { sleeve: original, end, endIndex }, seat, position: null }, [
          original,
          bit,
        ]);
      };
      const bit = pilotBits(screw);
      const handle = handles('handle');
      const glidingHandle = handles('glidingHandle');
      return finish('lagDrilling', all(glidingSleeve, glidingBit, glidingHandle, insert, bit, handle), [
        linkBetween(0, 1, [glidingSleeve, glidingBit], (s, b) => s !== null && b !== null && passes(b, s)),
        linkBetween(1, 2, [glidingBit, glidingHandle], held),
        linkBetween(1, 3, [glidingBit, insert], (b, s) => s !== null && b !== null && sitsIn(b, s)),
        linkBetween(3, 4, [insert, bit], (s, b) => s !== null && b !== null && passes(b, s)),
        linkBetween(4, 5, [bit, handle], held),
      ]);
    },

    tapping(screw: Screw): DraftChain {
      const tap = slotOf('tap', index.current('tap'), (one) => [
        say({ relation: 'taps', tap: one, screw }, [one, screw]),
      ]);
      const handle = handles('handle');
      return finish('tapping', all(tap, handle), [linkBetween(0, 1, [tap, handle], held)]);
    },

    countersinking(screw: Screw): DraftChain {
      const countersink = slotOf('countersink', index.current('countersink'), (one) => [
        say({ relation: 'countersinks', countersink: one, screw }, [one, screw]),
      ]);
      const handle = handles('handle');
      return finish('countersinking', all(countersink, handle), [
        linkBetween(0, 1, [countersink, handle], held),
      ]);
    },

    /** One gauge for every accepted length: the length is not known before it is measured. */
    measuring(screws: Screw[], use: ScrewUse): DraftChain {
      const gauge = slotOf('gauge', index.current('depthGauge'), (one) =>
        screws.map((screw) => say({ relation: 'measures', gauge: one, screw, use }, [one, screw])),
      );
      return finish('measuring', all(gauge), []);
    },

    /** Driver and handle; between them, for a locking screw, the torque limiter of its class. */
    driving(screw: Screw): DraftChain {
      const driver = slotOf('driver', index.current('driver'), (one) => [
        say({ relation: 'turns', driver: one, screw }, [one, screw]),
      ]);
      const handle = handles('handle');
      handle.parts.push(nothingNeeded());
      if (screw.screwKind !== 'locking') {
        return finish('driving', all(driver, handle), [linkBetween(0, 1, [driver, handle], held)]);
      }
      const limiter = slotOf('torqueLimiter', index.current('torqueLimiter'), (one) => [
        say({ relation: 'limits', limiter: one, screw }, [one, screw]),
      ]);
      return finish('driving', all(driver, limiter, handle), [
        linkBetween(
          0,
          1,
          [driver, limiter],
          (d, l) => d !== null && l !== null && !d.fixedHandle && joins(d, l),
        ),
        linkBetween(1, 2, [limiter, handle], held),
      ]);
    },

    wiring(wire: GuideWire, hole: Hole, plate: Plate): DraftChain {
      // a wire has no shank of its own making: it goes into its driver by its own thickness
      const coupling = wire.diameterUm === null ? null : { form: 'wire', sizeUm: wire.diameterUm };
      const shank = { ...wire, coupling } as unknown as Shanked;
      const wireDriver = slotOf('wireDriver', index.current('handle'), (one) => [joins(shank, one)]);
      if (hole.holeClass === 'wireHole') return finish('wiring', all(wireDriver), []);
      const position = hole.lockingFamily === null ? null : 'centred';
      const sleeve = sleeveSlot('sleeve', { on: 'hole', hole, plate }, position);
      sleeve.parts = sleeve.parts.flatMap((part) => {
        const more = part.item ? passes(wire, part.item) : null;
        const kept =
          part.item && more
            ? candidateFrom(part.item, part.item.endIndex, [...part.candidate.answers, more])
            : null;
        return kept ? [kept] : [];
      });
      return finish('wiring', all(sleeve, wireDriver), [linkBetween(0, 1, [sleeve, wireDriver], () => true)]);
    },
  };
}
