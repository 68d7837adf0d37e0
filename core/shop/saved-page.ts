import { buyingCaution, type WrittenLine, type WrittenList, type WrittenSection } from "./written-list.ts";

const SIGNS: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&#39;",
};

const escaped = (text: string): string => text.replace(/[&<>"']/g, (sign) => SIGNS[sign] ?? sign);

/** It may run what stands in it, and fetch nothing from anywhere. */
const policy = "default-src 'none'; style-src 'unsafe-inline'; script-src 'unsafe-inline'";

const styles = `
:root { color-scheme: light dark; --ink: #14202c; --soft: #39434c; --ground: #fbf7ec; --line: #b9b7ac; }
@media (prefers-color-scheme: dark) { :root { --ink: #fbf3e0; --soft: #cfc8b8; --ground: #14181b; --line: #4a565f; } }
* { box-sizing: border-box; }
body { max-width: 44rem; margin: 0 auto; padding: 1rem; background: var(--ground); color: var(--ink);
  font: 1.15rem / 1.3 system-ui, sans-serif; }
h1 { margin: 0 0 0.25rem; font-size: 1.6rem; }
h2 { margin: 1.5rem 0 0.25rem; font-size: 1.1rem; }
p { margin: 0.25rem 0; color: var(--soft); font-size: 1rem; }
ul { display: flex; flex-direction: column; margin: 0; padding: 0; list-style: none; }
li { border-top: 1px solid var(--line); }
li:has(:checked) { order: 1; }
label { display: flex; gap: 0.75rem; align-items: center; min-height: 3.5rem; padding: 0.4rem 0; }
input { flex: none; width: 2rem; height: 2rem; margin: 0 0.25rem; }
:checked + span { text-decoration: line-through; color: var(--soft); }
small { display: block; color: var(--soft); font-size: 0.95rem; }
@media print {
  @page { size: A4 portrait; margin: 12mm; }
  body { max-width: none; padding: 0; background: #fff; color: #000; font-size: 9pt; }
  main { columns: 2; }
  li { break-inside: avoid; }
  h2 { margin-top: 0.5rem; break-after: avoid; }
  label { min-height: 0; padding: 0.1rem 0; }
  input { width: 0.9rem; height: 0.9rem; }
  small { font-size: 8pt; }
}`;

/** Keeps the ticks where the browser lets a saved file keep anything; without it they last as long as the page is open. */
const script = `
const key = document.body.dataset.list;
const boxes = [...document.querySelectorAll("input")];
try {
  const ticked = new Set(JSON.parse(localStorage.getItem(key) || "[]"));
  for (const box of boxes) box.checked = ticked.has(box.name);
} catch {}
addEventListener("change", () => {
  try {
    localStorage.setItem(key, JSON.stringify(boxes.filter((box) => box.checked).map((box) => box.name)));
  } catch {}
});`;

const small = (text: string): string => (text === "" ? "" : `<small>${escaped(text)}</small>`);

function line({ id, name, buy, note, shares }: WrittenLine): string {
  const what = buy === "" ? `<b>${escaped(name)}</b>` : `<b>${escaped(name)}</b>: ${escaped(buy)}`;
  const box = `<input type="checkbox" name="${escaped(id)}">`;
  return `<li><label>${box}<span>${what}${small(note)}${small(shares)}</span></label></li>`;
}

const section = ({ name, lines }: WrittenSection): string =>
  `<section><h2>${escaped(name)}</h2><ul>${lines.map(line).join("")}</ul></section>`;

const told = (name: string, words: readonly string[]): string =>
  words.length === 0 ? "" : `<p><b>${name}:</b> ${escaped(words.join("; "))}.</p>`;

/**
 * The list as one page that needs nothing else: it opens from a file, on a phone too, without this machine or a network.
 * @param id tells this list's ticks from another's
 */
export function savedPage(
  { title, dishes, fridge, useFirst, sections, notNeeded }: WrittenList,
  id: string,
): string {
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>What to buy for ${escaped(title)}</title>
<style>${styles}</style>
</head>
<body data-list="stovecall list ${escaped(id)}">
<h1>What to buy for ${escaped(title)}</h1>
${dishes.length === 0 ? "" : `<p>${escaped(dishes.join("; "))}.</p>`}
${dishes.length === 0 ? "" : `<p>${escaped(dishes.join("; "))}.</p>`}
${fridge.length === 0 ? "" : `<p><b>Left from before:</b> ${escaped(fridge.join(" "))}</p>`}
${told("Use up first", useFirst)}
<main>${sections.map(section).join("\n")}</main>
${told("In the house, and in none of these dishes", notNeeded)}
<p>${escaped(buyingCaution)}</p>
<script>${script}</script>
</body>
</html>
`;
}
