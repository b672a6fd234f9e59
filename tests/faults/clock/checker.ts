/** What was seen while the server's clock stood where it was put. */
export interface ClockStep {
  name: string;
  /** Whether something was entered at a later time than it is now. */
  isBehind: boolean;
  /** Whether the use-by of what is received has passed by this clock. */
  isPastUseBy: boolean;
  signIn: number;
  scan: number;
  receipt: { status: number; text: string };
  pages: readonly { path: string; status: number }[];
  /** State of the clock's light, as a monitor hears it, and as the doctor says it. */
  ready: string;
  doctor: { exit: number; text: string };
}

/** Where a step's answers are not what they must be with the clock as it stood, in sentences. */
export function clockFaults(steps: readonly ClockStep[]): string[] {
  return steps.flatMap((step) => stepFaults(step).map((fault) => `${step.name}: ${fault}`));
}

function stepFaults({
  isBehind,
  isPastUseBy,
  signIn,
  scan,
  receipt,
  pages,
  ready,
  doctor,
}: ClockStep): string[] {
  const faults: string[] = [];
  if (signIn !== 200) faults.push(`nobody could sign in (${signIn})`);
  if (scan !== 200) faults.push(`a scan was not taken (${scan})`);
  if (isPastUseBy && !(receipt.status === 422 && /past-use-by/.test(receipt.text)))
    faults.push(`what is past its use-by was received: ${receipt.status} ${receipt.text.slice(0, 120)}`);
  if (!isPastUseBy && receipt.status !== 201)
    faults.push(`what is not past its use-by was refused: ${receipt.status} ${receipt.text.slice(0, 120)}`);
  for (const page of pages) if (page.status !== 200) faults.push(`${page.path} was answered ${page.status}`);
  if (ready !== (isBehind ? 'wrong' : 'well')) faults.push(`the clock's light is ${ready}`);
  if (isBehind !== (doctor.exit === 1 && /it went back, or was ahead then/.test(doctor.text)))
    faults.push(isBehind ? 'the doctor does not say it' : `the doctor says it of a clock that is right`);
  return faults;
}

/** Where entries are dated otherwise than by the clock of their moment, or the ledger's order is not that of writing. */
export function orderFaults(
  entries: readonly { id: string; enteredAt: string }[],
  sent: readonly { id: string; from: string; until: string }[],
): string[] {
  const faults: string[] = [];
  const ids = entries.map(({ id }) => id);
  const inOrder = sent.map(({ id }) => id);
  if (ids.join() !== inOrder.join()) faults.push('the ledger is not in the order of writing');
  const at = new Map(entries.map((one) => [one.id, one.enteredAt]));
  for (const { id, from, until } of sent) {
    const enteredAt = at.get(id) ?? '';
    if (enteredAt < from || enteredAt > until)
      faults.push(`${id} is dated ${enteredAt}, not between ${from} and ${until}`);
  }
  return faults;
}
