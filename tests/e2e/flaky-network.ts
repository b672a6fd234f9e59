import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';

export interface FlakyNetwork {
  address: string;
  /** How many requests were lost on the way there, and how many answers on the way back, after the work was done. */
  lost: { requests: number; answers: number };
  close(): Promise<void>;
}

/**
 * A network between a client and a server that loses some requests before they arrive, and some answers after the server
 * has done its work: the client then knows nothing. The same seed loses the same ones.
 */
export async function flakyNetwork(target: string, cookie: string, seed: number): Promise<FlakyNetwork> {
  const lost = { requests: 0, answers: 0 };
  let state = seed;
  const chance = () => {
    // a linear congruential generator (Numerical Recipes: a = 1664525, c = 1013904223, m = 2^32)
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
  const server: Server = createServer((request, response) => {
    const parts: Buffer[] = [];
    request.on('data', (part: Buffer) => parts.push(part));
    request.on('end', async () => {
      if (chance() < 0.3) {
        lost.requests += 1;
        request.socket.destroy();
        return;
      }
      const answer = await fetch(`${target}${request.url ?? ''}`, {
        method: request.method ?? 'GET',
        headers: { 'Content-Type': 'application/json', Cookie: cookie },
        body: Buffer.concat(parts),
      });
      const body = Buffer.from(await answer.arrayBuffer());
      if (chance() < 0.3) {
        lost.answers += 1;
        request.socket.destroy();
        return;
      }
      response.writeHead(answer.status, { 'Content-Type': 'application/json' });
      response.end(body);
    });
  });
  await new Promise<void>((listening) => server.listen(0, '127.0.0.1', listening));
  const { port } = server.address() as AddressInfo;
  return {
    address: `http://127.0.0.1:${port}`,
    lost,
    close: () => new Promise((closed) => server.close(() => closed())),
  };
}
