import { Dexie, type Table } from 'dexie';
import { DATABASE } from './reader.ts';
import type { OutboxRow, RecordRow } from './rows.ts';

/** A named value beside the records: the head, and what is kept only to be fast. */
export interface MetaRow {
  name: string;
  value: unknown;
}

/** The replica in IndexedDB. Strict durability: an edit that has resolved survives a power cut. */
export class Database extends Dexie {
  readonly records: Table<RecordRow, [string, string]>;
  readonly outbox: Table<OutboxRow, number, Omit<OutboxRow, 'order'>>;
  readonly meta: Table<MetaRow, string>;

  constructor(name = DATABASE) {
    super(name, { chromeTransactionDurability: 'strict', cache: 'disabled' });
    this.version(1).stores({
      records: '[athlete+id], [athlete+kind+date]',
      outbox: '++order, change.clock, [state+order], [change.athlete+change.record]',
      meta: 'name',
    });
    this.records = this.table('records');
    this.outbox = this.table('outbox');
    this.meta = this.table('meta');
  }
}
