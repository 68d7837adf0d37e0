/**
 * A Vosk model that we made up by hand: it tells low hiss from high hiss and both from quiet, and calls them words.
 * It hears no speech, and says nothing about how well a real model hears; but the engine loads it, takes a list of
 * words, decodes and frees as it does with a real one.
 *
 * - "okay" is a burst of low hiss, "kitchen" one of high hiss, "[unk]" a low one that goes over into a high one.
 *
 * Formats: Kaldi's text form of TransitionModel and AmNnetSimple, OpenFst's binary form of a "vector" transducer; both
 * from memory, and proved by the engine itself, which reads nothing else.
 */
export function whistleModel(graph: "open" | "fixed" = "open"): Readonly<Record<string, Buffer>> {
  return {
    "am/final.mdl": Buffer.from(`${transitions()}${network()}`),
    "conf/mfcc.conf": Buffer.from("--use-energy=false\n--sample-frequency=16000\n--dither=0\n"),
    "conf/model.conf": Buffer.from(
      "--beam=13\n--max-active=2000\n--lattice-beam=4\n--acoustic-scale=1.0\n--frame-subsampling-factor=3\n--endpoint.silence-phones=1\n",
    ),
    ...(graph === "fixed"
      ? { "graph/HCLG.fst": transducer(soundsToWords) }
      : { "graph/HCLr.fst": transducer(soundsToWords), "graph/Gr.fst": transducer(anyWords) }),
    "graph/disambig_tid.int": Buffer.from("100\n"),
    "graph/words.txt": Buffer.from("<eps> 0\n[unk] 1\nkitchen 2\nokay 3\n"),
  };
}

const [unknown, kitchen, okay] = [1, 2, 3] as const;
/** The transition that keeps each sound going; the next number ends it. */
const [quiet, low, high] = [1, 3, 5] as const;

/** Three sounds of one state each. */
function transitions(): string {
  const half = Math.log(0.5).toFixed(6);
  return `<TransitionModel>
<Topology>
<TopologyEntry>
<ForPhones>
1 2 3
</ForPhones>
<State> 0 <PdfClass> 0 <Transition> 0 0.5 <Transition> 1 0.5 </State>
<State> 1 </State>
</TopologyEntry>
</Topology>
<Triples> 3
1 0 0
2 0 1
3 0 2
</Triples>
<LogProbs>
 [ 0 ${Array.from({ length: 6 }, () => half).join(" ")} ]
</LogProbs>
</TransitionModel>
`;
}

/** One layer: the first cepstrum is the loudness, the second is higher where the low tones are louder. */
function network(): string {
  const row = (loudness: number, lowness: number): string =>
    [loudness, lowness, ...Array.from({ length: 11 }, () => 0)].join(" ");
  // The reader takes the space behind a word and then wants the end of the line.
  return `<Nnet3> 
input-node name=input dim=13
component-node name=layer component=layer input=input
output-node name=output input=layer objective=linear

<NumComponents> 1
<ComponentName> layer <FixedAffineComponent> <LinearParams>  [
  ${row(-0.1, 0)}
  ${row(0.1, 0.2)}
  ${row(0.1, -0.2)} ]
<BiasParams>  [ 8 -1.2 -14.8 ]
</FixedAffineComponent>
</Nnet3>
<LeftContext> 0 <RightContext> 0 <Priors>  [ ]
`;
}

type Arc = readonly [input: number, output: number, to: number];

/** Each state's arcs, ordered by what they put out; every state may be the last. */
type Graph = readonly (readonly Arc[])[];

const soundsToWords: Graph = [
  [
    [quiet, 0, 0],
    [low, unknown, 3],
    [high, kitchen, 2],
    [low, okay, 1],
  ],
  [
    [low, 0, 1],
    [quiet, 0, 0],
  ],
  [
    [high, 0, 2],
    [quiet, 0, 0],
  ],
  [
    [low, 0, 3],
    [high, 0, 4],
  ],
  [
    [high, 0, 4],
    [quiet, 0, 0],
  ],
];

const anyWords: Graph = [[unknown, kitchen, okay].map((word): Arc => [word, word, 0])];

function transducer(graph: Graph): Buffer {
  const arcs = graph.reduce((sum, state) => sum + state.length, 0);
  const head = [int32(2_125_659_606), text("vector"), text("standard"), int32(2), int32(0)];
  // Properties: expanded and mutable; the engine finds out the others.
  const counts = [int64(3), int64(0), int64(graph.length), int64(arcs)];
  const states = graph.flatMap((state) => [
    float(0),
    int64(state.length),
    ...state.flatMap(([input, output, to]) => [int32(input), int32(output), float(0.5), int32(to)]),
  ]);
  return Buffer.concat([...head, ...counts, ...states]);
}

function int32(value: number): Buffer {
  const bytes = Buffer.alloc(4);
  bytes.writeInt32LE(value);
  return bytes;
}

function int64(value: number): Buffer {
  const bytes = Buffer.alloc(8);
  bytes.writeBigInt64LE(BigInt(value));
  return bytes;
}

function float(value: number): Buffer {
  const bytes = Buffer.alloc(4);
  bytes.writeFloatLE(value);
  return bytes;
}

function text(value: string): Buffer {
  return Buffer.concat([int32(value.length), Buffer.from(value)]);
}
