import Link from 'next/link';
import type { ReactNode } from 'react';
import { Figure, FigureRow } from '@/app/_ui/figure';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import type { CaseKit } from '@/lib/kits/caseKit';
import type { PlanVersion } from '@/lib/plans/planVersion';
import { BUILDABLE_WORDS, coverWords, proofWords, type VerdictWords } from '@/lib/wording/kit';
import { kitCalculationWords } from '@/lib/wording/kit-calculations';
import { listWords } from '@/lib/wording/numbers';
import styles from './kit.module.css';
import type { KitNames } from './kit-names';

/** Said as a status where it is not simply yes. */
const BUILDABLE_STATUS: Partial<Record<CaseKit['buildable'], ReactNode>> = {
  no: <Status tone="stop">not buildable</Status>,
  notEstablished: <Status tone="unknown">not established</Status>,
};

/** The answer that is read in ten seconds: how the kit stands, and four figures, each with its working. */
export function Verdict({
  kit,
  words,
  plan,
  newerDraft,
  caseId,
  names,
}: {
  kit: CaseKit;
  words: VerdictWords;
  plan: PlanVersion;
  newerDraft: number | null;
  caseId: string;
  names: KitNames;
}) {
  const open = kit.sets.filter((set) => set.role === 'open');
  const hold = kit.sets.filter((set) => set.role === 'hold');
  const packs = kit.packs.reduce((sum, pack) => sum + pack.quantity, 0);
  const possible = kit.steps.filter((step) => step.state === 'met').length;
  const cover = kit.lengthCover;
  const trays = kitCalculationWords['fewest-trays'];
  const buildable = kitCalculationWords.buildable;
  return (
    <Section
      title={words.word}
      look="sheet"
      note={<PlanNote plan={plan} newerDraft={newerDraft} caseId={caseId} />}
    >
      <p className={styles.verdict}>{words.sentence}</p>
      <FigureRow>
        <Figure
          label="Trays to open"
          value={open.length}
          note={
            hold.length > 0
              ? `and ${hold.length} held unopened`
              : open.map((set) => set.code).join(', ') || undefined
          }
          working={{
            calculation: 'fewest-trays',
            inputs: [
              { label: 'Open', value: listWords(open.map((set) => set.code)) || 'none' },
              ...(hold.length > 0 ? [{ label: 'Hold', value: listWords(hold.map((set) => set.code)) }] : []),
            ],
            formula: trays.formula[0],
            steps: [proofWords(kit.proof)],
            assumptions: trays.assumptions,
            sources: trays.sources.map((source) => source.text),
          }}
        />
        <Figure
          label="Single packs to fetch"
          value={packs}
          note={packs > 0 ? 'pouches and sterile packs' : undefined}
          working={{
            calculation: 'fewest-trays',
            inputs: kit.packs.map((pack) => ({ label: names.item(pack.itemId), value: pack.quantity })),
            formula:
              'Fewest single packs beside the fewest trays; first expired first out against the day of the case',
          }}
        />
        <Figure
          label="Steps that can be done"
          value={`${possible} of ${kit.steps.length}`}
          status={BUILDABLE_STATUS[kit.buildable]}
          note={BUILDABLE_STATUS[kit.buildable] ? undefined : `buildable: ${BUILDABLE_WORDS[kit.buildable]}`}
          working={{
            calculation: 'buildable',
            inputs: [{ label: 'Steps', value: kit.steps.length }],
            formula: buildable.formula.join('. '),
            assumptions: buildable.assumptions,
            sources: buildable.sources.map((source) => source.text),
          }}
        />
        {cover ? (
          <Figure
            label="Length cover"
            value={coverWords(cover)}
            note={cover.cover === null ? 'a length is not stated' : 'all holes together'}
            working={{
              calculation: 'length-cover',
              inputs: [{ label: 'Method', value: cover.method || 'none' }],
              formula: 'Chance that every length the case turns out to need is on the table',
              input: cover.input,
            }}
          />
        ) : null}
      </FigureRow>
    </Section>
  );
}

function PlanNote({
  plan,
  newerDraft,
  caseId,
}: {
  plan: PlanVersion;
  newerDraft: number | null;
  caseId: string;
}) {
  return (
    <>
      for <Link href={`/cases/${caseId}`}>plan version {plan.version}</Link>,{' '}
      {plan.status === 'confirmed' ? 'confirmed' : 'a draft, not confirmed'}
      {newerDraft === null ? '' : `; version ${newerDraft} is being written and is not followed here`}
    </>
  );
}
