/** Where every figure comes from that is not from a label of the cook's own. */
export const valuesSource =
  "USDA National Nutrient Database for Standard Reference, Release 28 (September 2015), US Department of Agriculture";

/** What the figures are not. */
export const valuesCaution =
  "These are averages for raw materials, reckoned from the recipe: your food, its brand, season and salt differ, and " +
  "cooking changes it. This is no medical advice; who eats by " +
  "a clinician's orders asks the clinician, and reads the label of every package.";
