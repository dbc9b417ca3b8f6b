import '../platform/without-eval.ts';
import { browser } from 'wxt/browser';
import { defineBackground } from 'wxt/utils/define-background';
import { answerPages } from '../platform/messages.ts';
import { changePairing } from '../platform/pairing.ts';
import { decide, keepEdits } from '../worker/edits.ts';
import { erase, join, pair, unpair } from '../worker/pair.ts';
import { wholeReplica, writeNote } from '../worker/replica.ts';
import { requestSync } from '../worker/run-sync.ts';

const ALARM = 'sync';

/** The browser may stop this at any moment and start it for the next event, so nothing is kept in it. */
export default defineBackground({
  type: 'module',
  main() {
    answerPages({
      edit: keepEdits,
      decide,
      pair: whenWhole(pair),
      join: whenWhole(join),
      unpair: whenWhole(unpair),
      erase: whenWhole(erase),
      choose: whenWhole(async (athlete) => {
        await writeNote('athlete', athlete);
        await changePairing({ athlete });
        await requestSync();
        return null;
      }),
      async sync() {
        await requestSync();
        return null;
      },
    });
    browser.runtime.onStartup.addListener(() => void requestSync());
    browser.runtime.onInstalled.addListener(() => void requestSync());
    browser.alarms.onAlarm.addListener(() => void requestSync());
    void keepAlarm();
    // Whoever asks later hears of a failure.
    void wholeReplica().catch(() => {});
  },
});

function whenWhole<A, T>(work: (ask: A) => Promise<T>): (ask: A) => Promise<T> {
  return async (ask) => {
    await wholeReplica();
    return await work(ask);
  };
}

/** Alarms outlive this worker, mostly; making it anew each time would put it off again and again. */
async function keepAlarm(): Promise<void> {
  if ((await browser.alarms.get(ALARM)) === undefined) {
    await browser.alarms.create(ALARM, { periodInMinutes: 1 });
  }
}
