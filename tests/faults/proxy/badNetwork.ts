import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';

/** What a network may do to one exchange. */
export type Mischief = 'none' | 'loseRequest' | 'loseReply' | 'double' | 'doubleLater';

export interface BadNetwork {
  address: string;
  done: Record<Mischief, number>;
  close(): Promise<void>;
}

/**
 * A network between a client and a server: it loses a request before it arrives, drops the reply after the server has done its
 * work, sends a request twice at once, or again after it was answered. What becomes of each exchange is `choose`'s.
 */
export async function badNetwork(target: string, choose: () => Mischief): Promise<BadNetwork> {
  const done: BadNetwork['done'] = { none: 0, loseRequest: 0, loseReply: 0, double: 0, doubleLater: 0 };
  const server = createServer((request, response) => {
    const parts: Buffer[] = [];
    request.on('data', (part: Buffer) => parts.push(part));
    request.on('end', async () => {
      const mischief = choose();
      done[mischief] += 1;
      if (mischief === 'loseRequest') return request.socket.destroy();
      const pass = () =>
        fetch(`${target}${request.url ?? ''}`, {
          method: request.method ?? 'GET',
          headers: { 'Content-Type': 'application/json', Cookie: request.headers.cookie ?? '' },
          body: Buffer.concat(parts),
        });
      const [answer, second] = await Promise.all(mischief === 'double' ? [pass(), pass()] : [pass()]);
      await second?.arrayBuffer();
      const body = Buffer.from(await (answer as Response).arrayBuffer());
      if (mischief === 'loseReply') return request.socket.destroy();
      if (mischief === 'doubleLater') await (await pass()).arrayBuffer();
      response.writeHead((answer as Response).status, { 'Content-Type': 'application/json' });
      response.end(body);
    });
  });
  await new Promise<void>((listening) => server.listen(0, '127.0.0.1', listening));
  const { port } = server.address() as AddressInfo;
  return {
    address: `http://127.0.0.1:${port}`,
    done,
    close: () =>
      new Promise((closed) => {
        server.close(() => closed());
        server.closeAllConnections();
      }),
  };
}
