import type { Kind } from '@platewright/core/records/kinds.ts';
import { edit, type Fields, removal, sendEdits } from '../api/edits.ts';
import { useAthlete } from './athlete.tsx';
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

/** The state of a form that adds records of the athlete in sight. */
export function useAdd(): Adding {
  const { athlete } = useAthlete();
  const { tell } = useNotice();
  const submit = useSubmit();
  const add: Adding['add'] = async (kind, fields, done) => {
    const id = submit.idOf();
    const stored = await submit.run(async () => sendEdits([edit(kind, athlete, id, await fields())]));
    if (stored) tell(done, [removal(kind, athlete, id, true)]);
    return stored;
  };
  return { submit, add };
}
