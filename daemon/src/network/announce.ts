import { EventEmitter } from 'node:events';
import Bonjour from 'bonjour-service';

/**
 * Announces `https://NAME.local:PORT` by mDNS and DNS-SD (RFC 6762, 6763). What goes wrong is told once and changes
 * nothing else: a network without multicast is no reason not to serve.
 */
export function announce(name: string, port: number, failed: (reason: string) => void): { stop(): void } {
  let told = false;
  const fail = (error: unknown) => {
    if (!told) failed(error instanceof Error ? error.message : String(error));
    told = true;
  };
  const tried = <T>(work: () => T): T | null => {
    try {
      return work();
    } catch (error) {
      fail(error);
      return null;
    }
  };
  const bonjour = tried(() => new Bonjour({}, fail));
  if (bonjour !== null) {
    // Its socket tells of a taken port by an event that ends the process when nobody listens.
    const socket: unknown = Reflect.get(Object(Reflect.get(bonjour, 'server')), 'mdns');
    if (socket instanceof EventEmitter) socket.on('error', fail);
    // No probe: with one, a second daemon on this machine would not be announced at all.
    tried(() => bonjour.publish({ name: 'Platewright', type: 'https', port, host: name, probe: false }));
  }
  return { stop: () => void tried(() => bonjour?.unpublishAll(() => bonjour.destroy())) };
}
