import type { Athlete } from '@platewright/core/records/kinds.ts';
import { useEffect, useRef, useState } from 'preact/hooks';
import { onReplicaChange, reader } from '../../platform/replica.ts';
import { type Habits, readHabits } from './read-habits.ts';

/** Larder and habits, read once the day is on the screen: the typed line takes keys before they are there. */
export function useHabits(athlete: Athlete | null, date: string): Habits | null {
  const [habits, setHabits] = useState<Habits | null>(null);
  const latest = useRef<Habits | null>(null);
  const id = athlete?.id;
  // Dependencies: the athlete is a new object at each reading; its id tells.
  useEffect(() => {
    if (athlete === null) return;
    let wanted = true;
    const read = async () => {
      const next = await readHabits(reader, athlete, date, latest.current);
      if (!wanted || next === null) return;
      latest.current = next;
      setHabits(next);
    };
    void read();
    const stop = onReplicaChange(() => void read());
    return () => {
      wanted = false;
      stop();
    };
  }, [id, date]);
  return habits;
}
