import { against, barred, changed, isItAllowed, mayIHave } from "./answers/allowed.ts";
import { askSources, askValues, howMuchValue } from "./answers/food-values.ts";
import { edibleNames } from "./edible-names.ts";
import type { FoodTalk } from "./model.ts";

const answer: FoodTalk["answer"] = (intent, kitchen, book) => {
  switch (intent.type) {
    case "HowMuchValue":
      return howMuchValue(intent, kitchen, book);
    case "AskValues":
      return askValues(intent, kitchen, book);
    case "AskSources":
      return askSources(kitchen, book);
    case "MayIHave":
      return mayIHave(intent, kitchen, book);
    case "IsItAllowed":
      return isItAllowed(kitchen, book);
  }
};

/** What answers where foods and diets are spoken of. */
export const foodTalk: FoodTalk = { answer, names: edibleNames, against, barred, changed };
