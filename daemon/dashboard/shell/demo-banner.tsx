/** Stands on every screen of a store that holds the demo season. */
export function DemoBanner() {
  return (
    <p class="demo">
      <b>Invented season.</b> This athlete does not exist; every number here was made by a program.
    </p>
  );
}
