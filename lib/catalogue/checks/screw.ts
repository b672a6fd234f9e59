import { writeMm } from '../../quantities/length';
import type { Screw } from '../item';
import { mustBeBelow, mustLieWithin, mustNotExceed, type Note } from './note';

/** Bounds no bone screw leaves; common practice, no source. They catch a wrong unit. */
const LENGTH = [3_000, 200_000] as const;
const THREAD = [800, 10_000] as const;

export function checkScrew(screw: Screw, note: Note): void {
  mustLieWithin(note, { path: ['lengthUm'], um: screw.lengthUm, name: 'A screw length' }, LENGTH);
  mustLieWithin(note, { path: ['threadUm'], um: screw.threadUm, name: 'A thread diameter' }, THREAD);
  mustBeBelow(
    note,
    { path: ['coreUm'], um: screw.coreUm, name: 'core diameter' },
    { um: screw.threadUm, name: 'thread diameter' },
    'core-not-below-thread',
  );
  mustNotExceed(
    note,
    { path: ['threadUm'], um: screw.threadUm, name: 'thread diameter' },
    { um: screw.headUm, name: 'head diameter' },
    'thread-beyond-head',
  );
  mustNotExceed(
    note,
    { path: ['threadLengthUm'], um: screw.threadLengthUm, name: 'thread length' },
    { um: screw.lengthUm, name: 'overall length' },
    'thread-longer-than-screw',
  );
  mustBeBelow(
    note,
    { path: ['cannulationUm'], um: screw.cannulationUm, name: 'cannulation' },
    { um: screw.coreUm, name: 'core diameter' },
    'cannulation-not-below-core',
  );
  mustBeBelow(
    note,
    { path: ['pitchUm'], um: screw.pitchUm, name: 'pitch' },
    { um: screw.threadUm, name: 'thread diameter' },
    'pitch-not-below-thread',
  );
  checkShaft(screw, note);
  checkLocking(screw, note);
  if (screw.cannulationUm !== null && screw.screwKind !== 'cannulated') {
    note(
      ['cannulationUm'],
      'cannulation-of-solid-screw',
      'Only a cannulated screw has a cannulation: change the kind or leave it empty.',
    );
  }
  if (
    screw.drive?.form === 'hexagonSocket' &&
    screw.headUm !== null &&
    screw.drive.acrossFlatsUm >= screw.headUm
  ) {
    note(
      ['drive', 'acrossFlatsUm'],
      'drive-beyond-head',
      `A hexagon of ${writeMm(screw.drive.acrossFlatsUm)} mm does not go into a head of ${writeMm(screw.headUm)} mm.`,
    );
  }
}

function checkShaft(screw: Screw, note: Note): void {
  const partial = screw.screwKind === 'cancellousPartial';
  if (partial && screw.shaftUm === null && screw.threadLengthUm !== null) {
    note(
      ['shaftUm'],
      'partial-thread-without-shaft',
      'A partly threaded screw has a smooth shaft: state its diameter.',
    );
  }
  if (screw.shaftUm === null) return;
  mustNotExceed(
    note,
    { path: ['shaftUm'], um: screw.shaftUm, name: 'shaft diameter' },
    { um: screw.threadUm, name: 'thread diameter' },
    'shaft-beyond-thread',
  );
  if (screw.screwKind === 'cancellousFull') {
    note(
      ['shaftUm'],
      'full-thread-with-shaft',
      'A fully threaded screw has no smooth shaft: leave it empty or change the kind.',
    );
  }
}

function checkLocking(screw: Screw, note: Note): void {
  const threadedHead = screw.head === 'threaded';
  if (screw.lockingFamily !== null && screw.head !== null && !threadedHead) {
    note(
      ['lockingFamily'],
      'family-without-threaded-head',
      'Only a threaded head locks: leave the locking family empty, or check the head.',
    );
  }
  if (screw.screwKind === 'locking' && screw.head !== null && !threadedHead) {
    note(
      ['head'],
      'locking-without-threaded-head',
      'A locking screw has a threaded head: check the head or the kind.',
    );
  }
  if (threadedHead && screw.screwKind === 'cortical') {
    note(
      ['screwKind'],
      'cortical-with-threaded-head',
      'A screw with a threaded head is a locking screw: check the head or the kind.',
    );
  }
}
