import { parsePronunciation, type Pronunciation } from "./phones.ts";

/**
 * Foods and dishes that English spelling rules get wrong, as cooks say them; common practice, no source.
 * Several ways where cooks differ.
 */
const rows: readonly string[] = [
  "jalapeño: HH AA L AH P EY N Y OW, HH AE L AH P IY N OW, JH AE L AH P IY N OW",
  "jalapeños: HH AA L AH P EY N Y OW Z, HH AE L AH P IY N OW Z",
  "za'atar: Z AA T AA R, Z AA AH T AA R, Z AE T AA R, Z AH AA T ER",
  "gochujang: G OW CH UW JH AA NG, G OW CH AH JH AE NG",
  "freekeh: F R IY K AH, F R IY K EY",
  "tahini: T AH HH IY N IY, T AA HH IY N IY",
  "crème: K R EH M, K R IY M",
  "brûlée: B R UW L EY",
  "harissa: HH AH R IY S AH, HH AE R IH S AH",
  "tempeh: T EH M P EY",
  "edamame: EH D AH M AA M EY",
  "quinoa: K IY N W AA, K W IH N OW AH",
  "açaí: AA S AA IY",
  "miso: M IY S OW",
  "dal: D AA L",
  "dhal: D AA L",
  "naan: N AA N",
  "paneer: P AH N IH R",
  "masala: M AH S AA L AH",
  "garam: G AH R AA M, G EH R AH M",
  "turmeric: T ER M ER IH K, T UW M ER IH K",
  "sumac: S UW M AE K, SH UW M AE K",
  "gnocchi: N Y OW K IY, N OW K IY",
  "bruschetta: B R UW SH EH T AH, B R UW S K EH T AH",
  "ciabatta: CH AH B AA T AH",
  "radicchio: R AH D IY K IY OW",
  "aioli: AY OW L IY",
  "seitan: S EY T AA N",
  "poblano: P OW B L AA N OW",
  "chipotle: CH IH P OW T L EY",
  "ghee: G IY",
  "aquafaba: AA K W AH F AA B AH",
  "thyme: T AY M",
];

/** The list, by word. */
export const foodSounds: ReadonlyMap<string, readonly Pronunciation[]> = new Map(
  rows.map((row) => {
    const [word = "", ways = ""] = row.split(": ");
    return [
      word,
      ways
        .split(", ")
        .map(parsePronunciation)
        .filter((way): way is Pronunciation => way !== null),
    ];
  }),
);
