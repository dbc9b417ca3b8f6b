/** The product's mark: a bar with its plates, which is also the beam of a balance. */
export function Mark() {
  return (
    <svg class="mark" viewBox="0 0 32 22" width="32" height="22" aria-hidden="true">
      <path class="mark-bar" d="M1 7h30v2H1zM5 1h3v14H5zM24 1h3v14h-3zM9.500 4h2v8h-2zM20.500 4h2v8h-2z" />
      <path class="mark-fulcrum" d="M16 10l6 11H10z" />
    </svg>
  );
}
