/**
 * Kitchen words that the bundled synthesiser misreads (heard by its printed phones), each spelt so that it says them
 * as an American cook does. Found by running the engine over the words; what it says well is not listed.
 */
const respellings: ReadonlyMap<string, string> = new Map([
  ["aioli", "eye oh lee"],
  ["al dente", "all dentay"],
  ["baba ganoush", "baba guh noosh"],
  ["bechamel", "bay sha mel"],
  ["brunoise", "broon woz"],
  ["chickpea", "chick pea"],
  ["chipotle", "chip oat lay"],
  ["coulis", "coo lee"],
  ["couscous", "coose coose"],
  ["creme fraiche", "krem fresh"],
  ["dal", "dahl"],
  ["edamame", "edda mah may"],
  ["en papillote", "on pappy yote"],
  ["fraiche", "fresh"],
  ["ganache", "guh nosh"],
  ["gnocchi", "nyokee"],
  ["guajillo", "gwah hee yo"],
  ["habanero", "hah ban yair oh"],
  ["herbes de provence", "airb duh pro vonce"],
  ["jalapeno", "hah la pain yo"],
  ["jalapenos", "hah la pain yoze"],
  ["jicama", "hick a mah"],
  ["mise en place", "meez on plass"],
  ["puree", "pew ray"],
  ["pureed", "pew raid"],
  ["purees", "pew raise"],
  ["pureeing", "pew ray ing"],
  ["quinoa", "keen wah"],
  ["ratatouille", "rat a too ee"],
  ["saute", "so tay"],
  ["sauteed", "so tayed"],
  ["sauteing", "so tay ing"],
  ["seitan", "say tahn"],
  ["tagine", "tah jean"],
  ["tempeh", "tem pay"],
  ["tomatillo", "toma tee yo"],
  ["tomatillos", "toma tee yoze"],
  ["worcestershire", "wooster sheer"],
]);

const longestFirst = [...respellings.keys()].sort((a, b) => b.length - a.length);
const pattern = new RegExp(`\\b(?:${longestFirst.join("|")})\\b`, "gi");

/** @param text without accents; the case of a listed word is lost, which no ear hears */
export function respell(text: string): string {
  return text.replace(pattern, (word) => respellings.get(word.toLowerCase()) ?? word);
}
