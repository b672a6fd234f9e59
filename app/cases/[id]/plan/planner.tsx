'use client';

import Link from 'next/link';
import { useRouter } from 'next/navigation';
import { useCallback, useEffect, useMemo, useState } from 'react';
import { Button } from '@/app/_ui/button';
import { ConfirmDialog } from '@/app/_ui/confirm-dialog';
import { Status } from '@/app/_ui/status';
import { MOST_PLATES } from '@/lib/plans/edit';
import type { Construct } from '@/lib/plans/plan';
import type { PlanFinding } from '@/lib/plans/planFinding';
import { ConfirmPlanButton } from './confirm-plan-button';
import { ConflictDialog } from './conflict-dialog';
import { FindingPanel } from './finding-panel';
import { GROUP_TONES } from './finding-tones';
import { FreeScrews } from './free-screws';
import { KitLine } from './kit-line';
import { PlanFacts } from './plan-facts';
import styles from './planner.module.css';
import { PlatePicker } from './plate-picker';
import { PlateWorkspace } from './plate-workspace';
import { SaveStartButton } from './save-start-button';
import { SaveStatus } from './save-status';
import { StartChoice } from './start-choice';
import { type PlannerFacts, usePlanner } from './use-planner';

export interface OfferedStart {
  id: string;
  name: string;
  version: number;
  /** The reader's own: a change of it may be saved as its next version. */
  own: boolean;
  construct: Construct;
  gone: string[];
}

const FREE = 'free';

/** The planner: what the surgeon states, drawn; what there is to say about it; whether the kit is there. */
export function PlannerScreen({
  facts,
  starts,
  names,
}: {
  facts: PlannerFacts;
  starts: OfferedStart[];
  /** Names of plates, wires and washers by id. */
  names: Record<string, string>;
}) {
  const router = useRouter();
  const casePage = `/cases/${facts.booked.id}`;
  const leave = useCallback(() => {
    router.push(casePage);
    router.refresh();
  }, [router, casePage]);
  const planner = usePlanner(facts, leave);
  const { construct, findings } = planner;
  const [wanted, setPart] = useState<string>(construct.plates[0]?.key ?? FREE);
  const [chosen, setChosen] = useState<string[]>([]);
  const [picking, setPicking] = useState<'add' | 'exchange' | null>(null);
  useUndoKeys(planner.undo, planner.redo);

  const planned =
    construct.plates.find(({ key }) => key === wanted) ?? (wanted === FREE ? undefined : construct.plates[0]);
  const part = planned?.key ?? FREE;
  const itemName = useMemo(() => {
    const known = new Map(Object.entries(names));
    return (id: string) => {
      const item = planner.catalogue.items.get(id);
      return item ? `${item.name} (${item.code})` : (known.get(id) ?? id);
    };
  }, [names, planner.catalogue]);

  function show(next: string, holes: string[] = []) {
    setPart(next);
    setChosen(holes);
  }
  function go(finding: PlanFinding) {
    const { plateKey, holeId, screwKey } = finding.at;
    if (screwKey) show(FREE);
    else if (plateKey) show(plateKey, holeId ? [holeId] : []);
    requestAnimationFrame(() => {
      const target = screwKey
        ? document.getElementById(`free-${screwKey}`)
        : holeId
          ? document.querySelector<SVGGElement>(`[data-hole="${holeId}"]`)
          : document.getElementById('plan-part');
      target?.scrollIntoView({ block: 'center' });
      target?.focus({ preventScroll: true });
    });
  }
  const side = (
    <aside className={styles.side} aria-label="Findings and the whole plan">
      <h2>Findings</h2>
      <FindingPanel findings={findings} onGo={go} />
      <h2>The whole plan</h2>
      <PlanFacts planner={planner} />
    </aside>
  );
  const empty = construct.plates.length === 0 && construct.freeScrews.length === 0;
  return (
    <div className={styles.planner}>
      <div className={styles.bar}>
        <SaveStatus state={planner.saveState} begun={planner.planId !== null} />
        <div className={styles.barActs}>
          <Button size="small" onClick={planner.undo ?? undefined} disabled={!planner.undo}>
            Undo
          </Button>
          <Button size="small" onClick={planner.redo ?? undefined} disabled={!planner.redo}>
            Redo
          </Button>
        </div>
      </div>
      <KitLine caseId={facts.booked.id} construct={construct} begun={planner.planId !== null} />
      {empty && !planner.readOnly ? (
        <StartChoice
          starts={starts}
          onStart={(start) => {
            planner.saver?.laid(start.id);
            planner.edit({ do: 'layStart', start: start.construct });
            show(start.construct.plates[0]?.key ?? FREE);
          }}
          onPlate={() => setPicking('add')}
        />
      ) : null}
      <nav className={styles.parts} aria-label="Parts of the plan">
        {construct.plates.map(({ key, plateItemId }) => (
          <Button key={key} className={styles.part} aria-pressed={part === key} onClick={() => show(key)}>
            <span className={styles.partKey}>{key}</span>
            <span className={styles.partName}>
              {planner.catalogue.items.get(plateItemId)?.name ?? 'unknown plate'}
            </span>
            <PartState findings={findings.filter(({ at }) => at.plateKey === key)} />
          </Button>
        ))}
        <Button className={styles.part} aria-pressed={part === FREE} onClick={() => show(FREE)}>
          <span className={styles.partKey}>L</span>
          <span className={styles.partName}>{`Free screws (${construct.freeScrews.length})`}</span>
          <PartState findings={findings.filter(({ at }) => at.screwKey !== null)} />
        </Button>
        <Button
          className={styles.part}
          onClick={() => setPicking('add')}
          disabled={planner.readOnly || construct.plates.length >= MOST_PLATES}
        >
          Add a plate
        </Button>
      </nav>
      <div className={styles.columns} id="plan-part" tabIndex={-1}>
        {planned ? (
          <PlateWorkspace
            key={`${planned.key} ${planned.plateItemId}`}
            planner={planner}
            planned={planned}
            itemName={itemName}
            chosen={chosen}
            onChosen={setChosen}
            onExchange={() => setPicking('exchange')}
            side={side}
          />
        ) : (
          <>
            <div className={styles.left}>
              <FreeScrews planner={planner} />
            </div>
            <div className={styles.right}>{side}</div>
          </>
        )}
      </div>
      <div className={styles.foot}>
        <ConfirmPlanButton
          planner={planner}
          mayConfirm={facts.mayConfirm}
          version={facts.plan.version}
          onConfirmed={leave}
        />
        <SaveStartButton construct={construct} own={starts.filter(({ own }) => own)} />
        {planner.planId ? (
          <DiscardDraft planner={planner} version={facts.plan.version} onGone={leave} />
        ) : null}
        <Link href={casePage}>Back to the case</Link>
      </div>
      <PlatePicker
        open={picking !== null}
        title={picking === 'exchange' && planned ? `Exchange ${planned.key}` : 'Add a plate'}
        limb={construct.limb}
        engine={planner.engine}
        onOpen={(open) => setPicking(open ? picking : null)}
        onPick={(plate) => {
          planner.learn(plate);
          if (picking === 'exchange' && planned) {
            const holeIds = plate.holes.map(({ id }) => id);
            planner.edit({ do: 'exchangePlate', plateKey: planned.key, plateItemId: plate.id, holeIds });
            show(planned.key);
          } else {
            planner.edit({ do: 'addPlate', plateItemId: plate.id });
            show(nextPlateKey(construct));
          }
          setPicking(null);
        }}
      />
      <ConflictDialog planner={planner} itemName={itemName} />
    </div>
  );
}

function nextPlateKey({ plates }: Construct): string {
  const keys = new Set(plates.map(({ key }) => key));
  let number = 1;
  while (keys.has(`P${number}`)) number += 1;
  return `P${number}`;
}

/** The gravest there is to say about a part, as a word and a shape. */
function PartState({ findings }: { findings: readonly PlanFinding[] }) {
  const worst = (['stop', 'caution', 'notEstablished'] as const).find((group) =>
    findings.some((finding) => finding.group === group),
  );
  if (!worst) return null;
  const count = findings.filter(({ group }) => group === worst).length;
  const words = { stop: 'stops', caution: 'cautions', notEstablished: 'not established' }[worst];
  return (
    <Status tone={GROUP_TONES[worst]} look="plain">
      {`${count} ${count === 1 && worst !== 'notEstablished' ? words.slice(0, -1) : words}`}
    </Status>
  );
}

function DiscardDraft({
  planner,
  version,
  onGone,
}: {
  planner: ReturnType<typeof usePlanner>;
  version: number;
  onGone: () => void;
}) {
  if (planner.readOnly) return null;
  return (
    <ConfirmDialog
      title={`Discard version ${version}?`}
      confirm="Discard this draft"
      danger
      trigger={{ label: 'Discard the draft', kind: 'quiet' }}
      onConfirm={async () => {
        const { saver } = planner;
        if (!saver?.planId) return 'There is no draft to discard.';
        await saver.flush();
        const answer = await fetch(`/api/v1/plans/${saver.planId}`, {
          method: 'DELETE',
          headers: { 'Content-Type': 'application/json' },
          body: JSON.stringify({ revision: saver.revision }),
        });
        if (!answer.ok) {
          const problem = (await answer.json().catch(() => null)) as { detail?: string } | null;
          return problem?.detail ?? `The server answered ${answer.status}.`;
        }
        onGone();
        return undefined;
      }}
    >
      <p>What this draft states is thrown away. A confirmed version stands as it is.</p>
    </ConfirmDialog>
  );
}

/** Ctrl+Z and Ctrl+Shift+Z (or Ctrl+Y), outside text fields, which have their own. */
function useUndoKeys(undo: (() => void) | null, redo: (() => void) | null) {
  useEffect(() => {
    function onKey(event: KeyboardEvent) {
      if (!(event.ctrlKey || event.metaKey)) return;
      const target = event.target as HTMLElement;
      if (target.closest('input, textarea, select, [role="dialog"]')) return;
      const key = event.key.toLowerCase();
      const act =
        key === 'z' && !event.shiftKey ? undo : key === 'y' || (key === 'z' && event.shiftKey) ? redo : null;
      if (!act) return;
      event.preventDefault();
      act();
    }
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, [undo, redo]);
}
