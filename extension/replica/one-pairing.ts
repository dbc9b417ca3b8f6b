import type { Replica, ReplicaLook } from './port.ts';

/** Meanwhile this browser was unpaired, paired anew or erased, and what was begun before has ended. */
export class PairedAnew extends Error {}

/**
 * The replica for as long as it stamps as `device`: what one pairing began, such as a pull whose answer is still on its way,
 * neither reads nor writes what the next one finds here. Throws PairedAnew then.
 */
export function underOnePairing(replica: Replica, device: string): Replica {
  const check = async (tx: Pick<ReplicaLook, 'head'>) => {
    if ((await tx.head()).device !== device) throw new PairedAnew();
  };
  return {
    transact: (work) =>
      replica.transact(async (tx) => {
        await check(tx);
        return await work(tx);
      }),
    look: (work) =>
      replica.look(async (tx) => {
        await check(tx);
        return await work(tx);
      }),
  };
}
