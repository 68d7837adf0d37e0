import type { HeardFigures } from "./heard-figures.ts";
import { outcomes, type TrialOutcome } from "./listen.ts";

/** Told apart by lightness as well as by hue. */
const fills: Readonly<Record<TrialOutcome, string>> = {
  right: "#2f6f5e",
  asked: "#e0b04c",
  silent: "#d9d4c8",
  beside: "#7a6a9a",
  wrong: "#8c1d18",
};
const [labelWidth, barWidth, rowHeight, gap, legendWidth] = [170, 300, 18, 24, 80];

/** A picture of what sentences came to: a row for each condition, a column for each ear; SVG text. */
export function pictureOf(figures: readonly HeardFigures[]): string {
  const ears = [...new Set(figures.map(({ ear }) => ear))];
  const conditions = [...new Set(figures.map(({ condition }) => condition))];
  const width = labelWidth + Math.max(ears.length * (barWidth + gap), outcomes.length * legendWidth);
  const height = 60 + conditions.length * rowHeight;
  const text = (x: number, y: number, said: string): string => `<text x="${x}" y="${y}">${said}</text>`;
  const xOf = (ear: number): number => labelWidth + ear * (barWidth + gap);
  const parts = [
    ...ears.map((ear, at) => text(xOf(at), 18, `ear: ${ear}`)),
    ...outcomes.map(
      (outcome, at) =>
        `<rect x="${labelWidth + at * legendWidth}" y="26" width="10" height="10" fill="${fills[outcome]}"/>` +
        text(labelWidth + at * legendWidth + 14, 35, outcome),
    ),
    ...conditions.flatMap((condition, row) => [
      text(4, 60 + row * rowHeight, condition),
      ...ears.flatMap((ear, at) =>
        figures
          .filter((each) => each.ear === ear && each.condition === condition)
          .flatMap((each) => bars(each, xOf(at), 49 + row * rowHeight)),
      ),
    ]),
  ];
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" font-family="sans-serif" font-size="12">`,
    `<rect width="${width}" height="${height}" fill="#fbf8f1"/>`,
    ...parts,
    "</svg>",
    "",
  ].join("\n");
}

function bars(figures: HeardFigures, left: number, top: number): readonly string[] {
  let x = left;
  return outcomes.flatMap((outcome) => {
    const wide = (barWidth * figures[outcome]) / figures.sentences;
    x += wide;
    return wide === 0
      ? []
      : [
          `<rect x="${(x - wide).toFixed(1)}" y="${top}" width="${wide.toFixed(1)}" height="13" fill="${fills[outcome]}"/>`,
        ];
  });
}
