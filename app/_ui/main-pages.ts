import type { Reach } from '@/lib/people/access';
import { may } from '@/lib/people/permissions';
import type { Role } from '@/lib/people/role';

export interface MainPage {
  label: string;
  href: string;
  /** What it takes to see it. */
  reach: Reach;
}

/** What everybody works with, in the order of the navigation. */
export const MAIN_PAGES: readonly MainPage[] = [
  { label: 'Today', href: '/', reach: 'readHospital' },
  { label: 'Work', href: '/work', reach: 'readHospital' },
  { label: 'Sets', href: '/sets', reach: 'readHospital' },
  { label: 'Loads', href: '/loads', reach: 'readHospital' },
  { label: 'Cases', href: '/cases', reach: 'readHospital' },
  { label: 'Theatre list', href: '/theatre-list', reach: 'readHospital' },
  { label: 'Stock', href: '/stock', reach: 'readHospital' },
  { label: 'Configurations', href: '/configurations', reach: 'readHospital' },
  { label: 'Catalogue', href: '/catalogue', reach: 'readHospital' },
  { label: 'Fit', href: '/fit', reach: 'readHospital' },
];

/** What is looked for now and then, behind "More". */
export const MORE_PAGES: readonly MainPage[] = [
  { label: 'Scan', href: '/scan', reach: 'recordScan' },
  { label: 'This morning', href: '/morning', reach: 'readHospital' },
  { label: 'Restock', href: '/restock', reach: 'readHospital' },
  { label: 'Consignment', href: '/consignment', reach: 'readHospital' },
  { label: 'Trace', href: '/trace', reach: 'readHospital' },
  { label: 'Recalls', href: '/recalls', reach: 'readHospital' },
  { label: 'Loans', href: '/loans', reach: 'readHospital' },
  { label: 'Lenders', href: '/lenders', reach: 'readHospital' },
  { label: 'Held sets', href: '/holds', reach: 'readHospital' },
  { label: 'Repairs', href: '/repairs', reach: 'readHospital' },
  { label: 'Cost and waste', href: '/reports/costs', reach: 'readHospital' },
  { label: 'Loss and life', href: '/reports/loss', reach: 'readHospital' },
  { label: 'Places', href: '/places', reach: 'readHospital' },
  { label: 'Sterilisers', href: '/sterilisers', reach: 'readHospital' },
  { label: 'Lists in and out', href: '/exchange', reach: 'readHospital' },
  { label: 'Calculations', href: '/calculations', reach: 'readHospital' },
  { label: 'The API', href: '/api-docs', reach: 'readHospital' },
  { label: 'Ledger', href: '/ledger', reach: 'readLedger' },
  { label: 'Settings', href: '/settings', reach: 'readHospital' },
  { label: 'People', href: '/people', reach: 'readPeople' },
  { label: 'Health', href: '/health', reach: 'readHealth' },
];

/** Those a person of this role may see; nobody sees none of them. */
export function pagesFor(pages: readonly MainPage[], role: Role | null): MainPage[] {
  if (role === null) return [];
  return pages.filter(({ reach }) => reach === 'anybody' || may({ role }, reach));
}
