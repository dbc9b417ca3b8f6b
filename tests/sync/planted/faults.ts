/** A fault to plant: a piece of the sync's source, which stands there once, and what takes its place. */
export interface Fault {
  says: string;
  file: string;
  find: string;
  replace: string;
}

const REPLICA = 'extension/replica';
const SERVER = 'daemon/src/server';
const CHANGES = 'shared-core/src/changes';

/** Each is something that a hurried hand might write. The simulated world must notice every one. */
export const faults: readonly Fault[] = [
  {
    says: 'a pull moves on one change too far',
    file: `${REPLICA}/absorb.ts`,
    find: 'seq: page.seq,\n',
    replace: 'seq: page.seq + 1,\n',
  },
  {
    says: 'a pulled clock is not noted as seen',
    file: `${REPLICA}/absorb.ts`,
    find: `mark: page.mark,
      reached: beyond(head.reached, page.seq),
      seen: laterClock(head.seen, seen),`,
    replace: `mark: page.mark,
      reached: beyond(head.reached, page.seq),
      seen: head.seen,`,
  },
  {
    says: 'a snapshot goes on from where it ended, not from where it was begun',
    file: `${REPLICA}/absorb.ts`,
    find: 'const begun = before ?? page;',
    replace: 'const begun = page;',
  },
  {
    says: 'what was rejected is given up once the store holds something later',
    file: `${REPLICA}/absorb.ts`,
    find: "state === 'waiting' && base !== undefined",
    replace: 'state !== null && base !== undefined',
  },
  {
    says: 'a waiting change is taken as held when its record is pulled',
    file: `${REPLICA}/absorb.ts`,
    find: '&& applyChange(base, change) === base',
    replace: '',
  },
  {
    says: 'a page that was read ahead is taken for whatever is asked for',
    file: `${REPLICA}/read-ahead.ts`,
    find: 'ahead?.request === request',
    replace: 'ahead !== null',
  },
  {
    says: 'an edit is stamped without regard to those that wait',
    file: `${REPLICA}/edit.ts`,
    find: 'laterClock(head.seen, await tx.latestInOutbox())',
    replace: 'head.seen',
  },
  {
    says: 'an edit is stamped without regard to those that were pulled',
    file: `${REPLICA}/edit.ts`,
    find: 'laterClock(head.seen, await tx.latestInOutbox())',
    replace: 'await tx.latestInOutbox()',
  },
  {
    says: 'an edit is applied and not put in the outbox',
    file: `${REPLICA}/edit.ts`,
    find: 'await tx.addToOutbox(changes);',
    replace: '',
  },
  {
    says: 'the base of an edited record is not kept',
    file: `${REPLICA}/edit.ts`,
    find: 'toRow(applyChange(row, change), baseOf(row))',
    replace: 'toRow(applyChange(row, change), null)',
  },
  {
    says: 'a change stays under its own clock when the daemon gave it another',
    file: `${REPLICA}/outbox.ts`,
    find: '{ ...row.change, clock: answer.clock }',
    replace: 'row.change',
  },
  {
    says: 'a rejected change leaves the outbox',
    file: `${REPLICA}/outbox.ts`,
    find: "rejected.push({ ...row, state: 'rejected', reason: answer.reason });",
    replace: 'gone.push(row);',
  },
  {
    says: 'how far the log reached is not noted after a push',
    file: `${REPLICA}/outbox.ts`,
    find: 'reached: reached === null ? head.reached : farther(head.reached, reached),',
    replace: '',
  },
  {
    says: 'a change that was let go stays',
    file: `${REPLICA}/outbox.ts`,
    find: `    await takeOut(tx, order);
  });`,
    replace: '  });',
  },
  {
    says: 'a change that was resent goes on as rejected',
    file: `${REPLICA}/outbox.ts`,
    find: "state: 'waiting', reason: ''",
    replace: "reason: ''",
  },
  {
    says: 'an acknowledged change stays in the outbox',
    file: `${REPLICA}/rebase.ts`,
    find: 'await tx.dropFromOutbox(gone);',
    replace: '',
  },
  {
    says: 'a record forgets its base while more of it waits',
    file: `${REPLICA}/rebase.ts`,
    find: 'changes.length === 0 ? toRow(record) : toRow(record, base)',
    replace: 'toRow(record)',
  },
  {
    says: 'a record that nobody knows any more stays',
    file: `${REPLICA}/rebase.ts`,
    find: 'await tx.dropRecords(dropped);',
    replace: '',
  },
  {
    says: 'a pulled change does not move the base of an edited record',
    file: `${REPLICA}/rebase.ts`,
    find: 'base: applyChange(row.base ?? undefined, change)',
    replace: 'base: row.base',
  },
  {
    says: 'a recovery ends after the first records',
    file: `${REPLICA}/recover.ts`,
    find: 'refilled: last === undefined',
    replace: 'refilled: true',
  },
  {
    says: 'a recovery sends nothing again',
    file: `${REPLICA}/recover.ts`,
    find: 'await tx.addToOutbox(writes.map((write): Change => ({ id: newId(), ...write })));',
    replace: '',
  },
  {
    says: 'a recovery gives all changes one id',
    file: `${REPLICA}/recover.ts`,
    find: 'id: newId(), ...write',
    replace: "id: 'again', ...write",
  },
  {
    says: 'a recovery goes on in the log where it stood',
    file: `${REPLICA}/recover.ts`,
    find: "      seq: 0,\n      mark: '',\n",
    replace: '',
  },
  {
    says: 'a recovery sends all under one clock',
    file: `${REPLICA}/recover.ts`,
    find: '([field]) => record.clocks[field]',
    replace: '() => Object.values(record.clocks)[0]',
  },
  {
    says: 'more is sent before what was sent is looked for',
    file: `${REPLICA}/sync.ts`,
    find: 'recovery === null && reached === null ?',
    replace: 'recovery === null ?',
  },
  {
    says: 'one change that is too much alone stops all others',
    file: `${REPLICA}/sync.ts`,
    find: 'if (size === 1) {',
    replace: 'if (size === 0) {',
  },
  {
    says: 'a sync ends after the first page',
    file: `${REPLICA}/sync.ts`,
    find: "if (page.more) return 'pull';",
    replace: '',
  },
  {
    says: 'a sync ends while changes wait',
    file: `${REPLICA}/sync.ts`,
    find: "return waiting.length > 0 ? 'push' : DONE;",
    replace: 'return DONE;',
  },
  {
    says: 'another store is not noticed in a pull',
    file: `${REPLICA}/sync.ts`,
    find: `  if (await isUnknownStore(ports, page)) return 'recover';
  if ('reset' in page) {
    return head`,
    replace: `  if ('reset' in page) {
    return head`,
  },
  {
    says: 'a browser that may see other athletes than before goes on as before',
    file: `${REPLICA}/sync.ts`,
    find: ' || head.rights.athlete !== rights.athlete',
    replace: '',
  },
  {
    says: 'a log that was set back is known by its length alone',
    file: `${SERVER}/log-pages.ts`,
    find: '(await store.mark(since)) === mark',
    replace: 'since <= (await store.lastSeq())',
  },
  {
    says: 'what a device heard of the log is not looked for',
    file: `${SERVER}/log-pages.ts`,
    find: '(await holds(store, reached));',
    replace: 'true;',
  },
  {
    says: 'a pull tells of every athlete',
    file: `${SERVER}/log-pages.ts`,
    find: 'store.changesSince(since, limit, athlete ?? undefined)',
    replace: 'store.changesSince(since, limit)',
  },
  {
    says: 'a snapshot tells of every athlete',
    file: `${SERVER}/log-pages.ts`,
    find: 'store.snapshot(after, limit, athlete ?? undefined)',
    replace: 'store.snapshot(after, limit)',
  },
  {
    says: 'a clock far ahead is kept',
    file: `${SERVER}/writer.ts`,
    find: 'clockTime(clock) > nowMs + MAX_AHEAD_MS',
    replace: 'clock === null',
  },
  {
    says: 'the change that comes last wins',
    file: `${CHANGES}/merge.ts`,
    find: 'return written === undefined || change.clock > written;',
    replace: 'return true;',
  },
  {
    says: 'of two values under one clock the first wins',
    file: `${CHANGES}/merge.ts`,
    find: 'return canonicalJson(change.fields[field] ?? null) > canonicalJson(before?.fields[field] ?? null);',
    replace: 'return false;',
  },
  {
    says: 'two edits of one millisecond have one clock',
    file: `${CHANGES}/clock.ts`,
    find: 'const counter = clockCounter(latest) + 1;',
    replace: 'const counter = clockCounter(latest);',
  },
  {
    says: 'a clock follows the wall clock backward',
    file: `${CHANGES}/clock.ts`,
    find: 'latest === null || nowMs > clockTime(latest)',
    replace: 'latest === null || nowMs !== clockTime(latest)',
  },
  {
    says: 'the second copy lacks what is added',
    file: `${REPLICA}/second-copy.ts`,
    find: 'await copy.put(added);',
    replace: '',
  },
  {
    says: 'what is gone stays in the second copy until it is compared, and the comparison gives up the rest',
    file: `${REPLICA}/second-copy.ts`,
    find: '!ids.has(id)));',
    replace: 'ids.has(id)));',
  },
  {
    says: 'a replica that was thrown away is filled without its records',
    file: `${REPLICA}/second-copy.ts`,
    find: 'await tx.putRecords(rows.touched());',
    replace: '',
  },
  {
    says: 'a replica that was thrown away is filled without its outbox',
    file: `${REPLICA}/second-copy.ts`,
    find: `await tx.putRecords(rows.touched());
    await tx.addToOutbox(changes);`,
    replace: 'await tx.putRecords(rows.touched());',
  },
];
