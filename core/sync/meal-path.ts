/** Where the page asks for a meal before it is begun: POST a `MealRequest`, answered with a `CookingMeal` or `{ error }`. */
export const mealPath = "/api/meal";
