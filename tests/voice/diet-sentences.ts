import type { SentenceGroup } from "./sentence-group.ts";

/** What is asked of food values and diets, and how much is made. */
export const dietSentences: SentenceGroup = {
  name: "diet",
  moment: "busy",
  sentences: [
    "may i have rice today",
    "can i eat grains this week",
    "is the soup allowed",
    "does my diet allow fruit juice",
    "am i allowed any tree nuts",
    "is everything allowed",
    "how much sodium is in a bowl of the soup",
    "how many calories are in the salad",
    "how much potassium is in the whole meal",
    "how much protein did i have today",
    "tell me the food values of the soup",
    "where do the figures come from",
    "make the salad for six",
    "i have only two hundred grams of lentils",
    "what can i use instead of the blender",
  ],
};
