import type { ItemId } from '../identity/ids';
import type { Barrier, PackShort, PackState } from '../packs/pack';
import { writeGrams } from '../quantities/mass';
import { wallClock } from '../theatre/localTime';
import { cautions } from '../wording/cautions';
import { labelWords as words } from '../wording/label';
import { listWords } from '../wording/numbers';
import { BARRIER_WORDS } from '../wording/packs';
import { stoppedWords } from '../wording/sets';
import { shortDateWords } from './edition';
import type { LabelContent } from './label';

/** What a label is made from: a pack as it was closed, and how it stands now. */
export interface LabelledPack {
  number: string;
  /** The set's code, or the item's. */
  code: string;
  name: string;
  /** Version of the configuration the set followed; `null` for a pouch. */
  version: number | null;
  lot: string | null;
  barrier: Barrier;
  packedBy: string;
  packedAt: string;
  /** By the scale, or worked out; `null` where it is not established. */
  massGrams: number | null;
  state: PackState;
  useBy: string | null;
  short: PackShort | null;
  /** Questions of counts in theatre that travel with the set, and nobody has settled; left out where there is none. */
  openQuestions?: number;
}

/** How sterility ends here: on a date, or by what happens to the pack. */
export type SterilityPolicy = 'useBy' | 'eventRelated';

export function labelContent(
  pack: LabelledPack,
  copy: number,
  policy: SterilityPolicy,
  nameOf: (id: ItemId) => string,
): LabelContent {
  const { short, openQuestions = 0 } = pack;
  return {
    code: pack.code,
    name: pack.name,
    short: short && { onlyFor: short.forCase?.reference ?? null, lines: shortLines(short, nameOf) },
    facts: [
      ...(openQuestions > 0 ? [words.openQuestions(openQuestions)] : []),
      words.packedAt(packedMoment(pack.packedAt)),
      words.packedBy(pack.packedBy),
      ...(pack.lot === null ? [] : [words.lot(pack.lot)]),
      BARRIER_WORDS[pack.barrier],
      ...(pack.massGrams === null ? [] : [writeGrams(pack.massGrams)]),
      ...(pack.version === null ? [] : [words.followsVersion(pack.version)]),
    ],
    factsOnSmall: (pack.lot === null ? 2 : 3) + (openQuestions > 0 ? 1 : 0),
    sterility: sterilityWords(pack, policy),
    sterilityOnSmall: pack.state === 'sterile' ? sterilityWords(pack, policy) : words.notSterileYet,
    // the others stand on the pack's page and on the sheet that goes with it
    caution: cautions.find(({ id }) => id === 'sterility')?.sentence ?? '',
    number: pack.number,
    copy: copy === 1 ? null : words.copy(copy),
  };
}

/** Printed before its load it says so; only an accepted load makes a label speak of sterility. */
function sterilityWords({ state, useBy }: LabelledPack, policy: SterilityPolicy): string {
  if (state !== 'sterile') return words.notSterile;
  if (policy === 'eventRelated') return words.eventRelated;
  return useBy === null ? words.undecided : words.goodThrough(shortDateWords(useBy));
}

/** What it stops comes first, then what is short, then what travels with it. */
export function shortLines(
  { stops, lines, substitutes }: PackShort,
  nameOf: (id: ItemId) => string,
): string[] {
  const pieces = lines.map(({ short, itemId }) => `${short} × ${nameOf(itemId)}`);
  const pouches = substitutes.flatMap(({ from, itemId }) => (from.kind === 'pouch' ? [nameOf(itemId)] : []));
  return [
    ...(stops.length === 0
      ? [words.stopsNothing]
      : stops.map(
          (stop) => `${stop.kind === 'case' ? stop.reference : stop.name}: ${stoppedWords(stop.stopped)}.`,
        )),
    ...(pouches.length === 0 ? [] : [words.travels(listWords(pouches))]),
    words.shortOf(pieces.join('; ')),
  ];
}

function packedMoment(at: string): string {
  const { date, time } = wallClock(at);
  return `${shortDateWords(date)}, ${time}`;
}
