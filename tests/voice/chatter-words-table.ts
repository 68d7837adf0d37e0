/**
 * Words for the frames of chatter-table.ts, by the name of the slot they fill. Kitchen words are among them on purpose:
 * what is not said to the caller is full of them.
 */
const written = {
  name: `Marta|Jonas|Edith|Pavel|Ruben|Ines|Tobias|Greta|Milo|Agnes|Oskar|Lena|Hugo|Dora|Felix|Nora|Anton|Clara|Viktor|Ida
    |Bruno|Stella|Leo|Mira|Karl|Judith|Emil|Rosa|Theo|Vera|Christian|Kirsten|Kitty|Oakley|Nick|Dan|Rick|Stefan|Tina|Martin`,
  kin: `my sister|my brother|your uncle|our neighbour|my grandmother|the boy next door|her husband|his mother|my old teacher
    |the woman from the bakery|the man upstairs|our cousin|the new doctor|my father|your aunt|the girl from the shop
    |the plumber|the caretaker|my boss|the postman|the choir leader|the gardener|my daughter|their son|the landlord`,
  place: `the station|the harbour|the old mill|the library|the market|the hospital|the school|the bridge|the town hall
    |the swimming pool|the post office|the church|the bus stop|the car park|the football ground|the theatre|the bakery
    |the river|the allotment|the castle|the museum|the ferry|the airport|the garage|the village shop|the forest|the lake
    |the campsite|the hotel|the court|the bank|the lighthouse|the quarry|the farm|the tower|the cinema|the dentist`,
  town: `Harrow Bay|Lindenfeld|Upper Marsh|Stonebridge|Kestrel Point|Old Ferry|Saltmouth|Birkdale|Nine Elms|Weston Moor
    |Greyhaven|Pinewood|Millbrook|Ashcombe|Fenwick Cross|Long Acre|Redcliff|Thornby|Larkhill|Sandwell`,
  room: `the kitchen|the hall|the cellar|the garden|the bathroom|the attic|the living room|the pantry|the shed|the kitchen
    |the spare room|the balcony|the dining room|the porch|the laundry room|the study|the little kitchen|the back kitchen`,
  kitchenThing: `oven|timer|stove|kettle|kitchen clock|oven door|big pan|toaster|fridge|kitchen table|bread knife|kitchen radio
    |egg timer|salad bowl|chopping board|kitchen window|tea towel|baking tray|oven glove|kitchen scales|pepper mill|soup pot
    |kitchen drawer|freezer|dishwasher|rolling pin|kitchen floor|kitchen light|frying pan|wooden spoon|kitchen door|old timer`,
  thing: `umbrella|ladder|bicycle|suitcase|newspaper|parcel|lamp|guitar|camera|wallet|key|jacket|carpet|mirror|piano|tent
    |letter|ticket|notebook|bucket|candle|violin|raincoat|calendar|computer|telephone|blanket|hammer|globe|basket|magazine
    |scarf|telescope|armchair|bookshelf|printer|photograph|chessboard|postcard|rucksack|trumpet|wheelbarrow`,
  food: `soup|bread|rice|butter|cheese|garlic|carrots|potatoes|onions|honey|flour|chicken|pears|cabbage|salad|lemon juice|dough
    |beans|pancakes|gravy|apple cake|olive oil|cinnamon|plum jam|mushrooms|fish pie|lentils|noodles|cauliflower|walnuts
    |sour cream|flatbreads|pepper|salt|sugar|eggs|milk|yoghurt|porridge|cumin|dumplings|peas|leeks|raisins|mustard`,
  animal: `cat|dog|hamster|blackbird|donkey|goat|hedgehog|rabbit|parrot|tortoise|squirrel|goose|pony|duck|fox|owl|kitten|chicken`,
  job: `carpenter|nurse|pilot|lawyer|painter|baker|teacher|sailor|librarian|mechanic|chemist|farmer|journalist|tailor|surgeon
    |locksmith|translator|conductor|engineer|vet|potter|bookbinder|shepherd|optician|stonemason`,
  number: `two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|thirteen|fourteen|fifteen|sixteen|seventeen|eighteen
    |nineteen|twenty|twenty five|thirty|forty|forty five|fifty|sixty|seventy|eighty|ninety`,
  ordinal: `first|second|third|fourth|fifth|sixth|tenth|next|last|next|other`,
  span: `five minutes|ten minutes|fifteen minutes|fifty minutes|twenty minutes|half an hour|an hour|two hours|three days|a week
    |six weeks|a few seconds|forty minutes|twelve minutes|thirty minutes|an hour and a half|nine months|four years
    |a minute or two|ninety seconds|thirteen minutes|eighteen minutes|a quarter of an hour`,
  clock: `half past seven|six o'clock|a quarter to nine|ten past four|noon|midnight|eight in the morning|five to three
    |half past twelve|seven sharp|twenty past two|nine in the evening|a quarter past eleven|four thirty`,
  day: `Monday|Tuesday|Wednesday|Thursday|Friday|Saturday|Sunday|the weekend|tomorrow|the day after tomorrow|next week
    |the holidays|Easter|New Year|the first of May|his birthday`,
  past: `last Monday|yesterday|last week|on Sunday|two years ago|the other day|this morning|last night|in the spring|last summer
    |on Friday evening|a month ago|when it snowed|before the war|after the concert|in the seventies|once|that winter`,
  season: `spring|summer|autumn|winter|January|February|March|April|June|July|August|September|October|November|December`,
  weather: `rain|fog|sleet|sunshine|thunder|drizzle|frost|hail|a light breeze|a gale|low cloud|snow|a heat wave|ground mist`,
  quality: `strange|lovely|dreadful|quiet|expensive|useful|funny|heavy|careful|honest|clever|slow|bright|cold|empty|noisy|perfect
    |simple|dangerous|polite|gentle|famous|lazy|patient|proud|stubborn|warm|tidy|odd|boring|marvellous|ridiculous`,
  look: `old|new|blue|red|green|yellow|broken|little|huge|wooden|rusty|golden|striped|second hand|dusty|borrowed|silver|crooked
    |brown|heavy|shiny|square|narrow|painted|leather|spare|dented|hand made`,
  mood: `happy|tired|cross|nervous|delighted|bored|hungry|worried|surprised|ashamed|calm|excited|jealous|lonely|grateful|puzzled
    |restless|furious|cheerful|homesick|curious|sleepy`,
  how: `slowly|quietly|at once|carefully|on purpose|by accident|all day|in the dark|without a word|with both hands|for nothing
    |louder than before|faster than I can|again and again|in a whisper|on foot|in secret|by heart|upside down|in the rain
    |after all|just in time|with a smile|step by step|in a hurry|too late|far too soon|over and over`,
  did: `walked home|missed the bus|lost the key|wrote a letter|sold the car|fell asleep|broke the window|painted the fence
    |found a coin|learned to swim|moved to the coast|forgot the time|told a story|opened a shop|planted a tree|burned the toast
    |won the race|stopped smoking|turned off the light|baked a cake|played the piano|caught a cold|climbed the tower
    |waited for hours|left the oven on|cleaned the kitchen|stirred the paint|set the table|called the doctor|bought a boat
    |stopped at the corner|read the whole book|cut the hedge|washed the car|answered the door|cancelled the trip|took the train
    |started a choir|repaired the clock|counted to fifty|went back to bed|skipped a page|repeated the question|paused for breath`,
  does: `walks to work|sings in the bath|keeps bees|hates onions|collects stamps|talks too fast|sleeps till noon|reads at breakfast
    |never stops talking|teaches chemistry|forgets every name|wakes the whole house|grows tomatoes|lives alone
    |leaves the timer on|cooks on Sundays|drives too close|swims in the lake|knits socks|repairs clocks|speaks four languages
    |sets the table wrong|starts things and stops half way|turns everything off|drinks cold coffee|wants the last word
    |sits next to the oven|does the next thing first|repeats every joke|plays the same song`,
  because: `because the road was closed|because nobody had told her|because it was cheaper|because of the rain
    |because the lift had stopped|because the timer never rang|because he could not find his glasses
    |because the oven was still warm|because they had run out of milk|because we were fifteen minutes late
    |because the children were asleep|because she wanted to be done by noon|because the next train was full
    |because I had promised|because the music got louder|because there was no time left|because the shop shuts at six
    |because it was the only one left|because of the noise from the kitchen|because his phone was off
    |because the dog had eaten it|because nobody knew how much it cost|because the doctor said so
    |because we had started too early|because the clock in the kitchen is slow|because they never listen
    |because it had stopped snowing|because my hands were wet|because that is what people do
    |because there were five minutes to go|because the step is loose|because the man had a louder voice`,
  andThen: `and then the lights went out|and nobody said a word|and that was that|and we laughed until we cried
    |and the next day it was gone|and I have not seen him since|and she still talks about it|and he paid for everything
    |and it took fifty minutes|and everybody went home happy|and the whole street came out to look|and I said no
    |and the cat came back by itself|and we stopped for coffee on the way|and there was nothing left to do
    |and the kitchen smelled of smoke|and somebody shouted stop|and I was done with it|and it got louder every minute
    |and then it was my turn|and the bill came to ninety|and they set off again at noon|and my phone rang
    |and he wanted more|and it never happened again|and the oven had been on all night|and we were the last to leave
    |and the timer was still ticking|and in the end it was fine|and the train had gone|and the water was cold
    |and they started all over again|and it went on for fifteen minutes`,
  but: `but nobody listened|but I am not so sure|but it was too late by then|but that is another story|but she would not hear of it
    |but the next one was better|but only for ten minutes|but you know what he is like|but it did not help
    |but the oven does not get hot enough|but we can always go back|but I would do it again|but it stopped after a while
    |but there was no more room|but not in my kitchen|but the price had doubled|but I forgot to ask|but it looked nice
    |but he had to start again from the beginning|but nobody set the alarm|but they were done before us|but I like it louder
    |but the second half was dull|but the neighbours complained|but you cannot please everybody|but time will tell`,
  when: `when the bell rang|as soon as it was light|before the guests came|after the first hour|while the water was boiling
    |when I was ten|until the money ran out|when the wind turned|whenever it rains|while we were talking|before breakfast
    |when the oven was new|after the next stop|as the sun went down|when the timer went off|until the music stopped
    |when nobody was looking|long before you were born|after they had eaten|while the kitchen was being painted
    |when the snow had melted|the moment he came in|just as I was done|after all the others had gone`,
  opinion: `that is what I heard|if you ask me|as far as I know|or so they say|which is a pity|would you believe it|I suppose
    |to be honest|in my opinion|and quite right too|at least on paper|more or less|as usual|of all people|believe me
    |not that it matters|thank goodness|of course|as you can imagine|strange as it sounds|for what it is worth`,
} as const;

/** The name of a slot. */
export type ChatterSlot = keyof typeof written;

const slots = Object.keys(written) as ChatterSlot[];

/** What may stand in each slot. */
export const chatterWords: ReadonlyMap<string, readonly string[]> = new Map(
  slots.map((slot) => [slot, written[slot].split("|").map((words) => words.trim())]),
);
