/** What is said once something is logged at a meal, all but so many foods that are `gone` from the larder. */
export function loggedWords(what: string, meal: number, gone = 0): string {
  const but =
    gone === 0 ? '' : `, all but ${gone === 1 ? 'a food' : `${gone} foods`} no longer in the larder`;
  return `Logged ${what} to meal ${meal}${but}.`;
}
