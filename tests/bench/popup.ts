import { cpSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { BrowserContext } from 'playwright-core';
import { BUILT_EXTENSION, type LoadedExtension, loadExtension } from '../support/extension.ts';
import { fullDaemon } from './full-daemon.ts';
import { type Compared, median, printTable } from './table.ts';

const FOODS = 10_000;
const YEARS = 10;
const ROUNDS = 25;
const WARM_UP = 3;

/** Opens the popup over a replica of ten years and ten thousand foods, and a blank page of the same extension, in turns. */
export async function benchPopup(): Promise<Compared[]> {
  const folder = mkdtempSync(join(tmpdir(), 'platewright-bench-'));
  cpSync(BUILT_EXTENSION, folder, { recursive: true });
  writeFileSync(join(folder, 'blank.html'), '<!doctype html><meta charset="utf-8"><title>Blank</title>');
  const full = await fullDaemon(YEARS, FOODS);
  const extension = await loadExtension(folder);
  try {
    const records = await fillReplica(extension, full.pairText);
    const popup = `chrome-extension://${extension.id}/popup.html`;
    const blank = `chrome-extension://${extension.id}/blank.html`;
    const times = { blank: [] as number[], line: [] as number[], list: [] as number[] };
    for (let round = 0; round < ROUNDS + WARM_UP; round++) {
      const [blankMs, line, list] = [
        await timeOf(extension.context, blank, 'blank'),
        await timeOf(extension.context, popup, 'line'),
        await timeOf(extension.context, popup, 'list'),
      ];
      if (round < WARM_UP) continue;
      times.blank.push(blankMs);
      times.line.push(line);
      times.list.push(list);
    }
    const compared = { unit: 'ms', reference: 'blank page of the extension', theirs: median(times.blank) };
    const over = `over ${records} records, ${FOODS} of them foods`;
    return [
      { what: `popup: line ready ${over}`, ours: median(times.line), ...compared },
      { what: `popup: first list ${over}`, ours: median(times.list), ...compared },
    ];
  } finally {
    await extension.close();
    await full.close();
    rmSync(folder, { recursive: true });
  }
}

/** Pairs the extension and waits until it holds all that the daemon has. Returns how many records that is. */
async function fillReplica(extension: LoadedExtension, pairText: string): Promise<number> {
  const options = await extension.openOptions();
  options.setDefaultTimeout(400_000);
  await options.getByLabel('Pairing code').fill(pairText);
  await options.keyboard.press('Enter');
  const held = options.getByText(/ records, /);
  const records = async () =>
    Number(((await held.textContent()) ?? '').split(' records')[0]?.replaceAll('\u202f', ''));
  const [popup] = await Promise.all([extension.openPopup(), held.waitFor()]);
  // The week in short is the last thing that a sync fetches.
  await popup.getByRole('link', { name: /weekly call/ }).waitFor({ timeout: 400_000 });
  await popup.close();
  const count = await records();
  await options.close();
  return count;
}

type Sign = 'blank' | 'line' | 'list';

/** Time from navigation to what is waited for, ms, by the clock of the page itself. */
async function timeOf(context: BrowserContext, url: string, sign: Sign): Promise<number> {
  const page = await context.newPage();
  await page.addInitScript(watch, sign);
  await page.goto(url);
  const time = await page.waitForFunction(() => Reflect.get(globalThis, 'readyAfterMs'));
  const ms = Number(await time.jsonValue());
  await page.close();
  return ms;
}

/** Runs in the page: notes when the sign of readiness shows. */
function watch(sign: Sign): void {
  const ready = () => Reflect.set(globalThis, 'readyAfterMs', performance.now());
  if (sign === 'blank') {
    addEventListener('load', ready);
    return;
  }
  let typed = false;
  const look = () => {
    const line = document.querySelector<HTMLInputElement>('#typed-line');
    if (line === null || document.activeElement !== line) return;
    const isDayThere = document.querySelector('.beam') !== null;
    if (sign === 'line' && isDayThere) {
      watcher.disconnect();
      ready();
    } else if (sign === 'list' && !typed) {
      typed = true;
      line.value = 'b';
      line.dispatchEvent(new InputEvent('input', { bubbles: true }));
    } else if (sign === 'list' && document.querySelector('[role=option]') !== null) {
      watcher.disconnect();
      ready();
    }
  };
  const watcher = new MutationObserver(look);
  watcher.observe(document, { childList: true, subtree: true, attributes: true });
  addEventListener('focusin', look);
}

if (import.meta.main) printTable(await benchPopup());
