'use client';

import { useState } from 'react';
import { Button } from '@/app/_ui/button';
import { ScrollRegion } from '@/app/_ui/scroll-region';
import { Section } from '@/app/_ui/section';
import { sharedAddress } from './shared-input';
import styles from './what-if.module.css';

/** The same figure from outside: by its address, over the API, and without a server. */
export function FromOutside({ name, input, origin }: { name: string; input: unknown; origin: string }) {
  const json = quoted(JSON.stringify(input));
  const address = sharedAddress(name, input);
  return (
    <Section title="Repeat from outside">
      <div className={styles.outside}>
        {address ? (
          <Command label="This page, with this input" text={`${origin}${address}`} />
        ) : (
          <p>This input is too long for an address: copy it from the JSON view instead.</p>
        )}
        <Command
          label="Over the API"
          text={`curl -s -H 'Content-Type: application/json' -d ${json} ${origin}/api/v1/calculations/${name}`}
        />
        <Command label="Without a server" text={`echo ${json} | npm run --silent calculate -- ${name}`} />
      </div>
    </Section>
  );
}

function Command({ label, text }: { label: string; text: string }) {
  const [copied, setCopied] = useState<string | null>(null);
  return (
    <div className={styles.command}>
      <div className={styles.commandHead}>
        <h3>{label}</h3>
        <Button
          kind="quiet"
          size="small"
          aria-label={`Copy: ${label}`}
          onClick={() => {
            navigator.clipboard.writeText(text).then(
              () => setCopied(text),
              () => setCopied(null),
            );
          }}
        >
          {copied === text ? 'Copied' : 'Copy'}
        </Button>
      </div>
      <ScrollRegion label={label} className={styles.commandText}>
        <pre>
          <code>{text}</code>
        </pre>
      </ScrollRegion>
    </div>
  );
}

/** One word for a POSIX shell, whatever is in it. */
function quoted(text: string): string {
  return `'${text.replaceAll("'", "'\\''")}'`;
}
