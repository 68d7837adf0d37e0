interface DrawerDoorsProps {
  /** The parts of the drawer: the id of each title, and its words. */
  readonly parts: readonly (readonly [id: string, title: string])[];
}

/** The way to each part of the drawer: it is longer than any screen, and hands are wet. */
export function DrawerDoors({ parts }: DrawerDoorsProps) {
  return (
    <nav class="drawer-doors" aria-label="Parts of this drawer">
      {parts.map(([id, title]) => (
        <button type="button" key={id} class="key key-small" onClick={() => goTo(id)}>
          {title}
        </button>
      ))}
    </nav>
  );
}

function goTo(id: string): void {
  const title = document.getElementById(id);
  title?.scrollIntoView();
  // Who goes on by keyboard goes on from there.
  title?.focus({ preventScroll: true });
}
