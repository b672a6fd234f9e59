/** The main pages, in the order of the navigation. */
export const mainPages = [
  { label: 'Today', href: '/' },
  { label: 'Cases', href: '/cases' },
  { label: 'Sets', href: '/sets' },
  { label: 'Configurations', href: '/configurations' },
  { label: 'Catalogue', href: '/catalogue' },
  { label: 'Fit', href: '/fit' },
  { label: 'Stock', href: '/stock' },
  { label: 'Calculations', href: '/calculations' },
] as const;
