/** Where the service lies under the program's address. */
const SERVICE = '/api/v1/fhir';

/**
 * The address of the service, under which its links and identifiers stand. Identifiers must not change with the way somebody
 * came, so where the program has an address of its own (`KITWRIGHT_ADDRESS`, such as `https://kitwright.example`) that is it; else
 * the one it was asked by.
 */
export function serviceBase(request: Pick<Request, 'url' | 'headers'>): string {
  const stated = process.env.KITWRIGHT_ADDRESS;
  if (stated) return stated.replace(/\/+$/, '') + SERVICE;
  const { headers } = request;
  const { protocol, host } = new URL(request.url);
  const scheme = headers.get('x-forwarded-proto') ?? protocol.replace(':', '');
  return `${scheme}://${headers.get('x-forwarded-host') ?? headers.get('host') ?? host}${SERVICE}`;
}
