/** Where the page asks what is known of foods and diets: GET, answered with a `PackedFoodBook` or `{ error }`. */
export const foodsPath = "/api/foods";
