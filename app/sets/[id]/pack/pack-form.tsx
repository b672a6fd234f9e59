'use client';

import { useRouter } from 'next/navigation';
import { useRef, useState } from 'react';
import { useScans } from '@/app/_scan/use-scans';
import type { PressedSet } from '@/app/_turns/next-step';
import { Button } from '@/app/_ui/button';
import { NumberField } from '@/app/_ui/number-field';
import { ProofDialog } from '@/app/_ui/proof-dialog';
import { RadioGroup } from '@/app/_ui/radio-group';
import { Section } from '@/app/_ui/section';
import { TextArea } from '@/app/_ui/text-area';
import { writeGrams } from '@/lib/quantities/mass';
import { type SentProblem, sendJson } from '../../_parts/send-json';
import styles from './pack.module.css';

type Barrier = 'wrap' | 'container';

const NOT_REACHED = 'That did not reach the server. Press again: what is sent twice is done once.';

/**
 * Barrier, scale and reasons, then proof of who packed it; then its label. Nothing is chosen beforehand.
 *
 * @param packId made once for this page, so that a pack sent twice is made once
 */
export function PackForm({
  packId,
  set,
  shortReason: asksShort,
  highestLimitGrams,
  workedGrams,
}: {
  packId: string;
  set: PressedSet;
  shortReason: boolean;
  highestLimitGrams: number | null;
  workedGrams: number | null;
}) {
  const router = useRouter();
  const [barrier, setBarrier] = useState<Barrier | null>(null);
  const [kilograms, setKilograms] = useState('');
  const [shortReason, setShortReason] = useState('');
  const [massReason, setMassReason] = useState('');
  const [problems, setProblems] = useState<SentProblem[]>([]);
  const [asked, setAsked] = useState(false);
  const [proving, setProving] = useState(false);
  const pack = useRef<HTMLButtonElement>(null);
  useScans((scan) => {
    if (scan.meaning.kind !== 'set' || scan.meaning.setId !== set.id) return 'passed';
    // its own tag: the set in hand is the one on the screen
    pack.current?.focus();
    return 'taken';
  });

  const weighed = gramsOf(kilograms);
  const grams = weighed.grams ?? workedGrams;
  const tooHeavy = grams !== null && highestLimitGrams !== null && grams > highestLimitGrams;
  const of = (path: string) => problems.filter((one) => one.path === path).map(({ sentence }) => sentence);
  const open = {
    barrier: barrier === null ? ['Choose what it is closed in.'] : [],
    weighed: weighed.problem === null ? [] : [weighed.problem],
    short: asksShort && shortReason.trim() === '' ? ['Say why it goes short.'] : [],
    mass: tooHeavy && massReason.trim() === '' ? ['Say why it is packed above the mass limit.'] : [],
  };
  const complete = Object.values(open).every((one) => one.length === 0);

  return (
    <Section title="Close it">
      <div className={styles.form}>
        <RadioGroup<Barrier>
          name="barrier"
          label="Closed in"
          required
          choices={[
            { value: 'wrap', label: 'Wrap' },
            { value: 'container', label: 'Container' },
          ]}
          value={barrier}
          onValue={setBarrier}
          problems={[...(asked ? open.barrier : []), ...of('barrier')]}
        />
        <NumberField
          name="weighed"
          label="By the scale"
          hint="With its wrap or container. Leave it empty where it was not weighed."
          unit="kg"
          value={kilograms}
          onValue={setKilograms}
          problems={[...(asked ? open.weighed : []), ...of('weighedGrams')]}
        />
        {asksShort ? (
          <TextArea
            name="shortReason"
            label="Why it goes short"
            required
            rows={2}
            maxLength={400}
            value={shortReason}
            onValue={setShortReason}
            problems={[...(asked ? open.short : []), ...of('shortReason')]}
          />
        ) : null}
        {tooHeavy ? (
          <TextArea
            name="massReason"
            label={`Why it is packed above ${writeGrams(highestLimitGrams)}`}
            required
            rows={2}
            maxLength={400}
            value={massReason}
            onValue={setMassReason}
            problems={[...(asked ? open.mass : []), ...of('massReason')]}
          />
        ) : null}
        <div>
          <Button
            kind="primary"
            size="bench"
            ref={pack}
            onClick={() => {
              setAsked(true);
              if (complete) setProving(true);
            }}
          >
            {`Pack ${set.code}`}
          </Button>
        </div>
      </div>
      <ProofDialog
        title={`Pack ${set.code}`}
        meaning={`I packed ${set.code}`}
        confirm={`Pack ${set.code}`}
        open={proving}
        onOpen={setProving}
        who="me"
        onProof={async (proof) => {
          try {
            const answer = await sendJson<{ number: string }>(`/api/v1/sets/${set.id}/pack`, {
              id: packId,
              baseRevision: set.revision,
              barrier,
              weighedGrams: weighed.grams,
              shortReason: asksShort ? shortReason : null,
              massReason: tooHeavy ? massReason : null,
              proof,
            });
            if (!answer.ok) {
              setProblems(answer.problems);
              if (answer.status === 409) router.refresh();
              return answer.sentence;
            }
            router.push(`/packs/${packId}?packed=now`);
            return undefined;
          } catch {
            return NOT_REACHED;
          }
        }}
      />
    </Section>
  );
}

/** `6.42` kilograms as whole grams; empty is not weighed. A decimal comma is read as well. */
function gramsOf(text: string): { grams: number | null; problem: string | null } {
  const said = text.trim().replace(',', '.');
  if (said === '') return { grams: null, problem: null };
  const kilograms = Number(said);
  if (!/^\d{1,2}(\.\d{1,3})?$/.test(said) || kilograms <= 0 || kilograms > 50)
    return { grams: null, problem: 'A mass in kilograms up to 50, such as 6.42.' };
  return { grams: Math.round(kilograms * 1000), problem: null };
}
