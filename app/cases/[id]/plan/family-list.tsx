'use client';

import { useEffect, useRef } from 'react';
import { SearchField } from '@/app/_ui/search-field';
import { Status } from '@/app/_ui/status';
import type { Tone } from '@/app/_ui/tone';
import type { Hole } from '@/lib/catalogue/hole';
import type { Plate } from '@/lib/catalogue/item';
import type { Outcome, ScrewUse } from '@/lib/fit/question';
import type { FamilyOverHoles } from '@/lib/plans/chosenHoles';
import styles from './planner.module.css';
import type { Planner } from './use-planner';

const WORDS: Record<Outcome, string> = {
  fits: 'Fits',
  doesNotFit: 'Does not fit',
  notEstablished: 'Not established',
};
const TONES: Record<Outcome, Tone> = { fits: 'good', doesNotFit: 'stop', notEstablished: 'unknown' };

/**
 * All current screw families by name, each with the rules' answer for the chosen holes. Families that don't fit are
 * shown like all others: the surgeon chooses, the rules answer.
 */
export function FamilyList({
  planner,
  holes,
  plate,
  use,
  value,
  filter,
  onFilter,
  onValue,
}: {
  planner: Planner;
  holes: readonly Hole[];
  plate: Plate;
  use: ScrewUse;
  value: string | null;
  filter: string;
  onFilter: (text: string) => void;
  onValue: (screwFamily: string) => void;
}) {
  const answers = planner.familyAnswers.over(holes, plate, use);
  const words = filter.toLowerCase().split(/\s+/).filter(Boolean);
  const shown = answers.filter(({ family }) =>
    words.every((word) => family.name.toLowerCase().includes(word)),
  );
  const scroller = useRef<HTMLDivElement>(null);
  // The chosen family is brought into sight within the list, without moving the page.
  useEffect(() => {
    const row = scroller.current?.querySelector<HTMLElement>(`[data-family="${value}"]`);
    if (row && scroller.current) scroller.current.scrollTop = row.offsetTop - 40;
  }, [value]);
  return (
    <fieldset className={styles.families}>
      <legend className={styles.smallLegend}>
        Screw family <span className={styles.soft}>by name; none is recommended</span>
      </legend>
      <SearchField
        name="family-filter"
        label="Find a family"
        hideLabel
        placeholder="Find a family"
        value={filter}
        onValue={onFilter}
      />
      <div className={styles.familyScroll} ref={scroller}>
        {shown.map((answer) => (
          <FamilyRow
            key={answer.family.name}
            answer={answer}
            holes={holes.length}
            checked={answer.family.name === value}
            onChoose={() => onValue(answer.family.name)}
          />
        ))}
        {shown.length === 0 ? <p className={styles.soft}>No family is called that.</p> : null}
      </div>
    </fieldset>
  );
}

function FamilyRow({
  answer,
  holes,
  checked,
  onChoose,
}: {
  answer: FamilyOverHoles;
  holes: number;
  checked: boolean;
  onChoose: () => void;
}) {
  const reason = whyNot(answer);
  return (
    <label className={styles.family} data-family={answer.family.name}>
      <input type="radio" name="screw-family" checked={checked} onChange={onChoose} />
      <span className={styles.familyName}>
        {answer.family.name}
        {reason ? <span className={styles.soft}>{reason}</span> : null}
      </span>
      <Status tone={TONES[answer.outcome]} look="plain">
        {answer.fits > 0 && answer.fits < holes ? `Fits ${answer.fits} of ${holes}` : WORDS[answer.outcome]}
      </Status>
    </label>
  );
}

/** The first reason that keeps a family from fitting; the rest is said once it is chosen. */
function whyNot({ byHole, outcome }: FamilyOverHoles): string | null {
  if (outcome === 'fits') return null;
  for (const { answer } of byHole) {
    for (const { verdict } of answer.verdicts) {
      const finding = verdict.findings.find(
        (one) => !one.outranked && one.answer === (outcome === 'doesNotFit' ? 'notMet' : 'missing'),
      );
      if (finding) return finding.sentence;
    }
  }
  return null;
}
