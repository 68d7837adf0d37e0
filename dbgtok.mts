import { transcriberTokens } from "./server/hear/network-files.ts";
const { texts, first, last } = await transcriberTokens();
const n = (r: RegExp) => texts.filter((t) => r.test(t)).length;
console.log(texts.length, first, last, texts.slice(0, 6), "plain", n(/^▁?[A-Za-z']+$/), "lower-or-Capital", n(/^▁?[A-Za-z']?[a-z']*$/), "ascii", n(/^[▁ -~]+$/), "latin1", n(/^▁?[A-Za-z'À-ÿ]+$/), "punct", n(/^▁?[^A-Za-z]{1,2}$/u) );
