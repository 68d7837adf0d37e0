/** What is said with every check. */
export const checkCaution =
  "This is no medical advice: it holds the recipe against what was written down in the diet, and packets, portions " +
  "and people differ. Who eats by a clinician's orders asks the clinician, and an allergy needs the packet.";
