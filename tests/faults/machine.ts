import { join } from 'node:path';
import { afterEach, beforeEach } from 'vitest';
import { temporaryFolder } from '../support/folder.ts';
import { type Daemon, platewright, startDaemon } from './daemon-process.ts';

/** A home with nothing in it, the commands that are typed there and the daemons that are started there. */
class Machine {
  private readonly home = temporaryFolder();
  private readonly daemons: Daemon[] = [];
  readonly folder = this.home.path;
  /** Where a daemon that was told no other place keeps its store. */
  readonly data = join(this.folder, 'data/platewright');

  /** Runs a command to its end. */
  run(...args: string[]): ReturnType<typeof platewright> {
    return platewright(this.folder, args);
  }

  /** Starts a daemon, which ends with the test at the latest. */
  async start(args?: readonly string[], under?: readonly string[]): Promise<Daemon> {
    const daemon = await startDaemon(this.folder, args, under);
    this.daemons.push(daemon);
    return daemon;
  }

  async close(): Promise<void> {
    for (const daemon of this.daemons) await daemon.stop('SIGKILL');
    this.home.remove();
  }
}

/** A new machine for each test of a file. */
export function useMachine(): () => Machine {
  let machine: Machine;
  beforeEach(() => {
    machine = new Machine();
  });
  afterEach(() => machine.close());
  return () => machine;
}
