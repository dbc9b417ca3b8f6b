import * as z from 'zod/mini';
import type { Store } from '../store/store.ts';

/** A device that was away for less begins from its place in the log, any other from a snapshot (common practice, no source). */
const KEPT_MS = 400 * 86_400_000;
/** How often the place of the log's end is noted. */
const NOTED_MS = 30 * 86_400_000;

/** Name of the setting that holds where the log ended, and when. */
const PLACES_SETTING = 'log-places';
const placesSchema = z.array(z.object({ at: z.number(), seq: z.number() }));

/**
 * Folds what has been in the log for over a year. When a change came in is nowhere in it, because clocks are a device's
 * own: so the log's end is noted from time to time.
 */
export async function foldOld(store: Store, nowMs: number): Promise<void> {
  const noted = await store.setting(PLACES_SETTING);
  const places = noted === null ? [] : placesSchema.parse(JSON.parse(noted));
  const old = places.filter(({ at }) => at <= nowMs - KEPT_MS).at(-1);
  if (old !== undefined) await store.fold(old.seq + 1);
  const left = places.filter(({ at }) => at > nowMs - KEPT_MS && at <= nowMs);
  const last = left.at(-1);
  if (last !== undefined && nowMs - last.at < NOTED_MS && left.length === places.length) return;
  const isDue = last === undefined || nowMs - last.at >= NOTED_MS;
  const end = { at: nowMs, seq: await store.lastSeq() };
  await store.putSetting(PLACES_SETTING, JSON.stringify(isDue ? [...left, end] : left));
}
