/**
 * The style of the one page that is no page of the application: what stands in the tab where a sheet could not be
 * printed. Paper and ink as everywhere (the values of `app/_ui/tokens.css`), light or dark as the reader has it.
 */
const STYLE = `
:root { color-scheme: light dark; }
body {
  margin: 0;
  padding: 2rem 1.25rem;
  background: #f5f0e4;
  color: #1b222d;
  font: 1.125rem/1.5 system-ui, sans-serif;
}
main {
  max-width: 36rem;
  margin: 0 auto;
  padding: 1.5rem;
  border: 1px solid #d5ccb8;
  border-top: 3px solid #1b222d;
  background: #fdfaf2;
}
h1 { margin: 0 0 0.75rem; font: 700 1.75rem/1.2 Georgia, serif; overflow-wrap: anywhere; }
a { display: inline-block; min-height: 3rem; line-height: 3rem; color: #1d4b8f; }
@media (prefers-color-scheme: dark) {
  body { background: #11161c; color: #f0ebdf; }
  main { background: #1a2028; border-color: #3a424d; border-top-color: #f0ebdf; }
  a { color: #9dc0f0; }
}
`;

export const dynamic = 'force-static';

export function GET(): Response {
  return new Response(STYLE, { headers: { 'Content-Type': 'text/css; charset=utf-8' } });
}
