/**
 * Answers of the server itself, before the program is asked: as RFC 9457 problems, and in a sentence where a person's
 * browser would show what comes.
 * @param {import('node:http').IncomingMessage} request
 * @param {import('node:http').ServerResponse} response
 * @param {{ status: number, title: string, detail: string, code: string, retryAfter?: number, allow?: string }} what
 */
export function refuse(request, response, { status, title, detail, code, retryAfter, allow }) {
  const headers = {
    'Cache-Control': 'no-store',
    ...(retryAfter === undefined ? {} : { 'Retry-After': String(retryAfter) }),
    ...(allow === undefined ? {} : { Allow: allow }),
  };
  const forReading = request.method === 'GET' && /\btext\/html\b/.test(request.headers.accept ?? '');
  const body = forReading
    ? `${title}. ${detail}\n`
    : JSON.stringify({
        type: 'about:blank',
        title,
        status,
        detail,
        errors: [{ path: [], code, message: detail }],
        ...(retryAfter === undefined ? {} : { waitSeconds: retryAfter }),
      });
  const type = forReading ? 'text/plain; charset=utf-8' : 'application/problem+json';
  response.writeHead(status, { ...headers, 'Content-Type': type, 'Content-Length': Buffer.byteLength(body) });
  response.end(request.method === 'HEAD' ? undefined : body);
}

/** @param {number} seconds */
export const tooOften = (seconds) => ({
  status: 429,
  title: 'Asked for too often',
  detail: `More was asked for than one person or place needs, so this was not looked at and nothing was changed. Try again in ${seconds} ${seconds === 1 ? 'second' : 'seconds'}.`,
  code: 'too-often',
  retryAfter: seconds,
});

export const STOPPING = {
  status: 503,
  title: 'Kitwright is being stopped',
  detail:
    'It takes no new work while it ends what it has begun. This was not looked at and nothing was changed; it is usually back within a minute.',
  code: 'stopping',
  retryAfter: 5,
};

export const FROM_ELSEWHERE = {
  status: 403,
  title: 'Not permitted',
  detail: 'This came from a page of another site, so nothing was done.',
  code: 'not-permitted',
};

/** @param {number} most bytes */
export const tooLarge = (most) => ({
  status: 413,
  title: 'Too much at once',
  detail: `At most ${Math.round(most / 1_000_000)} MB can be sent at once, so this was not read and nothing was changed.`,
  code: 'too-large',
});

export const NO_ADDRESS = {
  status: 400,
  title: 'No address',
  detail: 'A percent sign in this address is not followed by what it should be, so it names nothing.',
  code: 'no-address',
};

export const NOT_AN_ADDRESS = {
  status: 400,
  title: 'No address of ours',
  detail:
    'An address is asked for by its host and its path, without dots that lead up or down. This was not looked at and nothing was changed.',
  code: 'not-an-address',
};

export const NOT_EXPECTED = {
  status: 417,
  title: 'Not done here',
  detail:
    'What is expected of this answer is not known here, so this was not looked at and nothing was changed.',
  code: 'not-expected',
};

export const NO_SUCH_METHOD = {
  status: 405,
  title: 'Not done here',
  detail: 'This way of asking is none of those that Kitwright answers.',
  code: 'no-such-method',
};

/** An address of the API that is not asked by this method. @param {readonly string[]} methods those it is asked by */
export const notAsked = (methods) => ({
  status: 405,
  title: 'Not asked like this',
  detail: `This address is asked by ${methods.join(', ')}.`,
  code: 'no-such-method',
  allow: methods.join(', '),
});
