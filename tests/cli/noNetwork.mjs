// Loaded before the program: every way out of the machine ends it with status 97.
import dgram from 'node:dgram';
import dns from 'node:dns';
import net from 'node:net';
import tls from 'node:tls';

const refuse = (what) => () => {
  process.stderr.write(`went out: ${what}\n`);
  process.exit(97);
};
net.Socket.prototype.connect = refuse('net');
tls.connect = refuse('tls');
dgram.createSocket = refuse('dgram');
for (const name of Object.keys(dns)) if (typeof dns[name] === 'function') dns[name] = refuse(`dns.${name}`);
for (const name of Object.keys(dns.promises))
  if (typeof dns.promises[name] === 'function') dns.promises[name] = refuse(`dns.${name}`);
globalThis.fetch = refuse('fetch');
