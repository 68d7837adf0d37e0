/**
 * Patties that are fried two at a time or baked on one tray: 20 to 30 minutes a batch either way. A check value,
 * common practice, no source.
 */
export const PATTIES = `dish: Bean Patties
says: [patties]
about: Six patties for a test.
yield: 6 patties
ingredients:
  patties: 6, shaped
steps:
  shape-the-patties:
    do: Shape the patties.
    with: patties
    time: 5 min
  cook-the-patties:
    way: in a pan
    do: Fry the patties.
    hands: off
    time: 20-30 min
    until: the middle of each is at 165 F
    attend:
      after 10 min: Turn the patties.
    batch: 6 patties, 2 at a time
    needs: { burner: 1 }
    hold: 2 h
    or:
      in the oven:
        do: Bake the patties on one tray.
        hands: off
        time: 20-30 min
        batch: 6 patties, 6 at a time
        needs: { oven: 400 F }
  plate-the-patties:
    do: Plate the patties.
    time: 2 min
`;
