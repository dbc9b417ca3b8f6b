/** What `npm run bench` runs: every speed and size that is promised, each beside a named reference in the same run. */
import { benchDayView } from './day-view.ts';
import { benchManyAthletes } from './many-athletes.ts';
import { benchModel } from './model.ts';
import { benchPopup } from './popup.ts';
import { MOST_POPUP_BYTES, popupScriptBytes } from './popup-size.ts';
import { benchPull } from './pull.ts';
import { benchPush } from './push.ts';
import { benchSearch } from './search.ts';
import { benchServer } from './server.ts';
import { type Compared, printTable } from './table.ts';

const ATHLETES = 200;

const benches: Record<string, () => Compared[] | Promise<Compared[]>> = {
  model: benchModel,
  search: benchSearch,
  push: benchPush,
  server: benchServer,
  'day view': benchDayView,
  'many athletes': () => benchManyAthletes(ATHLETES),
  popup: benchPopup,
  pull: benchPull,
  size: () => [
    {
      what: 'popup: whole script, compressed',
      unit: 'kB',
      ours: popupScriptBytes() / 1000,
      reference: 'what it may take',
      theirs: MOST_POPUP_BYTES / 1000,
    },
  ],
};

const rows: Compared[] = [];
for (const [name, bench] of Object.entries(benches)) {
  console.error(`${name}…`);
  rows.push(...(await bench()));
}
printTable(rows);
