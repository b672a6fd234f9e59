import type { Role } from '@/lib/people/role';
import type { HeldBecause, TurnStep } from '@/lib/sets/setState';

/**
 * What the rules say, written down a second time and apart from the program: where a set is, and whether an act is
 * allowed. Only then does it say something when the two agree.
 */
export interface ModelSet {
  step: TurnStep;
  heldFrom: TurnStep | null;
  reasons: HeldBecause[];
  pack: { useBy: string | null; forCase: string | null } | null;
  withdrawn: boolean;
}

export type Act =
  | {
      kind:
        | 'receive'
        | 'beginWash'
        | 'washedClean'
        | 'washedDirty'
        | 'open'
        | 'reprocess'
        | 'withdraw'
        | 'bringBack';
    }
  | { kind: 'hold'; because: HeldBecause }
  | { kind: 'lift'; to: TurnStep; proof: 'own' | 'another’s' | 'old' }
  | { kind: 'send'; case: 'today' | 'later' | 'over' }
  | { kind: 'move'; place: 'bench' | 'store' | 'outOfUse' }
  | { kind: 'pack'; short: boolean }
  | { kind: 'startLoad' | 'endLoad' | 'acceptLoad' };

const BENCH: Role[] = ['technician', 'decontaminationLead'];
const WITHDRAWERS: Role[] = ['decontaminationLead', 'theatreManager', 'administrator'];
const MAY: Partial<Record<Act['kind'], Role[]>> = {
  receive: [...BENCH, 'scrubPractitioner'],
  beginWash: BENCH,
  washedClean: BENCH,
  washedDirty: BENCH,
  open: [...BENCH, 'administrator'],
  reprocess: BENCH,
  withdraw: WITHDRAWERS,
  bringBack: WITHDRAWERS,
  hold: [...BENCH, 'scrubPractitioner', 'stockKeeper', 'theatreManager', 'incidentLead'],
  lift: ['decontaminationLead', 'incidentLead'],
  send: [...BENCH, 'scrubPractitioner'],
  move: [...BENCH, 'scrubPractitioner', 'stockKeeper'],
};

const CLOSED: TurnStep[] = ['packed', 'inSteriliser', 'awaitingAcceptance', 'inSterileStore'];
const AFTER: Record<HeldBecause, (from: TurnStep | null) => TurnStep[]> = {
  dirtyAfterWash: () => ['washing'],
  wrapWetTornOrUnsealed: () => ['washing', 'onBench'],
  indicatorOrCycleFailed: () => ['washing', 'onBench'],
  loadUnknown: (from) => (from === null ? ['washing'] : [from, 'washing']),
  recall: (from) => (from === null ? ['washing'] : [from, 'washing']),
  wrongLabel: () => ['onBench', 'washing'],
  disputedCount: () => ['onBench', 'washing'],
  loanWithoutDeclaration: () => ['washing'],
  mustHaveDamaged: () => ['washing', 'onBench'],
};
/** A hold never ends in theatre, in a steriliser, or with a decision still to be made. */
const NEVER_AFTER: TurnStep[] = ['inTheatre', 'inSteriliser', 'shortAwaitingDecision', 'held'];

/** Whether a person of this role may, by the rules, do this to the set as it is. */
export function allowed(act: Act, set: ModelSet, role: Role): boolean {
  const roles = MAY[act.kind];
  if (roles && !roles.includes(role)) return false;
  if (act.kind === 'bringBack') return set.withdrawn;
  if (act.kind === 'move') return act.place !== 'outOfUse';
  if (act.kind === 'hold') return true;
  if (set.withdrawn) return false;
  switch (act.kind) {
    case 'receive':
      return set.step === 'inTheatre';
    case 'beginWash':
      return set.step === 'comingBack' || set.step === 'onBench';
    case 'washedClean':
    case 'washedDirty':
      return set.step === 'washing';
    case 'open':
      return CLOSED.includes(set.step) && set.step !== 'inSteriliser';
    case 'reprocess':
      return set.step === 'onBench' || (CLOSED.includes(set.step) && set.step !== 'inSteriliser');
    case 'withdraw':
      return !['inTheatre', 'packed', 'inSteriliser', 'awaitingAcceptance'].includes(set.step);
    case 'lift':
      return (
        set.step === 'held' &&
        act.proof === 'own' &&
        !NEVER_AFTER.includes(act.to) &&
        set.reasons.every((because) => AFTER[because](set.heldFrom).includes(act.to))
      );
    case 'send':
      return (
        set.step === 'inSterileStore' &&
        act.case !== 'over' &&
        // the later case is on the day after the packs' use-by
        (act.case === 'today' || set.pack?.useBy === null) &&
        (set.pack?.forCase == null || set.pack.forCase === act.case)
      );
    case 'pack':
      return set.step === 'onBench';
    case 'startLoad':
      return set.step === 'packed';
    case 'endLoad':
      return set.step === 'inSteriliser';
    case 'acceptLoad':
      return set.step === 'awaitingAcceptance';
  }
}

const NEXT: Partial<Record<Act['kind'], TurnStep>> = {
  receive: 'comingBack',
  beginWash: 'washing',
  washedClean: 'onBench',
  open: 'onBench',
  reprocess: 'washing',
  send: 'inTheatre',
  pack: 'packed',
  startLoad: 'inSteriliser',
  endLoad: 'awaitingAcceptance',
  acceptLoad: 'inSterileStore',
};

/** The set after an act that is allowed. */
export function after(act: Act, set: ModelSet, useBy: string | null): ModelSet {
  if (act.kind === 'withdraw') return { ...set, withdrawn: true };
  if (act.kind === 'move') return set;
  if (act.kind === 'bringBack')
    return set.step === 'inSterileStore'
      ? { ...set, withdrawn: false, step: 'onBench', pack: null }
      : { ...set, withdrawn: false };
  if (act.kind === 'hold' || act.kind === 'washedDirty') {
    const because = act.kind === 'hold' ? act.because : 'dirtyAfterWash';
    return set.step === 'held'
      ? { ...set, reasons: [...set.reasons, because] }
      : { ...set, step: 'held', heldFrom: set.step, reasons: [because] };
  }
  const step = act.kind === 'lift' ? act.to : (NEXT[act.kind] as TurnStep);
  const pack =
    act.kind === 'pack'
      ? { useBy: null, forCase: act.short ? 'today' : null }
      : act.kind === 'acceptLoad' && set.pack
        ? { ...set.pack, useBy }
        : CLOSED.includes(step) || step === 'inTheatre'
          ? set.pack
          : null;
  return { ...set, step, pack, heldFrom: null, reasons: [] };
}

/** The acts that take a set on from where it is, so that sequences get round the service at all. */
export const ONWARD: Partial<Record<TurnStep, Act>> = {
  inTheatre: { kind: 'receive' },
  comingBack: { kind: 'beginWash' },
  washing: { kind: 'washedClean' },
  onBench: { kind: 'pack', short: false },
  packed: { kind: 'startLoad' },
  inSteriliser: { kind: 'endLoad' },
  awaitingAcceptance: { kind: 'acceptLoad' },
  inSterileStore: { kind: 'send', case: 'today' },
  held: { kind: 'lift', to: 'washing', proof: 'own' },
};
