import { describe, expect, it } from "vitest";
import { tokenTree, type TokenTree } from "../../../../core/speech/transcribe/token-tree.ts";

const texts = [
  "<unk>",
  "<s>",
  "</s>",
  "▁Kit",
  "▁kit",
  "kit",
  "chen",
  ",",
  ".",
  "-",
  "▁",
  "▁,",
  "ñ",
  "'",
  "1",
  "<0xC3>",
  "(",
  "\n",
  "",
  "½)",
];
const tree = tokenTree({ texts, first: 1, last: 2 });

const at = (characters: string): readonly string[] => {
  const node = [...characters].reduce<TokenTree | undefined>((each, next) => each?.next.get(next), tree);
  return (node?.tokens ?? []).map((token) => texts[token] ?? "");
};

const all = ({ tokens, next }: TokenTree): readonly number[] => [
  ...tokens,
  ...[...next.values()].flatMap((child) => all(child)),
];

describe("the tree of tokens", () => {
  it("[V51] tokens lie at the characters that they add, whatever their case", () => {
    expect(at(" kit")).toEqual(["▁Kit", "▁kit"]);
    expect(at("kit")).toEqual(["kit"]);
    expect(at("chen")).toEqual(["chen"]);
    expect(at("ñ")).toEqual(["ñ"]);
    expect(at("'")).toEqual(["'"]);
    expect(at("1")).toEqual(["1"]);
  });

  it("[V51] whatever parts words is one space", () => {
    expect(at(" ")).toEqual([",", ".", "-", "▁", "▁,"]);
  });

  it("[V51] marks, brackets, half letters, line breaks and nothing at all are left out", () => {
    const left = all(tree).map((token) => texts[token]);
    expect(left).toHaveLength(12);
    for (const text of ["<unk>", "<s>", "</s>", "<0xC3>", "(", "\n", "", "½)"])
      expect(left).not.toContain(text);
  });
});
