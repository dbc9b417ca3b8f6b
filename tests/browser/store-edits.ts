import type { Page } from 'playwright-core';

/** Has the daemon store edits as another device does, by the rights of a dashboard that is paired. */
export async function storeEdits(dashboard: Page, edits: readonly object[]): Promise<void> {
  await dashboard.evaluate(
    async (body) => {
      const headers = { 'content-type': 'application/json' };
      const answer = await fetch('/v1/records', { method: 'POST', headers, body: JSON.stringify(body) });
      if (!answer.ok) throw new Error(await answer.text());
    },
    { edits },
  );
}
