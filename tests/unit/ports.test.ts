import { expect, it } from 'vitest';
import { PORTS } from '../../daemon/src/cli/settings.ts';

it('own store, demo, network and a backup that is looked at can be served at the same time', () => {
  expect(new Set(Object.values(PORTS)).size).toBe(4);
});
