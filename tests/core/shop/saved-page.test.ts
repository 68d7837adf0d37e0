import { describe, expect, it } from "vitest";
import { savedPage } from "../../../core/shop/saved-page.ts";
import { writtenList } from "../../../core/shop/written-list.ts";
import { dish, ingredient, listFor, meal } from "./market.ts";

const evil = `<img src=x onerror='alert("1")'> & co`;

describe("the list as one page", () => {
  it("[B30] has every line with a box, and asks nothing of any network", () => {
    const meals = [meal("Supper", [dish("Soup", ["2 leeks", "5 cloves garlic", "black pepper to taste"])])];
    const page = savedPage(writtenList(listFor(meals), meals), "first");
    expect(page.match(/<input type="checkbox"/g)).toHaveLength(3);
    expect(page).toContain("<b>garlic</b>: 5 cloves, about half a head");
    expect(page).toContain("default-src 'none'");
    expect(page).not.toMatch(/https?:|src=|href=|@import|url\(/);
  });

  it("[B30] writes names as words, whatever stands in a recipe", () => {
    const soup = dish(evil, [{ ...ingredient("1 leek"), item: evil }]);
    const meals = [meal(evil, [soup])];
    const page = savedPage(writtenList(listFor(meals), meals), evil);
    expect(page).not.toContain("<img");
    expect(page).toContain("&lt;img src=x onerror=&#39;alert(&quot;1&quot;)&#39;&gt; &amp; co");
  });
});
