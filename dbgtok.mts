import { transcriberTokens } from "./server/hear/network-files.ts";
import { createSpeller } from "./core/speech/transcribe/speller.ts";
const tk = await transcriberTokens(); const s = createSpeller(tk);
for (const x of ["▁Listen▁kitchen,▁what▁is▁left.", "▁Listen,▁Kitchen.", "▁listen▁kitchen", "▁attention▁pantry"]) console.log(s.spell(x)!.map((k) => tk.texts[k]).join("|"));
