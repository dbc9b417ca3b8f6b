import { expect, it } from 'vitest';
import { pairingText } from '../../daemon/src/cli/known-addresses.ts';
import { readPairText } from '../../extension/pairing/read-pair-text.ts';

it.each([
  ['http://127.0.0.1:8787/', 'ABCD-EFGH'],
  ['http://127.0.0.1:9000/', '127.0.0.1:9000 ABCD-EFGH'],
  ['http://127.0.0.1:8787/plate/', '127.0.0.1:8787/plate ABCD-EFGH'],
])('what to type for a daemon at %s leads the extension there', (page, typed) => {
  expect(pairingText(page, 'ABCD-EFGH')).toBe(typed);
  expect(readPairText(typed)).toEqual({ address: page.replace(/\/$/, ''), code: 'ABCD-EFGH' });
});
