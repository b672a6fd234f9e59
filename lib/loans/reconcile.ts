import type { Pieces } from './counting';

export interface ReconciledLine {
  lineId: string;
  /** What the lender's list says. */
  listed: number;
  cameIn: Pieces | null;
  /** Implanted, or opened and not implanted: these do not go back. */
  used: number;
  goesOut: Pieces | null;
  /** Listed and not in the box as it came; `null` while nobody has counted. */
  lackedOnArrival: number | null;
  damagedOnArrival: number | null;
  /** Came, was not used, and does not go back; negative where more goes back than can. */
  lackingOnReturn: number | null;
  /** Damaged while here. */
  damagedHere: number | null;
}

/**
 * What became of each line of a loan. Pieces are conserved: what came in is what was used, what goes out, and what lacks.
 * A figure nobody has is `null`, and so is everything that rests on it.
 */
export function reconcile(
  lines: readonly { id: string; quantity: number }[],
  cameIn: ReadonlyMap<string, Pieces>,
  uses: readonly { lineId: string; quantity: number }[],
  goesOut: ReadonlyMap<string, Pieces>,
): ReconciledLine[] {
  return lines.map(({ id, quantity }) => {
    const came = cameIn.get(id) ?? null;
    const goes = goesOut.get(id) ?? null;
    const used = uses.reduce((sum, use) => (use.lineId === id ? sum + use.quantity : sum), 0);
    return {
      lineId: id,
      listed: quantity,
      cameIn: came,
      used,
      goesOut: goes,
      lackedOnArrival: came && Math.max(0, quantity - total(came)),
      damagedOnArrival: came?.damaged ?? null,
      lackingOnReturn: came && goes && total(came) - used - total(goes),
      damagedHere: came && goes && Math.max(0, goes.damaged - came.damaged),
    };
  });
}

const total = ({ sound, damaged }: Pieces): number => sound + damaged;

/** A thing to claim, or to answer for: what, how many, and whether it was so as it came. */
export interface Discrepancy {
  lineId: string;
  stage: 'in' | 'out';
  kind: 'notFound' | 'damaged';
  quantity: number;
}

/** Everything that is not as it should be. Nothing here is opened or closed: a person does that. */
export function discrepancies(lines: readonly ReconciledLine[]): Discrepancy[] {
  return lines.flatMap((line) =>
    (
      [
        ['in', 'notFound', line.lackedOnArrival],
        ['in', 'damaged', line.damagedOnArrival],
        ['out', 'notFound', line.lackingOnReturn],
        ['out', 'damaged', line.damagedHere],
      ] as const
    ).flatMap(([stage, kind, quantity]) =>
      quantity !== null && quantity > 0 ? [{ lineId: line.lineId, stage, kind, quantity }] : [],
    ),
  );
}

/** Lines that came with fewer sound pieces than listed: somebody named decides whether it is used without them. */
export const shortOnArrival = (lines: readonly ReconciledLine[]): ReconciledLine[] =>
  lines.filter(({ listed, cameIn }) => cameIn !== null && cameIn.sound < listed);
