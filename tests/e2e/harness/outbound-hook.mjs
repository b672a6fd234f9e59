// Loaded into a server's process before anything else: each attempt to reach another machine is noted and fails.
import dgram from 'node:dgram';
import dns from 'node:dns';
import { appendFileSync } from 'node:fs';
import net from 'node:net';

const place = process.env.OUTBOUND_NOTES;
const HERE = new Set(['127.0.0.1', 'localhost', '::1', '::', '0.0.0.0', '', undefined, null]);

/** @param {string} what */
function refuse(what) {
  appendFileSync(place, `${what}\n`);
  throw new Error(`kept from ${what}`);
}

const { connect } = net.Socket.prototype;
net.Socket.prototype.connect = function (...args) {
  const given = Array.isArray(args[0]) ? args[0][0] : args[0];
  const to = typeof given === 'object' && given !== null ? given : { port: given, host: args[1] };
  if (to.path === undefined && !HERE.has(to.host)) refuse(`connect ${to.host}:${to.port}`);
  return connect.apply(this, args);
};
for (const at of [dns, dns.promises]) {
  const { lookup } = at;
  at.lookup = (host, ...rest) =>
    HERE.has(host) || net.isIP(host) ? lookup(host, ...rest) : refuse(`lookup ${host}`);
  for (const name of ['resolve', 'resolve4', 'resolve6', 'resolveAny', 'resolveTxt'])
    at[name] = (host) => refuse(`resolve ${host}`);
}
dgram.Socket.prototype.send = () => refuse('a datagram');
