'use client';

import { useEffect, useState } from 'react';
import type { Keystroke } from '@/lib/scanning/decodeKey';
import type { ScannerSetting } from '@/lib/scanning/scanner';
import { type Trial, tryScanner } from '@/lib/scanning/setUp';
import { LAYOUT_WORDS, settingFacts, trialFacts } from '@/lib/wording/scanner';
import { beginTrial } from '../../_scan/handlers';
import { keepScanner, scannerHere } from '../../_scan/scanner-setting';
import { Button } from '../../_ui/button';
import { ButtonRow } from '../../_ui/button-row';
import { DefinitionList } from '../../_ui/definition-list';
import { Section } from '../../_ui/section';
import { Status } from '../../_ui/status';

/** Silence after which a trial is looked at; scanners that wait longer between keys are of no use at a bench. */
const OVER_MS = 700;
/** Fewer keys are a person’s. */
const LEAST_KEYS = 12;

/** Takes the keys of one trial scan, says what they tell, and keeps it. */
export function ScannerTry() {
  const [trial, setTrial] = useState<Trial | null>(null);
  const [kept, setKept] = useState<ScannerSetting | null>(null);

  // only the browser knows what it keeps
  useEffect(() => setKept(scannerHere()), []);

  useEffect(() => {
    let keys: Keystroke[] = [];
    let timer: ReturnType<typeof setTimeout> | undefined;
    const end = beginTrial({
      key: (key) => {
        keys.push(key);
        clearTimeout(timer);
        timer = setTimeout(() => {
          const all = keys;
          keys = [];
          if (all.length >= LEAST_KEYS) setTrial(tryScanner(all, new Date().toISOString()));
        }, OVER_MS);
      },
    });
    return () => {
      clearTimeout(timer);
      end();
    };
  }, []);

  return (
    <>
      <Section title="What arrived">
        <div role="status">
          {trial ? <Result trial={trial} /> : <p>Nothing yet: scan one of the symbols above.</p>}
        </div>
        {trial?.outcome === 'understood' ? (
          <ButtonRow>
            <Button
              kind="primary"
              size="bench"
              onClick={() => {
                keepScanner(trial.setting);
                setKept(trial.setting);
              }}
            >
              Keep this for this browser
            </Button>
          </ButtonRow>
        ) : null}
      </Section>
      <Section title="What is kept">
        {kept ? (
          <>
            {kept.triedAt === null ? (
              <p>No scanner was tried out here yet: it is taken for one with a US keyboard.</p>
            ) : null}
            <DefinitionList items={settingFacts(kept)} columns={2} />
          </>
        ) : null}
      </Section>
    </>
  );
}

function Result({ trial }: { trial: Trial }) {
  if (trial.outcome === 'notUnderstood')
    return (
      <>
        <Status tone="stop">Not understood</Status>
        <p>
          No keyboard known here gives the symbol back from the {trial.keys} keys that came. Set the scanner
          to a US keyboard, without changes of capitals, and not to typing by Alt and numbers; then scan
          again. As {LAYOUT_WORDS[trial.nearest.layout]} it would read:
        </p>
        <p>
          <code>{trial.nearest.text.replaceAll('\u001d', '␝')}</code>
        </p>
      </>
    );
  return (
    <>
      <Status tone={trial.separators === 'lost' ? 'attention' : 'good'}>
        {trial.separators === 'lost' ? 'Understood, but separators are lost' : 'Understood'}
      </Status>
      <DefinitionList items={trialFacts(trial)} columns={2} />
    </>
  );
}
