/** What a client puts there that asks through a proxy: the whole address (RFC 9112, 3.2.2). */
const WHOLE = /^https?:\/\/([^/?#@]+)([/?].*)?$/i;
/** Up and down between folders, in every way in which a reader of addresses takes it for that (WHATWG URL, 4.4). */
const DOTS = /^(?:\.|%2e){1,2}$/i;

/**
 * Makes the target of a request a plain path with its query, as browsers send it; `false` where it cannot be one. What is
 * limited, logged and asked by its path must be the address that the application will take it for: so what an address
 * turns into by its dots is not worked out, but refused.
 * @param {import('node:http').IncomingMessage} request
 */
export function takeTarget(request) {
  const whole = WHOLE.exec(request.url ?? '');
  if (whole) {
    const [, host, rest = '/'] = whole;
    request.headers.host = host;
    request.url = rest.startsWith('/') ? rest : `/${rest}`;
  }
  const target = request.url ?? '';
  // only HTTP/1.0 knows requests without a host: some that ask for health speak it
  if (request.headers.host === undefined && request.httpVersion !== '1.0') return false;
  if (!target.startsWith('/')) return false;
  return !pathOf(target)
    .split(/[/\\]/)
    .some((part) => DOTS.test(part));
}

/** The path alone, as it was sent: without its query, which may hold what was typed. @param {string | undefined} url */
export function pathOf(url) {
  return (url ?? '/').split(/[?#]/, 1)[0] || '/';
}
