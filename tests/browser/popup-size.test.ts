import { expect, it } from 'vitest';
import { MOST_POPUP_BYTES, popupScriptBytes } from '../bench/popup-size.ts';

it('loads at most 60 kB of script, compressed, in the popup', () => {
  const bytes = popupScriptBytes();
  expect(bytes).toBeGreaterThan(10_000);
  expect(bytes).toBeLessThanOrEqual(MOST_POPUP_BYTES);
});
