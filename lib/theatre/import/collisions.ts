import type { ImportFault } from './faults';
import type { ListNow } from './match';
import type { Place, RowOutcome } from './outcome';

interface Fault {
  row: number;
  fault: ImportFault;
}

interface Held {
  startsAt: string;
  endsAt: string;
}

const over = (a: Held, b: Held) => a.startsAt < b.endsAt && b.startsAt < a.endsAt;

/**
 * Where the list would have two cases in one theatre: a row against a case that stays where it is, or against another row.
 * A case that the file moves is looked for where it goes. A surgeon in two theatres at once is remarked upon only.
 */
export function collisions(outcomes: readonly RowOutcome[], { cases, theatres }: ListNow): Fault[] {
  const placed = outcomes.flatMap((one) => (one.kind === 'unchanged' ? [] : [{ one, to: one.to }]));
  const moving = new Set(outcomes.flatMap((one) => (one.kind === 'moved' ? [one.listed.id] : [])));
  const staying = cases.filter(({ id, cancelled }) => !cancelled && !moving.has(id));
  const faults: Fault[] = [];
  for (const { one, to } of placed) {
    const surgeon = surgeonOf(one);
    for (const other of staying) {
      if (!over(to, other)) continue;
      const { reference } = other;
      const name = theatres.find(({ id }) => id === to.theatre.id)?.name ?? to.theatre.name;
      if (other.theatreId === to.theatre.id)
        faults.push({ row: one.row, fault: { code: 'theatre-taken', reference, at: name } });
      else if (other.surgeonId === surgeon)
        one.remarks.push({ code: 'surgeon-elsewhere', row: null, reference });
    }
  }
  for (const [at, { one, to }] of placed.entries()) {
    const together = placed.filter((other, place) => place !== at && over(to, other.to));
    const rows = together.filter(sameTheatre(to)).map((other) => other.one.row);
    if (rows.length > 0) faults.push({ row: one.row, fault: { code: 'rows-collide', rows } });
    for (const other of together)
      if (!sameTheatre(to)(other) && surgeonOf(other.one) === surgeonOf(one))
        one.remarks.push({ code: 'surgeon-elsewhere', row: other.one.row, reference: null });
  }
  return faults;
}

const sameTheatre =
  (to: Place) =>
  ({ to: other }: { to: Place }) =>
    other.theatre.id === to.theatre.id;

const surgeonOf = (one: RowOutcome) => (one.kind === 'new' ? one.surgeon.id : one.listed.surgeonId);
