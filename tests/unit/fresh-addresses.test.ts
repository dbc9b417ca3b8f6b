import { expect, it, vi } from 'vitest';
import { freshAddresses } from '../../daemon/src/network/addresses.ts';

const interfaces = vi.hoisted(() => vi.fn(() => ({})));
vi.mock('node:os', async (original) => ({ ...(await original<object>()), networkInterfaces: interfaces }));

it('addresses are asked for anew after a few seconds, and when the clock was set back', () => {
  let now = 0;
  const addresses = freshAddresses(() => now);
  const asked = () => {
    interfaces.mockClear();
    addresses();
    return interfaces.mock.calls.length;
  };
  expect(asked()).toBe(1);
  expect(asked()).toBe(0);
  now += 5000;
  expect(asked()).toBe(1);
  now -= 365 * 86_400_000;
  expect(asked()).toBe(1);
});
