import type { Edit } from '@platewright/core/protocol/records.ts';
import type { Kind } from '@platewright/core/records/kinds.ts';
import { edit, type Fields, removal, sendEdits } from '../api/edits.ts';
import { useAthlete } from './athlete.tsx';
import type { UnheardIds } from './new-ids.ts';
import { useNotice } from './notice.tsx';
import { type Submit, useSubmit } from './use-submit.ts';

interface Adding {
  submit: Submit;
  /** Stores a new record and says `done`, with a way back. Resolves to whether it was stored. */
  add: <K extends Kind>(
    kind: K,
    fields: () => Fields<K> | Promise<Fields<K>>,
    done: string,
  ) => Promise<boolean>;
}

/** The state of a form that adds records of the athlete in sight; `ids` as for useSubmit. */
export function useAdd(ids?: UnheardIds): Adding {
  const { athlete } = useAthlete();
  const { tell } = useNotice();
  const submit = useSubmit(ids && { ids });
  const add: Adding['add'] = async (kind, fields, done) => {
    let back: Edit[] = [];
    const stored = await submit.run(async () => {
      const records = submit.withIds([await fields()]);
      back = records.map(({ id }) => removal(kind, athlete, id, true));
      await sendEdits(records.map((record) => edit(kind, athlete, record.id, record.fields)));
    });
    if (stored) tell(done, back);
    return stored;
  };
  return { submit, add };
}
