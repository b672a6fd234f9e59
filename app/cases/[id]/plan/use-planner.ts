'use client';

import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import type { Item, Plate } from '@/lib/catalogue/item';
import { createFitEngine, type FitEngine } from '@/lib/fit/engine';
import type { FitException, FitRule, FitSettings } from '@/lib/fit/rule';
import { assessPlan } from '@/lib/plans/assess';
import { FamilyAnswers } from '@/lib/plans/chosenHoles';
import type { PlanEdit } from '@/lib/plans/edit';
import { beginHistory, edited, type PlanHistory, redone, undone } from '@/lib/plans/history';
import type { Construct, HoleFill } from '@/lib/plans/plan';
import { type PackedFamily, type PlanCatalogue, unpackFamily } from '@/lib/plans/planCatalogue';
import type { PlanFinding } from '@/lib/plans/planFinding';
import { planRemarks } from '@/lib/plans/remarks';
import { PlanSaver, type SaveState } from './plan-saver';

/** Everything the planner needs from the server, as plain data. */
export interface PlannerFacts {
  booked: { id: string; reference: string; limb: 'left' | 'right'; region: Construct['region'] };
  plan: { id: string | null; version: number; revision: number; construct: Construct };
  families: PackedFamily[];
  items: Item[];
  fit: { rules: FitRule[]; exceptions: FitException[]; settings: FitSettings };
  remarksOff: string[];
  mayWrite: boolean;
  mayConfirm: boolean;
}

export interface Planner {
  construct: Construct;
  catalogue: PlanCatalogue;
  engine: FitEngine;
  familyAnswers: FamilyAnswers;
  findings: PlanFinding[];
  /** `gesture` names a drag or a run of typing that is undone as one. */
  edit: (edit: PlanEdit, gesture?: string) => void;
  /** The surgeon's own last fill, to be repeated on other holes. */
  lastFill: HoleFill | null;
  undo: (() => void) | null;
  redo: (() => void) | null;
  /** Makes a plate from the picker known, so that it can be judged and drawn. */
  learn: (plate: Plate) => void;
  readOnly: boolean;
  saveState: SaveState;
  saver: PlanSaver | null;
  planId: string | null;
}

/** The planner's state: the construct with its history, what there is to say about it, and its saving. */
export function usePlanner(facts: PlannerFacts, onGone: () => void): Planner {
  const [history, setHistory] = useState<PlanHistory>(() => beginHistory(facts.plan.construct));
  const [learnt, setLearnt] = useState<Plate[]>([]);
  const [lastFilled, setLastFilled] = useState<{ plateKey: string; holeId: string } | null>(null);
  const { present } = history;

  const engine = useMemo(() => createFitEngine(facts.fit), [facts.fit]);
  const catalogue = useMemo<PlanCatalogue>(() => {
    const families = facts.families.map(unpackFamily);
    return {
      items: new Map([...facts.items, ...learnt].map((item) => [item.id, item])),
      families: new Map(families.map((family) => [family.name, family])),
    };
  }, [facts.families, facts.items, learnt]);
  const familyAnswers = useMemo(
    () => new FamilyAnswers([...catalogue.families.values()], engine),
    [catalogue, engine],
  );
  const findings = useMemo(
    () => [
      ...assessPlan(present, catalogue, engine, facts.booked),
      ...planRemarks(present, catalogue, facts.remarksOff),
    ],
    [present, catalogue, engine, facts.booked, facts.remarksOff],
  );

  const { saver, saveState, planId } = useSaver(facts, setHistory, onGone);
  useEffect(() => {
    saver?.write(present);
  }, [saver, present]);

  const edit = useCallback(
    (change: PlanEdit, gesture?: string) => {
      if (!facts.mayWrite) return;
      setHistory((before) => edited(before, change, gesture ?? null));
      if ((change.do === 'fillHoles' && change.fill) || change.do === 'changeScrews') {
        setLastFilled({ plateKey: change.plateKey, holeId: change.holeIds[0] ?? '' });
      }
    },
    [facts.mayWrite],
  );
  const learn = useCallback((plate: Plate) => setLearnt((known) => [...known, plate]), []);
  return {
    construct: present,
    catalogue,
    engine,
    familyAnswers,
    findings,
    edit,
    lastFill:
      present.plates.find(({ key }) => key === lastFilled?.plateKey)?.fills[lastFilled?.holeId ?? ''] ?? null,
    undo: history.past.length > 0 ? () => setHistory(undone) : null,
    redo: history.future.length > 0 ? () => setHistory(redone) : null,
    learn,
    readOnly: !facts.mayWrite,
    saveState,
    saver,
    planId,
  };
}

function useSaver(
  facts: PlannerFacts,
  setHistory: (change: (before: PlanHistory) => PlanHistory) => void,
  onGone: () => void,
) {
  const [saveState, setSaveState] = useState<SaveState>({ kind: 'saved' });
  const [planId, setPlanId] = useState(facts.plan.id);
  const [saver, setSaver] = useState<PlanSaver | null>(null);
  const gone = useRef(onGone);
  useEffect(() => {
    gone.current = onGone;
  }, [onGone]);
  const first = useRef(facts);

  useEffect(() => {
    const { booked, plan, mayWrite } = first.current;
    if (!mayWrite) return;
    const made = new PlanSaver(
      booked.id,
      { planId: plan.id, revision: plan.revision, construct: plan.construct },
      {
        state: (state, id) => {
          setSaveState(state);
          setPlanId(id);
        },
        adopt: (construct) => setHistory((before) => edited(before, { do: 'replace', construct })),
        gone: () => gone.current(),
      },
    );
    setSaver(made);
    void made.begin();
    const leave = () => made.leave();
    const back = () => {
      if (document.visibilityState === 'visible') void made.look();
    };
    window.addEventListener('pagehide', leave);
    document.addEventListener('visibilitychange', back);
    return () => {
      leave();
      window.removeEventListener('pagehide', leave);
      document.removeEventListener('visibilitychange', back);
    };
  }, [setHistory]);
  return { saver, saveState, planId };
}
