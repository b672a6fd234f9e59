import 'server-only';

import { type Answer, carrying } from './answer';

/** An answer of JSON values, one a line. */
export interface JsonLines {
  jsonLines: true;
}

/** Says one line of the answer: any JSON value. */
export type Say = (line: unknown) => void;

/**
 * An answer of one JSON value a line, each sent as soon as it is said, for what takes long and tells how far it is.
 *
 * @param work ends the answer when it is done; when it fails, `atFault` is the last line, and the fault goes on to the log
 */
export function jsonLines(work: (say: Say) => Promise<void>, atFault: unknown): Answer<JsonLines> {
  const encoder = new TextEncoder();
  const stream = new ReadableStream<Uint8Array>({
    async start(controller) {
      const say: Say = (line) => controller.enqueue(encoder.encode(`${JSON.stringify(line)}\n`));
      try {
        await work(say);
      } catch (fault) {
        say(atFault);
        controller.close();
        throw fault;
      }
      controller.close();
    },
  });
  return carrying(
    new Response(stream, {
      headers: { 'Content-Type': 'application/x-ndjson; charset=utf-8', 'Cache-Control': 'no-store' },
    }),
  );
}

/** Tells no more often than this, in milliseconds. */
const TELL_EVERY_MS = 150;

/** Says at most so many lines a second; those in between are left out. */
export function seldom(say: Say): Say {
  let told = 0;
  return (line) => {
    if (Date.now() - told < TELL_EVERY_MS) return;
    told = Date.now();
    say(line);
  };
}
