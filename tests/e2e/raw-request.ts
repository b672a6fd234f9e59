import { Agent, type IncomingHttpHeaders, request } from 'node:http';

export interface RawAnswer {
  status: number;
  headers: IncomingHttpHeaders;
  body: string;
}

const agent = new Agent({ keepAlive: true, maxSockets: 12 });

/** Asks for a path exactly as it is written: a browser, and `fetch`, tidy up dots and slashes before they send it. */
export function rawRequest(
  site: string,
  path: string,
  {
    method = 'GET',
    headers = {},
    body,
  }: { method?: string; headers?: Record<string, string>; body?: string } = {},
): Promise<RawAnswer> {
  const { hostname, port } = new URL(site);
  return new Promise((resolve, reject) => {
    // stated, for a DELETE’s body has no bounds of its own
    const length = body === undefined ? {} : { 'Content-Length': String(Buffer.byteLength(body)) };
    const asking = request(
      { hostname, port, path, method, headers: { ...headers, ...length }, agent },
      async (answer) => {
        let text = '';
        try {
          for await (const part of answer) text += part;
          resolve({ status: answer.statusCode ?? 0, headers: answer.headers, body: text });
        } catch (error) {
          reject(error);
        }
      },
    );
    asking.on('error', reject);
    asking.end(body);
  });
}
