/**
 * Words for the frames of chatter-frames-table.ts, by the name of the slot they fill. Kitchen words are among them on purpose:
 * what is not said to the caller is full of them.
 */
const written = {
  name: `Ludmila|Gregor|Philippa|Casimir|Winifred|Barnaby|Octavia|Rupert|Sabine|Ambrose|Yolanda|Cedric
    |Henrietta|Malcolm|Zoe|Ottoline|Fergus|Beatrix|Nathaniel|Imogen|Marta|Jonas|Edith|Pavel|Ruben|Ines
    |Tobias|Greta|Milo|Agnes|Oskar|Lena|Hugo|Dora|Felix|Nora|Anton|Clara|Viktor|Ida|Bruno|Stella|Leo|Mira
    |Karl|Judith|Emil|Rosa|Theo|Vera|Christian|Kirsten|Kitty|Oakley|Nick|Dan|Rick|Stefan|Tina|Martin`,
  kin: `the lodger|my niece|our accountant|his stepfather|the twins|a colleague of mine|her godmother
    |my dentist|the headmistress|an old flame|the night porter|his nephew|the ticket inspector
    |our babysitter|her chauffeur|my sister|my brother|your uncle|our neighbour|my grandmother
    |the boy next door|her husband|his mother|my old teacher|the woman from the bakery|the man upstairs
    |our cousin|the new doctor|my father|your aunt|the girl from the shop|the plumber|the caretaker|my boss
    |the postman|the choir leader|the gardener|my daughter|their son|the landlord`,
  place: `the embassy|the observatory|the fire station|the courthouse|the tannery|the greenhouse
    |the cemetery|the brewery|the abbey|the playground|the tunnel|the windmill|the cable car|the stadium
    |the monument|the boathouse|the clinic|the nursery|the orchard|the viaduct|the station|the harbour
    |the old mill|the library|the market|the hospital|the school|the bridge|the town hall|the swimming pool
    |the post office|the church|the bus stop|the car park|the football ground|the theatre|the bakery
    |the river|the allotment|the castle|the museum|the ferry|the airport|the garage|the village shop
    |the forest|the lake|the campsite|the hotel|the court|the bank|the lighthouse|the quarry|the farm
    |the tower|the cinema|the dentist`,
  town: `Copperhill|Windle|Marrow Heath|Saint Orban|Brackenridge|Tidewell|Elmsworth|Gallowgate|Cinder Vale
    |Hollow Oak|Ravensmoor|Quillport|Harrow Bay|Lindenfeld|Upper Marsh|Stonebridge|Kestrel Point|Old Ferry
    |Saltmouth|Birkdale|Nine Elms|Weston Moor|Greyhaven|Pinewood|Millbrook|Ashcombe|Fenwick Cross|Long Acre
    |Redcliff|Thornby|Larkhill|Sandwell`,
  room: `the kitchen|the hall|the cellar|the garden|the bathroom|the attic|the living room|the pantry
    |the shed|the kitchen|the spare room|the balcony|the dining room|the porch|the laundry room|the study
    |the little kitchen|the back kitchen`,
  kitchenThing: `colander|ladle|waffle iron|cake tin|gravy boat|corkscrew|whisk|tin opener|casserole|grater
    |mixing bowl|cooker hood|kitchen stool|kitchen curtain|oven shelf|pressure cooker|oven|timer|stove
    |kettle|kitchen clock|oven door|big pan|toaster|fridge|kitchen table|bread knife|kitchen radio|egg timer
    |salad bowl|chopping board|kitchen window|tea towel|baking tray|oven glove|kitchen scales|pepper mill
    |soup pot|kitchen drawer|freezer|dishwasher|rolling pin|kitchen floor|kitchen light|frying pan
    |wooden spoon|kitchen door|old timer`,
  thing: `typewriter|accordion|kite|hammock|barometer|microscope|sledge|helmet|bracelet|wig|thermos|anchor
    |saddle|compass|puppet|crutch|stapler|mattress|vase|tapestry|catapult|megaphone|unicycle|chandelier
    |doormat|lawnmower|padlock|binoculars case|snow globe|rocking horse|umbrella|ladder|bicycle|suitcase
    |newspaper|parcel|lamp|guitar|camera|wallet|key|jacket|carpet|mirror|piano|tent|letter|ticket|notebook
    |bucket|candle|violin|raincoat|calendar|computer|telephone|blanket|hammer|globe|basket|magazine|scarf
    |telescope|armchair|bookshelf|printer|photograph|chessboard|postcard|rucksack|trumpet|wheelbarrow`,
  food: `spinach|rhubarb|marzipan|trout|celery|polenta|apricots|sauerkraut|pumpkin|ginger|oatcakes|chestnuts
    |parsley|tomatoes|aubergines|cranberries|pickled beetroot|custard|barley|sardines|goose fat|gooseberries
    |radishes|hazelnuts|soup|bread|rice|butter|cheese|garlic|carrots|potatoes|onions|honey|flour|chicken
    |pears|cabbage|salad|lemon juice|dough|beans|pancakes|gravy|apple cake|olive oil|cinnamon|plum jam
    |mushrooms|fish pie|lentils|noodles|cauliflower|walnuts|sour cream|flatbreads|pepper|salt|sugar|eggs
    |milk|yoghurt|porridge|cumin|dumplings|peas|leeks|raisins|mustard`,
  animal: `camel|penguin|badger|otter|crow|peacock|lizard|lobster|beetle|llama|weasel|swan|walrus|bat|mole
    |sparrow|frog|giraffe|moose|salmon|cat|dog|hamster|blackbird|donkey|goat|hedgehog|rabbit|parrot|tortoise
    |squirrel|goose|pony|duck|fox|owl|kitten|chicken`,
  job: `plasterer|midwife|astronaut|beekeeper|sculptor|notary|hairdresser|plumber|detective|bishop|dancer
    |boxer|forester|glazier|geologist|jockey|welder|puppeteer|ambassador|violinist|magician|bookmaker
    |archaeologist|roofer|pharmacist|carpenter|nurse|pilot|lawyer|painter|baker|teacher|sailor|librarian
    |mechanic|chemist|farmer|journalist|tailor|surgeon|locksmith|translator|conductor|engineer|vet|potter
    |bookbinder|shepherd|optician|stonemason`,
  number: `two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|thirteen|fourteen|fifteen|sixteen
    |seventeen|eighteen|nineteen|twenty|twenty five|thirty|forty|forty five|fifty|sixty|seventy|eighty
    |ninety`,
  ordinal: `first|second|third|fourth|fifth|sixth|tenth|next|last|next|other`,
  span: `five minutes|ten minutes|fifteen minutes|fifty minutes|twenty minutes|half an hour|an hour
    |two hours|three days|a week|six weeks|a few seconds|forty minutes|twelve minutes|thirty minutes
    |an hour and a half|nine months|four years|a minute or two|ninety seconds|thirteen minutes
    |eighteen minutes|a quarter of an hour`,
  clock: `half past seven|six o'clock|a quarter to nine|ten past four|noon|midnight|eight in the morning
    |five to three|half past twelve|seven sharp|twenty past two|nine in the evening|a quarter past eleven
    |four thirty`,
  day: `Monday|Tuesday|Wednesday|Thursday|Friday|Saturday|Sunday|the weekend|tomorrow|the day after tomorrow
    |next week|the holidays|Easter|New Year|the first of May|his birthday`,
  past: `during the strike|in her student days|at the jubilee|under cover of night|the summer we moved
    |one wet Thursday|at the turn of the century|in the year of the flood|on their honeymoon
    |before the bypass was built|last Monday|yesterday|last week|on Sunday|two years ago|the other day
    |this morning|last night|in the spring|last summer|on Friday evening|a month ago|when it snowed
    |before the war|after the concert|in the seventies|once|that winter`,
  season: `spring|summer|autumn|winter|January|February|March|April|June|July|August|September|October
    |November|December`,
  weather: `rain|fog|sleet|sunshine|thunder|drizzle|frost|hail|a light breeze|a gale|low cloud|snow
    |a heat wave|ground mist`,
  quality: `mysterious|generous|clumsy|elegant|bitter|splendid|modest|fragile|hopeless|brilliant|awkward
    |sincere|reckless|delicate|pompous|gloomy|wonderful|miserable|peculiar|trustworthy|unusual
    |stubborn as a mule|vulgar|graceful|unbearable|strange|lovely|dreadful|quiet|expensive|useful|funny
    |heavy|careful|honest|clever|slow|bright|cold|empty|noisy|perfect|simple|dangerous|polite|gentle|famous
    |lazy|patient|proud|stubborn|warm|tidy|odd|boring|marvellous|ridiculous`,
  look: `velvet|transparent|purple|checked|inflatable|antique|rotten|gigantic|pink|knitted|foldable
    |scratched|plastic|marble|frozen|folded|waterproof|enamelled|orange|patched|old|new|blue|red|green
    |yellow|broken|little|huge|wooden|rusty|golden|striped|second hand|dusty|borrowed|silver|crooked|brown
    |heavy|shiny|square|narrow|painted|leather|spare|dented|hand made`,
  mood: `anxious|hopeful|sulky|thrilled|embarrassed|relaxed|suspicious|melancholy|impatient|confused
    |enthusiastic|bitter|dizzy|exhausted|frightened|smug|happy|tired|cross|nervous|delighted|bored|hungry
    |worried|surprised|ashamed|calm|excited|jealous|lonely|grateful|puzzled|restless|furious|cheerful
    |homesick|curious|sleepy`,
  how: `backwards|on tiptoe|under protest|with great ceremony|like a thief|against all advice|on horseback
    |through clenched teeth|by candlelight|without permission|in broad daylight|as if nothing had happened
    |twice a day|for the sake of peace|on an empty stomach|in three languages|out of spite|free of charge
    |at the top of his voice|with a shrug|slowly|quietly|at once|carefully|on purpose|by accident|all day
    |in the dark|without a word|with both hands|for nothing|louder than before|faster than I can
    |again and again|in a whisper|on foot|in secret|by heart|upside down|in the rain|after all|just in time
    |with a smile|step by step|in a hurry|too late|far too soon|over and over`,
  did: `swallowed a fly|sued the neighbours|joined the navy|fainted in church|photographed an eclipse
    |tripped over the carpet|invented a board game|shaved off his beard|adopted a greyhound
    |inherited a vineyard|confessed everything|flooded the cellar|married a dentist|failed the exam
    |borrowed a tractor|escaped through the skylight|translated the poem|crashed into a hedge
    |smuggled a parrot|whistled at the bishop|sharpened the axe|embroidered a cushion|exaggerated a little
    |juggled with oranges|resigned from the club|shovelled the snow|bargained over a rug|dyed the curtains
    |walked home|missed the bus|lost the key|wrote a letter|sold the car|fell asleep|broke the window
    |painted the fence|found a coin|learned to swim|moved to the coast|forgot the time|told a story
    |opened a shop|planted a tree|burned the toast|won the race|stopped smoking|turned off the light
    |baked a cake|played the piano|caught a cold|climbed the tower|waited for hours|left the oven on
    |cleaned the kitchen|stirred the paint|set the table|called the doctor|bought a boat
    |stopped at the corner|read the whole book|cut the hedge|washed the car|answered the door
    |cancelled the trip|took the train|started a choir|repaired the clock|counted to fifty|went back to bed
    |skipped a page|repeated the question|paused for breath`,
  does: `plays the bassoon|argues with the newspaper|irons on Mondays|votes for nobody
    |distrusts the telephone|writes limericks|photographs mushrooms|breeds canaries|snores like a walrus
    |quotes philosophers|juggles with oranges|exaggerates wildly|believes in ghosts|refuses to wear socks
    |paints watercolours|hoards string|meditates before dawn|cheats at cards|sneezes at weddings
    |translates poetry|fears thunder|polishes the brass|haggles over pennies|rides a tandem|walks to work
    |sings in the bath|keeps bees|hates onions|collects stamps|talks too fast|sleeps till noon
    |reads at breakfast|never stops talking|teaches chemistry|forgets every name|wakes the whole house
    |grows tomatoes|lives alone|leaves the timer on|cooks on Sundays|drives too close|swims in the lake
    |knits socks|repairs clocks|speaks four languages|sets the table wrong|starts things and stops half way
    |turns everything off|drinks cold coffee|wants the last word|sits next to the oven
    |does the next thing first|repeats every joke|plays the same song`,
  because: `because the bridge had collapsed|because an uncle had died abroad|because the cheque bounced
    |because his trousers had split|because somebody had changed the locks|because the printer was jammed
    |because the judge was biased|because pollen makes her sneeze|because the hotel was overbooked
    |because a fuse had blown|because the tide was coming in|because the violinist had fainted
    |because wolves had been sighted|because the passport was out of date
    |because gossip travels faster than truth|because the scaffolding swayed
    |because the ferry does not sail in fog|because the contract was in Latin|because his mother disapproved
    |because the brakes were worn|because the road was closed|because nobody had told her
    |because it was cheaper|because of the rain|because the lift had stopped|because the timer never rang
    |because he could not find his glasses|because the oven was still warm|because they had run out of milk
    |because we were fifteen minutes late|because the children were asleep
    |because she wanted to be done by noon|because the next train was full|because I had promised
    |because the music got louder|because there was no time left|because the shop shuts at six
    |because it was the only one left|because of the noise from the kitchen|because his phone was off
    |because the dog had eaten it|because nobody knew how much it cost|because the doctor said so
    |because we had started too early|because the clock in the kitchen is slow|because they never listen
    |because it had stopped snowing|because my hands were wet|because that is what people do
    |because there were five minutes to go|because the step is loose|because the man had a louder voice`,
  andThen: `and the audience gasped|and the vicar pretended not to notice|and an ambulance was called
    |and we slept in the barn|and the headline was enormous|and the parrot repeated it for weeks
    |and the insurance refused to pay|and the mayor apologised|and somebody threw a tomato
    |and the ceiling came down|and they named a street after him|and the whole orchestra walked out
    |and our luggage went to another continent|and the jury wept|and the soup was returned untouched
    |and the moon rose over the harbour|and the horses bolted|and the police took fingerprints
    |and everyone blamed the weather|and the choir sang regardless|and then the lights went out
    |and nobody said a word|and that was that|and we laughed until we cried|and the next day it was gone
    |and I have not seen him since|and she still talks about it|and he paid for everything
    |and it took fifty minutes|and everybody went home happy|and the whole street came out to look
    |and I said no|and the cat came back by itself|and we stopped for coffee on the way
    |and there was nothing left to do|and the kitchen smelled of smoke|and somebody shouted stop
    |and I was done with it|and it got louder every minute|and then it was my turn
    |and the bill came to ninety|and they set off again at noon|and my phone rang|and he wanted more
    |and it never happened again|and the oven had been on all night|and we were the last to leave
    |and the timer was still ticking|and in the end it was fine|and the train had gone
    |and the water was cold|and they started all over again|and it went on for fifteen minutes`,
  but: `but the signature was forged|but the maths did not add up|but the rumour persisted
    |but her brother disagreed violently|but patience was never his strength|but the map was upside down
    |but gravity won|but the evidence had vanished|but the microphone was dead|but pride would not allow it
    |but the ladder was too short|but the witness had moved abroad|but the cake had already been cut
    |but the recipe was a secret|but common sense prevailed|but the engine coughed and died
    |but the fine was paid|but luck was on our side|but nobody listened|but I am not so sure
    |but it was too late by then|but that is another story|but she would not hear of it
    |but the next one was better|but only for ten minutes|but you know what he is like|but it did not help
    |but the oven does not get hot enough|but we can always go back|but I would do it again
    |but it stopped after a while|but there was no more room|but not in my kitchen|but the price had doubled
    |but I forgot to ask|but it looked nice|but he had to start again from the beginning
    |but nobody set the alarm|but they were done before us|but I like it louder|but the second half was dull
    |but the neighbours complained|but you cannot please everybody|but time will tell`,
  when: `during the earthquake|under the old king|after the divorce|in the middle of the sermon
    |before electricity|between two trains|when the circus was in town|while the anaesthetic wore off
    |at low tide|during the eclipse|since the merger|on the eve of the election|while the band tuned up
    |whenever the moon is full|after the flood|by the time the police arrived|as the curtain fell
    |when the dam burst|over a cup of tea|in the queue|when the bell rang|as soon as it was light
    |before the guests came|after the first hour|while the water was boiling|when I was ten
    |until the money ran out|when the wind turned|whenever it rains|while we were talking|before breakfast
    |when the oven was new|after the next stop|as the sun went down|when the timer went off
    |until the music stopped|when nobody was looking|long before you were born|after they had eaten
    |while the kitchen was being painted|when the snow had melted|the moment he came in|just as I was done
    |after all the others had gone`,
  opinion: `give or take|for better or worse|between you and me|in a manner of speaking|I could have sworn
    |mark my words|needless to say|in all fairness|heaven knows why|if memory serves|with all due respect
    |as luck would have it|so to speak|touch wood|according to the experts|broadly speaking|funnily enough
    |in theory|come what may|take it from me|that is what I heard|if you ask me|as far as I know
    |or so they say|which is a pity|would you believe it|I suppose|to be honest|in my opinion
    |and quite right too|at least on paper|more or less|as usual|of all people|believe me
    |not that it matters|thank goodness|of course|as you can imagine|strange as it sounds
    |for what it is worth`,
} as const;

/** The name of a slot. */
export type ChatterSlot = keyof typeof written;

const slots = Object.keys(written) as ChatterSlot[];

/** What may stand in each slot. */
export const chatterWords: ReadonlyMap<string, readonly string[]> = new Map(
  slots.map((slot) => [slot, written[slot].split("|").map((words) => words.trim())]),
);
