/** Where the page asks for the list of what to buy: POST a `BuyingRequest`, answered with `BuyingAnswer` or `{ error }`. */
export const buyingPath = "/api/buying";
