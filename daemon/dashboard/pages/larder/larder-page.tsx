import type { LarderView } from '@platewright/core/views/larder-types.ts';
import { useState } from 'preact/hooks';
import { readView } from '../../api/views.ts';
import { Page, Section } from '../../shell/page.tsx';
import { Shown } from '../../shell/shown.tsx';
import { Writing } from '../../shell/writing.tsx';
import { useAthlete } from '../../state/athlete.tsx';
import { useLoaded } from '../../state/use-view.ts';
import { FoodForm } from './food-form.tsx';
import { FoodList } from './food-list.tsx';
import { StandingMeals } from './standing-meals.tsx';

/** Which food is in the form: an id to change one, `new` for a new one, `copy:` and an id for one like another. */
type Editing = string | null;

/** The athlete's own food table and the standing meals. */
export function LarderPage() {
  const { athlete } = useAthlete();
  const loaded = useLoaded(`larder ${athlete}`, () => readView('larder', athlete));
  const [editing, setEditing] = useState<Editing>(null);
  return (
    <Page
      title="Larder"
      lead={
        loaded.value &&
        `${loaded.value.foods.length} foods. Figures are per 100 g; a number in brackets is that of the USDA SR table.`
      }
      aside={
        editing === null && (
          <Writing>
            <button type="button" class="button first" onClick={() => setEditing('new')}>
              Add a food
            </button>
          </Writing>
        )
      }
    >
      <Shown loaded={loaded}>
        {(larder) => (
          <>
            {editing !== null && (
              <Section title={titleOf(editing, larder)}>
                <FoodForm key={editing} larder={larder} editing={editing} close={() => setEditing(null)} />
              </Section>
            )}
            <div class="larder">
              <Section title="Foods">
                <FoodList larder={larder} edit={setEditing} />
              </Section>
              <Section title="Standing meals">
                <StandingMeals larder={larder} />
              </Section>
            </div>
          </>
        )}
      </Shown>
    </Page>
  );
}

function titleOf(editing: string, larder: LarderView): string {
  if (editing === 'new') return 'A new food';
  const id = editing.replace(/^copy:/, '');
  const name = larder.foods.find(({ food }) => food.id === id)?.food.name ?? 'food';
  return editing.startsWith('copy:') ? `A food like ${name}` : name;
}
