import type { Page } from 'playwright-core';

interface Edit {
  athlete: string;
  kind: string;
  record: string;
  fields: Record<string, unknown>;
}

/** Has the worker keep edits, by the message that the popup sends; resolves once they are on disk. */
export async function keepEdits(popup: Page, edits: readonly Edit[]): Promise<void> {
  const kept = await popup.evaluate(async (ask) => {
    const answer = await Reflect.get(globalThis, 'chrome').runtime.sendMessage({ name: 'edit', ask });
    return answer.ok;
  }, edits);
  if (kept !== true) throw new Error('the edits were not kept');
}
