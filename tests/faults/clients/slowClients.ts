import { connect, type Socket } from 'node:net';
import { setTimeout as sleep } from 'node:timers/promises';
import { SCANS } from '../scanner';

/** How a client may be a burden. */
export type Burden = 'silent' | 'halfHead' | 'slowBody' | 'noReader';

export const BURDENS: readonly Burden[] = ['slowBody', 'noReader', 'halfHead', 'silent'];
const EVERY_MS = 1000;

export interface SlowClient {
  /** Resolved with the moment at which the server closed it. */
  closed: Promise<number>;
  /** Its own port, once it is connected. */
  port(): number;
  end(): void;
}

/**
 * One client that connects and then: says nothing at all (`silent`), begins a head and does not end it (`halfHead`), sends a
 * body a byte a second (`slowBody`), or asks for a large page again and again and reads nothing of it (`noReader`).
 */
export function slowClient(address: string, burden: Burden, cookie: string): SlowClient {
  const { hostname, port } = new URL(address);
  const socket: Socket = connect({ host: hostname, port: Number(port) });
  const closed = new Promise<number>((resolve) => socket.on('close', () => resolve(performance.now())));
  socket.on('error', () => {});
  const head = (method: string, path: string, more: string) =>
    `${method} ${path} HTTP/1.1\r\nHost: ${hostname}:${port}\r\nCookie: ${cookie}\r\n${more}`;
  let going = true;
  void closed.then(() => {
    going = false;
  });
  socket.on('connect', async () => {
    if (burden === 'halfHead') socket.write(head('GET', '/', 'X-Slow: yes'));
    if (burden === 'noReader') {
      socket.pause();
      // several at once, so that more is to be sent than the system's own buffers take
      socket.write(head('GET', '/catalogue', '\r\n').repeat(5));
    }
    if (burden !== 'slowBody') {
      socket.resume();
      if (burden === 'noReader') socket.pause();
      return;
    }
    socket.resume();
    socket.write(head('POST', SCANS, 'Content-Type: application/json\r\nContent-Length: 100000\r\n\r\n{'));
    while (going) {
      await sleep(EVERY_MS, undefined, { ref: false });
      if (going) socket.write(' ');
    }
  });
  return {
    closed,
    port: () => socket.localPort ?? 0,
    end() {
      going = false;
      socket.resetAndDestroy();
    },
  };
}
