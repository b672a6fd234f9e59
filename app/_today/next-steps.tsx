import { LinkButton } from '@/app/_ui/link-button';
import type { Role } from '@/lib/people/role';

interface Step {
  href: string;
  label: string;
}

/** Where each role goes first; the first of them is the likeliest. */
const FIRST_STEPS: Record<Role, [Step, ...Step[]]> = {
  technician: [
    { href: '/work', label: 'What to do next' },
    { href: '/sets', label: 'Sets, by what a shortage stops' },
  ],
  decontaminationLead: [
    { href: '/loads', label: 'Loads' },
    { href: '/reports/morning', label: 'The morning report' },
    { href: '/holds', label: 'Held sets' },
  ],
  surgeon: [
    { href: '/cases/new', label: 'Book a case' },
    { href: '/plans', label: 'Your saved starts' },
  ],
  scrubPractitioner: [
    { href: '/theatre-list', label: 'Theatre list' },
    { href: '/reports/day-before', label: 'The day before' },
  ],
  stockKeeper: [
    { href: '/loans', label: 'Loans' },
    { href: '/stock', label: 'Pouches and lots' },
  ],
  theatreManager: [
    { href: '/reports/morning', label: 'The morning report' },
    { href: '/theatre-list/at-risk', label: 'Cases at risk' },
  ],
  incidentLead: [
    { href: '/ledger', label: 'Ledger' },
    { href: '/holds', label: 'Held sets' },
  ],
  administrator: [
    { href: '/people', label: 'People' },
    { href: '/settings', label: 'Settings' },
  ],
};

/** Ways on from today's page, for the person acting. */
export function NextSteps({ role }: { role: Role }) {
  const [first, ...others] = FIRST_STEPS[role];
  return (
    <>
      {others.map(({ href, label }) => (
        <LinkButton key={href} href={href}>
          {label}
        </LinkButton>
      ))}
      <LinkButton href={first.href} kind="primary">
        {first.label}
      </LinkButton>
    </>
  );
}
