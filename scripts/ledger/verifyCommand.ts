import { existsSync, readFileSync } from 'node:fs';
import { relative } from 'node:path';
import { auditLedgerFile } from '@/db/ledgerFile';
import { type KnownHead, readPrintedHead } from '@/lib/ledger/heads';
import { ledgerFindings, ledgerVerifyWords as words } from '@/lib/wording/ledger-verify';
import { readLedgerArguments } from './arguments';

const shown = (path: string) => {
  const inside = relative(process.cwd(), path);
  return inside.startsWith('..') ? path : inside;
};

interface Out {
  say(line: string): void;
  refuse(line: string): void;
}

/** What `npm run ledger:verify` does; answers the exit code. */
export function verifyCommand(given: string[], env: NodeJS.ProcessEnv, { say, refuse }: Out): number {
  try {
    const { database, heads: place, head } = readLedgerArguments(given, env);
    if (!existsSync(database)) throw new Error(`there is no database at ${shown(database)}`);
    const printed = head.map((text): KnownHead => {
      const read = readPrintedHead(text);
      if (!read)
        throw new Error(`“${text}” is no head: write 12345:3f9a0c1e77b2d004, with 16 digits at least`);
      return read;
    });
    const headsText = existsSync(place) ? readFileSync(place, 'utf8') : '';
    const audit = auditLedgerFile(database, headsText, printed);
    const wrong = ledgerFindings(audit, shown(place));
    for (const sentence of wrong) say(sentence);
    say(words.read(audit.entries, audit.heads));
    say(audit.head ? words.head(audit.head) : words.empty);
    if (audit.heads === 0) say(words.noHeads(shown(place)));
    say(wrong.length === 0 ? words.whole : words.broken);
    return wrong.length === 0 ? 0 : 1;
  } catch (error) {
    refuse(`Not checked: ${error instanceof Error ? error.message : String(error)}.`);
    return 2;
  }
}
