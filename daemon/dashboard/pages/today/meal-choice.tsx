import type { DayView } from '@platewright/core/views/types.ts';
import { Select } from '../../forms/select.tsx';

/** To which meal of the day the line goes. */
export function MealChoice({
  meal,
  day,
  onMeal,
}: {
  meal: number;
  day: DayView;
  onMeal: (meal: number) => void;
}) {
  const options = day.meals.map(({ meal: number, time }) => ({
    value: String(number),
    label: `Meal ${number}, ${time}`,
  }));
  return (
    <Select label="To" value={String(meal)} options={options} onChoice={(value) => onMeal(Number(value))} />
  );
}
