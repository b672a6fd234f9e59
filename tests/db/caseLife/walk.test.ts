import fc from 'fast-check';
import { expect, it } from 'vitest';
import { findLedgerBreak } from '@/db/ledger';
import { stands } from '@/db/queries/caseLife/standing';
import type { ReturnOutcome } from '@/lib/caseLife/account';
import type { LifeStage } from '@/lib/caseLife/life';
import { demoDatabase } from '../../setup/database';
import { unbalanced } from '../pieces/balance';
import { KitDesk, setThing, stockThing } from './kitDesk';

/** More of them: `WALKS=200 npm test -- --only database caseLife/walk`. */
const WALKS = Number(process.env.WALKS ?? 8);
const ACTS = 26;

/** The three things of the kit, and one that is not on its list. */
const THINGS = ['set', 'screw', 'wire', 'wrong'] as const;
type Thing = (typeof THINGS)[number];
const KIT: readonly Thing[] = ['set', 'screw', 'wire'];
const HEAPS = { screw: 'stock_demo-063', wire: 'stock_demo-021' } as const;
const AT_HAND = {
  set: setThing('DRT-01'),
  wrong: setThing('SFS-01'),
  screw: stockThing(HEAPS.screw),
  wire: stockThing(HEAPS.wire),
};

type Command =
  | { kind: 'onward' }
  | { kind: 'makeList' | 'issue' | 'take' }
  | { kind: 'pick'; thing: Thing; name: string }
  | { kind: 'putBack'; thing: Thing }
  | { kind: 'finish'; note: string | null }
  | { kind: 'check'; things: Thing[]; name: string }
  | { kind: 'return'; thing: Thing; outcome: ReturnOutcome; name: string };

const thing = fc.constantFrom(...THINGS);
/** The first two pick, and a third checks; a surgeon may do neither. */
const name = fc.constantFrom('wren-adeyemi', 'tomas-birkett', 'jolene-stott', 'tobias-wray');
const command: fc.Arbitrary<Command> = fc.oneof(
  { weight: 5, arbitrary: fc.constant<Command>({ kind: 'onward' }) },
  {
    weight: 5,
    arbitrary: fc.oneof(
      fc.constantFrom<Command>({ kind: 'makeList' }, { kind: 'issue' }, { kind: 'take' }),
      fc.record({ kind: fc.constant('pick' as const), thing, name }),
      fc.record({ kind: fc.constant('putBack' as const), thing }),
      fc.record({ kind: fc.constant('finish' as const), note: fc.constantFrom(null, 'It is not there.') }),
      fc.record({ kind: fc.constant('check' as const), things: fc.subarray([...THINGS]), name }),
      fc.record({
        kind: fc.constant('return' as const),
        thing,
        outcome: fc.constantFrom<ReturnOutcome>('cameBack', 'returnedUnopened', 'opened', 'damaged'),
        name,
      }),
    ),
  },
);

interface Model {
  list: boolean;
  /** What lies with the kit, and who picked it. */
  picked: Map<Thing, string>;
  finishedBy: string | null;
  checked: boolean;
  issued: boolean;
  taken: boolean;
  out: Set<Thing>;
}

class Walk {
  private readonly model: Model = {
    list: false,
    picked: new Map(),
    finishedBy: null,
    checked: false,
    issued: false,
    taken: false,
    out: new Set(),
  };
  /** Pieces of each heap that never come back. */
  private readonly gone = { screw: 0, wire: 0 };
  private before = { screw: 0, wire: 0 };

  constructor(private readonly desk: KitDesk) {}

  async begin(): Promise<void> {
    for (const heap of ['screw', 'wire'] as const)
      this.before[heap] = (await this.desk.heap(HEAPS[heap])).quantity;
  }

  /** What a kit that goes its way does next. */
  private next(): Command {
    const { list, picked, finishedBy, checked, issued, taken, out } = this.model;
    if (!list) return { kind: 'makeList' };
    if (issued) {
      if (!taken && out.size > 0) return { kind: 'take' };
      const first = [...out][0] ?? 'set';
      return {
        kind: 'return',
        thing: first,
        outcome: first === 'set' ? 'cameBack' : 'opened',
        name: 'wren-adeyemi',
      };
    }
    if (checked) return { kind: 'issue' };
    if (finishedBy !== null) return { kind: 'check', things: [...picked.keys()], name: 'jolene-stott' };
    const missing = KIT.find((one) => !picked.has(one));
    return missing ? { kind: 'pick', thing: missing, name: 'wren-adeyemi' } : { kind: 'finish', note: null };
  }

  async take(given: Command): Promise<void> {
    const what = given.kind === 'onward' ? this.next() : given;
    // what theatre asks for later has a test of its own
    if (what.kind === 'pick' && this.model.issued) return;
    const allowed = this.allows(what);
    const done = await this.act(what);
    expect({ what, done }).toEqual({ what, done: allowed });
    if (done) this.follow(what);
    await this.compare();
  }

  private allows(what: Command): boolean {
    const { list, picked, finishedBy, checked, issued, taken, out } = this.model;
    const picking = list && !issued && finishedBy === null;
    switch (what.kind) {
      case 'makeList':
        return !issued;
      case 'pick':
        return picking && KIT.includes(what.thing) && !picked.has(what.thing) && what.name !== 'tobias-wray';
      case 'putBack':
        return !issued && picked.has(what.thing);
      case 'finish':
        return picking && picked.size > 0 && (picked.size === KIT.length || what.note !== null);
      case 'check':
        return (
          finishedBy !== null &&
          !checked &&
          !issued &&
          what.things.length > 0 &&
          what.name !== 'tobias-wray' &&
          what.name !== finishedBy &&
          ![...picked.values()].includes(what.name)
        );
      case 'issue':
        return checked && !issued;
      case 'take':
        return issued && !taken && out.size > 0;
      case 'return': {
        if (!out.has(what.thing) || what.name === 'tobias-wray') return false;
        return what.thing === 'set'
          ? what.outcome === 'cameBack' || what.outcome === 'returnedUnopened'
          : what.outcome !== 'cameBack';
      }
      default:
        return false;
    }
  }

  private async act(what: Command): Promise<boolean> {
    const { desk } = this;
    const pickOf = async (one: Thing) => {
      const { picks } = await desk.kit();
      const own = picks.filter(({ setId, stockId, putBackAt }) => {
        const same = one === 'set' ? setId === 'set_drt-01' : one !== 'wrong' && stockId === HEAPS[one];
        return same && putBackAt === null;
      });
      return own.at(-1)?.id ?? 'pick_none';
    };
    switch (what.kind) {
      case 'makeList':
        return (await desk.makeList()).ok;
      case 'issue':
        return (await desk.issue()).ok;
      case 'take':
        return (await desk.take()).ok;
      case 'pick':
        return (await desk.pick(AT_HAND[what.thing], { name: what.name })).ok;
      case 'putBack':
        return (await desk.putBack(await pickOf(what.thing))).ok;
      case 'finish':
        return (await desk.finish(what.note)).ok;
      case 'check':
        return (
          await desk.check(
            what.things.map((one) => ({ thing: AT_HAND[one] })),
            what.name,
          )
        ).ok;
      case 'return':
        return (await desk.returned(await pickOf(what.thing), what.outcome, { name: what.name })).ok;
      default:
        return false;
    }
  }

  private follow(what: Command): void {
    const { model } = this;
    const reopen = () => Object.assign(model, { finishedBy: null, checked: false });
    switch (what.kind) {
      case 'makeList':
        model.list = true;
        reopen();
        return;
      case 'pick':
        model.picked.set(what.thing, what.name);
        return;
      case 'putBack':
        model.picked.delete(what.thing);
        reopen();
        return;
      case 'finish':
        model.finishedBy = 'wren-adeyemi';
        return;
      case 'check':
        model.checked =
          what.things.length === model.picked.size && what.things.every((one) => model.picked.has(one));
        return;
      case 'issue':
        model.issued = true;
        model.out = new Set(model.picked.keys());
        return;
      case 'take':
        model.taken = true;
        return;
      case 'return':
        model.out.delete(what.thing);
        if (what.thing === 'screw' || what.thing === 'wire')
          this.gone[what.thing] += what.outcome === 'returnedUnopened' ? 0 : 1;
        return;
      default:
    }
  }

  private stage(): LifeStage {
    const { list, finishedBy, checked, issued, taken, out } = this.model;
    if (issued) return out.size === 0 ? 'back' : taken ? 'inTheatre' : 'issued';
    if (!list) return 'notBegun';
    return checked ? 'checked' : finishedBy === null ? 'picking' : 'picked';
  }

  /** After every act: the stage is the model's, and no piece was lost or doubled. */
  private async compare(): Promise<void> {
    const { desk, model } = this;
    const kit = await desk.kit();
    expect(kit.stage).toBe(this.stage());
    expect(kit.picks.filter(stands)).toHaveLength(model.issued ? 0 : model.picked.size);
    for (const heap of ['screw', 'wire'] as const) {
      const out = model.out.has(heap) ? 1 : 0;
      // what lay there = what lies there + what is out + what was opened or damaged
      expect((await desk.heap(HEAPS[heap])).quantity + out + this.gone[heap]).toBe(this.before[heap]);
    }
    const set = await desk.set('DRT-01');
    expect(set.step === 'inTheatre').toBe(model.out.has('set'));
    expect(set.caseId).toBe(model.out.has('set') ? desk.caseId : null);
  }
}

it('a kit goes only where its stages allow, whoever tries what, and keeps every piece', {
  timeout: 240_000,
}, async () => {
  let done = 0;
  await fc.assert(
    fc.asyncProperty(fc.array(command, { minLength: ACTS, maxLength: ACTS }), async (commands) => {
      const desk = new KitDesk(await demoDatabase(), 'LM-26-9RTB');
      const walk = new Walk(desk);
      await walk.begin();
      for (const one of commands) await walk.take(one);
      expect(await findLedgerBreak(desk.db.read)).toBeNull();
      expect(await unbalanced(desk.db)).toEqual([]);
      if ((await desk.kit()).stage === 'back') done += 1;
    }),
    { numRuns: WALKS },
  );
  // walks that never leave the store would say little of what comes after
  expect(done).toBeGreaterThan(0);
});
