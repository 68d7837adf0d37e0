/** A soup that was worked outside this project from USDA SR28; the grams stand beside its figures in values.test.ts. */
export const CHECK_SOUP = `dish: Check Soup
about: A soup to check sums with.
yield: 4 bowls
ingredients:
  lentils: { item: dry lentils, amount: 1 cup }
  onion: 1, chopped
  carrots: 1 cup, sliced
  celery: 2 stalks
  garlic: 3 cloves
  tomatoes: { item: canned tomatoes, amount: 1 cup, prep: no salt added }
  cumin: { item: cumin seeds, amount: 1 tsp }
  water: 948 g
  lemon-juice: 1 tbsp
steps:
  boil:
    do: Boil everything.
    with: [lentils, onion, carrots, celery, garlic, tomatoes, cumin, water, lemon-juice]
    time: 40 min
`;
