import { existsSync, readFileSync } from 'node:fs';
import { relative } from 'node:path';
import { auditLedgerFile, type LedgerAudit } from '@/db/ledgerFile';
import { type KnownHead, readPrintedHead } from '@/lib/ledger/heads';
import { ledgerFaultSentence, ledgerVerifyWords as words } from '@/lib/wording/ledger-verify';
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
    const wrong = sentences(audit, shown(place));
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

function sentences(audit: LedgerAudit, place: string): string[] {
  return [
    ...(audit.damaged === null ? [] : [words.damaged(audit.damaged)]),
    ...(audit.guardsGone.length === 0 ? [] : [words.guards(audit.guardsGone)]),
    ...audit.faults.map(ledgerFaultSentence),
    ...(audit.more === 0 ? [] : [words.more(audit.more)]),
    ...(audit.namesOff === 0 ? [] : [words.namesOff(audit.namesOff)]),
    ...(audit.unreadableHeads.length === 0 ? [] : [words.unreadableHeads(audit.unreadableHeads, place)]),
    ...(audit.headsGone === 0 ? [] : [words.headsGone(audit.headsGone, place)]),
  ];
}
