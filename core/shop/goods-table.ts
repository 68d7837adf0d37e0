const food =
  "onions; red onions; scallions; garlic; ginger; potatoes; sweet potatoes; carrots; celery; leeks; tomatoes; cucumbers; " +
  "bell peppers; chilies; mushrooms; spinach; kale; lettuce; cabbage; red cabbage; broccoli; cauliflower; zucchini; " +
  "eggplant; squash; pumpkin; beets; radishes; green beans; peas; corn; parsley; cilantro; basil; mint; dill; thyme; " +
  "rosemary; apples; pears; bananas; oranges; lemons; limes; grapes; berries; strawberries; blueberries; raspberries; " +
  "plums; peaches; melon; pineapple; mangoes; avocados; dates; raisins; prunes; bread; flatbread; tortillas; flour; " +
  "whole wheat flour; chickpea flour; cornstarch; oats; rice; brown rice; barley; quinoa; bulgur; couscous; pasta; " +
  "noodles; lentils; red lentils; split peas; chickpeas; kidney beans; black beans; white beans; canned tomatoes; " +
  "tomato paste; vegetable broth; milk; soy milk; oat milk; coconut milk; yogurt; butter; cheese; cream; eggs; tofu; " +
  "chicken; fish; olive oil; vegetable oil; vinegar; cider vinegar; mustard; soy sauce; tahini; peanut butter; honey; " +
  "sugar; brown sugar; maple syrup; jam; baking powder; baking soda; yeast; salt; pepper; black pepper; cumin; " +
  "coriander; paprika; turmeric; cinnamon; nutmeg; curry powder; oregano; bay leaves; vanilla; almonds; walnuts; " +
  "cashews; peanuts; sunflower seeds; sesame seeds; flax seeds; coffee; tea; apple juice; orange juice";

const household =
  "kitchen paper; paper towels; foil; baking paper; freezer bags; trash bags; dish soap; sponges; dish towels; matches; " +
  "candles; napkins; toilet paper; soap; laundry soap; batteries; light bulbs";

/** What most households buy at times, as it is called when it is missing: common practice, no source. */
export const goods: readonly string[] = `${food}; ${household}`.split("; ");
