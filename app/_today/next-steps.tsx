import { LinkButton } from '@/app/_ui/link-button';
import type { Role } from '@/lib/people/role';

interface Step {
  href: string;
  label: string;
}

/** Where each role goes first; the first of them is the likeliest. */
const FIRST_STEPS: Record<Role, [Step, ...Step[]]> = {
  technician: [
    { href: '/sets', label: 'Sets, by what a shortage stops' },
    { href: '/stock', label: 'Pouches and lots' },
  ],
  decontaminationLead: [
    { href: '/sets', label: 'Sets, by what a shortage stops' },
    { href: '/configurations', label: 'Configurations' },
  ],
  surgeon: [
    { href: '/cases/new', label: 'Book a case' },
    { href: '/plans', label: 'Your saved starts' },
  ],
  scrubPractitioner: [{ href: '/cases', label: 'The week’s cases' }],
  stockKeeper: [
    { href: '/stock', label: 'Pouches and lots' },
    { href: '/catalogue', label: 'Catalogue' },
  ],
  theatreManager: [
    { href: '/cases', label: 'The week’s cases' },
    { href: '/sets', label: 'Sets, by what a shortage stops' },
  ],
  incidentLead: [{ href: '/stock', label: 'Pouches and lots' }],
  administrator: [{ href: '/fit', label: 'Fit rules' }],
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
