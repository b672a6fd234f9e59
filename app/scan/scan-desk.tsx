'use client';

import { useRouter } from 'next/navigation';
import { type FormEvent, useState } from 'react';
import { scanWords } from '@/lib/wording/scans';
import { hearScan } from '../_scan/desk';
import { type ScanEvent, useScans } from '../_scan/use-scans';
import { Button } from '../_ui/button';
import { TextField } from '../_ui/text-field';
import styles from './scan.module.css';

/** A code typed where nothing else is at hand; and the readings of one that can be read in several ways, to choose from. */
export function ScanDesk() {
  const router = useRouter();
  const [text, setText] = useState('');
  const [wrong, setWrong] = useState<string[]>([]);
  const [toChoose, setToChoose] = useState<ScanEvent | null>(null);

  useScans(
    (scan) => {
      const { meaning } = scan;
      setToChoose(meaning.kind === 'refused' && meaning.because === 'ambiguous' ? scan : null);
      router.refresh();
      return 'taken';
    },
    { takes: 'everything' },
  );

  function submit(event: FormEvent) {
    event.preventDefault();
    const typed = text.trim();
    if (typed === '') {
      setWrong([scanWords.nothing]);
      return;
    }
    setWrong([]);
    setText('');
    hearScan(typed, 'typed', performance.now());
  }

  const readings = toChoose?.meaning.kind === 'refused' ? toChoose.meaning.candidates : [];
  return (
    <>
      <form onSubmit={submit} className={styles.typed}>
        <TextField
          name="code"
          label="Type a code"
          hint="As it is printed; the brackets of GS1 may be typed too. It is marked as typed."
          value={text}
          onValue={setText}
          problems={wrong}
          width="full"
          maxLength={1000}
        />
        <Button type="submit" kind="primary" size="bench">
          Read it
        </Button>
      </form>
      {readings.length > 0 ? (
        <div className={styles.choose}>
          <p>
            The separators were lost, so the code can be read in several ways. Choose what is printed beside
            it:
          </p>
          <ul>
            {readings.map((reading) => (
              <li key={reading}>
                <Button
                  size="bench"
                  onClick={() => {
                    setToChoose(null);
                    hearScan(reading, 'typed', performance.now());
                  }}
                >
                  {reading}
                </Button>
              </li>
            ))}
          </ul>
        </div>
      ) : null}
    </>
  );
}
