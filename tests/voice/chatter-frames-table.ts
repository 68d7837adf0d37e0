/** Ways of talking: people in a kitchen, half a call, a wireless programme, children, guests, and a book read aloud. */
export const registers = ["kitchen", "call", "radio", "children", "guests", "prose"] as const;

/** One of them. */
export type Register = (typeof registers)[number];

/**
 * Frames of sentences, one a line: {slot} is a word of chatter-words-table.ts, [a|b|] one of its parts, perhaps none.
 * They speak of kitchens, timers, minutes and ovens, stop and go on, and ask nothing of a kitchen's caller.
 */
export const chatterFrames: Readonly<Record<Register, string>> = {
  kitchen: `
Careful with that handle, {name}, the last {job} who grabbed it wore a bandage for {span}.
Somebody chopped chillies on this board and rubbed an eye, {andThen}.
You can tell a ripe melon by knocking on it, claims {kin}, {but}.
The drain gurgles like a {animal} with hiccups {when}.
Whose turn is it to scrub the {kitchenThing}, mine was {past}.
I burnt my thumb on that handle {past}, {andThen}.
There is a mouse behind the skirting board, {mood} and fat from our {food}.
The tap drips {number} times a minute, I counted {when}.
My recipe for {food} is older than the {kitchenThing}, {opinion}.
This apron has survived {number} weddings, a flood and {kin}.
She slices cucumbers so thinly that you can read {town}'s newspaper through them.
An egg floats when it is stale, {name}, everybody learns that at {place}.
[Sharp|Blunt] knives are what {kin} fears most, {because}.
The lid of the {kitchenThing} rattles {how}, {andThen}.
Thyme, says {name}, is not the same as time, {opinion}.
Flour everywhere, on the ceiling, on the {animal}, on {kin}, {andThen}.
Grandfather mashed turnips with a bottle {when}, {opinion}.
The bin in {room} must go out by {clock}, {because}.
You promised to descale that {kitchenThing} before {day}, {name}.
Our {kitchenThing} came with a guarantee of {number} months and broke in the {ordinal}.
Don't lick the spoon before {kin} has blown out the candles, {name}.
[Vinegar|Bleach|Soda] takes the stain out of anything except the memory of {kin}.
Leftover {food} makes a decent breakfast, {opinion}, with a {look} radish on the side.
The pantry shelf sagged under {number} jars of pickled {food}, {andThen}.
I measured the counter {number} times and sawed it once, {but}.
Nobody ever thanks whoever unloads the dishwasher, {opinion}.
Okay, kitten, off the {kitchenThing}, {name} is {mood} enough.
Okay, {name}, pick it up and put it next to the {kitchenThing} [by|under] the {thing}.
Hockey in the kitchen is what broke the {look} {kitchenThing}, {opinion}.
What next year brings for {kin} nobody [knows|can tell], {opinion}.
What now costs {number} crowns was {number} {past}, {opinion}.
How much the {food} at {place} costs I [cannot say|forget], {but}.
How long the {thing} from {town} will last is {kin}'s problem.
Set the table for {number} {when}, said {kin}, {but}.
A timer for {span} is no use to a {job}, {opinion}.
[The|A] timer of {span} went off in {kin}'s bag {when}.
Cancel the paper for {span}, I told the {job}, {because}.
Skip the speech about {food}, {name}, and tell us how {kin} {did}.
Say that again to {kin} and you will both be {mood} for {span}.
Go back to {town} with your {look} {thing}, said {kin}, {andThen}.
Add {number} minutes for the walk and {number} for {kin}, and you miss the {ordinal} bus.
How many onions a {job} eats in {span} I would rather not know.
I hear it from {kin} every {season}, {opinion}.
It is in the oven that {name} hides the {look} {thing} from {kin}.
I have stirred up {kin} enough for one day, {opinion}.
Okay, in the kitchen we [keep|found|lost|hid] the {look} {thing}, {opinion}.
Okay, [so|well|right,|] the {kitchenThing} [belonged to|came from|was a present from] {kin}, {but}.
Okay, {name}, [tell me|remind me] what {kin} said about the {look} {kitchenThing} {past}.
Okay, but whose {kitchenThing} is this [here|then|anyway], {name}?
[Okay|Right|Listen], the chicken from {town} was {quality}, {opinion}.
Oh, Kitty, you [should|could|might] have [called|asked|told] {kin} {when}.
A cake in the kitchen never lasts {span} with {kin} [about|around|in the house].
[In our|In this|In every|In your] kitchen {kin} {does}, {andThen}.
The kitchen at {place} was {quality}, {because}.
We had a {look} {kitchenThing} in {town}, {but}.
The {kitchenThing} [broke|started to smoke|fell down|stopped working] {past}, {because}.
The oven in {room} was {quality} {past}, {but}.
That oven and I have not been friends since {season}, {opinion}.
[My|Our|Their] oven has been {mood} [all week|all winter|since {day}], if an oven can be.
The timer [that {kin} gave us|from {place}|with the {look} dial] rang {when}, {andThen}.
I never trust a timer that [costs less than {number} crowns|{kin} has touched|looks like a {animal}].
[She|He|{name}] [set|dropped|hid|found] the timer {past} {andThen}.
How can {span} of {food} [taste|smell|look] so {quality}, {name}?
{name} [ate|spilled|ordered|dreamt of] {number} bowls of {food} {past}, {andThen}.
[I do not|We do not|They do not] [like|want|eat|buy] {food} in {season}, {opinion}.
You put [so much|hardly any|a mountain of] {food} [into|over|next to] the {food} {past}, {but}.
[The recipe|The card|The label] says {span}, and {kin} says {span}, {andThen}.
[Somebody|{name}|{kin}] has [moved|borrowed|broken|painted] my {kitchenThing} {because}.
It smells of {food} and {food} in {room}, {opinion}.
The smell of {food} takes me back to {town}, {when}.
[Who|Which of you] [left|hid|forgot] the {look} {thing} [next to|under|behind|on top of] the {kitchenThing} {past}?
I was [done|nearly done|half done] with the {food} {when}, {andThen}.
Nobody is done [eating|talking|arguing] before {clock} in this house, {opinion}.
Stop [me|us] if you have heard this one about the {animal} and the {kitchenThing}.
[They|She|He] would not stop [talking|laughing|singing] about the {food} {past}.
The next thing {kin} wanted was [a {look} {kitchenThing}|{number} kilos of {food}|a {look} {thing}].
The next time we [cook|eat|visit|meet] in {town}, {name} [brings|pays for|carries] the {food}.
The music at {place} was even louder than {kin} {when}.
Louder still, he kept shouting at the {job}, {but}.
[Two|Three|Four|Five] more minutes of that [song|story|speech] and I would have {did}, {opinion}.
The {food} for {day} [comes|came] from {town}, {because}.
{name} peels {food} the way a {job} [would|might] [hold|carry] a {look} {thing}.
[My grandmother|Her mother|Old {name}] kept {food} in a {look} {thing} under {room}.
There were {number} {look} plates on the kitchen table {past}, {andThen}.
[I swear|I am certain|I think] the {kitchenThing} was {look} {when}.
The steps in {room} are so {quality} that {kin} will not use them {when}.
The last step in {room} is loose, {because}.
Half of the {food} stayed frozen {when}, {but}.
[What a|Such a] {quality} {kitchenThing} for {number} crowns, {opinion}.
She told {kin} that {food} goes with {food}, {andThen}.
With {food} it is [the smell|the colour|patience] that counts, {opinion}.
[The guests|The children|The neighbours] [want|wanted|will want] {food} instead of {food} on {day}.
[They turned|He turned|She had turned] off the {look} lamp in {room} {when}.
Hold the {thing} for {name} while {kin} [looks for|argues about|admires] the {kitchenThing}.
Go on like that and {kin} will [sell|hide|paint] the {kitchenThing}, {opinion}.
`,
  call: `
Your parcel weighs {number} kilos, the clerk claims, and customs wants a signature by {day}.
My password is expired, my account is blocked, and the lady said to ring {when}.
They offered a refund of {number} percent, which {kin} finds insulting.
Is the flat still vacant, the one above {place}, with the {look} balcony?
Reception is terrible behind {place}, try the mobile after {clock}.
Congratulations on the baby, {name}, does she resemble {kin}?
The insurance will not cover hail, storks or {kin}, {opinion}.
I dialled {number} {number} {number} and reached a fishmonger in {town}.
Could you spell that surname, please, is it with a double consonant like {town}?
My knee is swollen, the left one, ever since I slipped near {place} {past}.
The solicitor needs {number} copies and a witness over {number}.
Fax it, he said, as if anybody in {town} had owned a fax since {past}.
[Sorry|Pardon], you are breaking up, I only caught the bit about {kin} and the {animal}.
We are short of a bass for the choir on {day}, {name}, would you rescue us?
The warranty ran out {span} ago, naturally, {opinion}.
I posted the cheque from {town} {past}, registered, {but}.
Your prescription can be collected at {place} until {clock}, {name}.
Tell grandma the stitches come out on {day}, and her voice sounds {quality}.
Quiet for {span} and then the {animal} started again, {opinion}.
Are we late for {kin} or is {kin} early for us, {opinion}.
When we eat with {kin} it is never before {clock}, {because}.
What did you hear from the {job} about the {look} {thing}, {name}?
Never mind the {thing}, {name}, what about the {number} hundred from {past}?
Undo the {look} knot first, said the {job}, {andThen}.
Add {kin} to the list for {day}, and take {name} off it, {because}.
Stop by at {place} on {day} if {kin} lets you, {name}.
Pause the film for {span} and you will see the {animal} behind {kin}.
Hello, {name}, [this is|it is|here is] {name} from {place}, you asked about the {thing} {past}.
[Hello|Yes|Hi], I am calling about the {look} {thing} [in the window|in the paper|from {past}].
Yes, [no,|well,|I know,|] I told {kin} the same {past}, {but}.
[Can|Could] you hear {kin} [shouting|singing|laughing] in {room}, {name}?
No, the {ordinal} of {season} is [bad|good|fine|impossible] for {kin}, {because}.
I can be at {place} [at|by|around] {clock}, or {span} later if {kin} drives.
The line is {quality} today, {name}, [there is {weather} here|they are digging outside|I am in the cellar].
[He|She] said {span}, and that was {span} ago, {opinion}.
So I stopped at {place} for the {look} {thing}, {andThen}.
[Wait|Hang on|One moment], {kin} is at the door with [a {animal}|the {look} {thing}|{number} boxes of {food}].
The {job} wants {number} hundred for the {thing}, {opinion}.
Did [you|they] ever hear [back from|from] {kin} in {town} about the {thing}?
They have put me on hold for {span} with the same {quality} music.
My number ends in {number} {number}, and the code is {number} for {town}.
[Tell|Ask] {name} that the {thing} is with {kin} in {town} until {day}.
I said to the {job}, okay, kitchens are dear, but {number} thousand for a {kitchenThing}?
Okay, [yes|fine|good|sure], {day} at {clock} outside {place}, with {kin}.
Okay, [okay|all right], I will [write|speak] to {kin} about the {thing}, {opinion}.
We were cut off {when}, so what did the {job} say about {kin}?
She is in {room} with the {animal} and cannot come to the phone {because}.
[How is|And how is|Tell me how] {kin} [doing|feeling|sleeping] since {town}, {name}?
The doctor gave {kin} the {quality} [pills|drops|tea] for {span}, {but}.
[I have|He has|She has] been {mood} since {day}, {because}.
It is about the bill from {past}, number {number} {number} {number}, for {kin}.
[We are|They are] on the train to {town}, {span} late, {because}.
The battery of this phone lasts {span} {when}, {opinion}.
[Let me|Let us] go back to what {kin} said {past} about {place}.
I cancelled the {job} for {day}, {because}.
You would not believe how {quality} the {job} was {past}.
They start [work|school|the building] at {clock} and are done by {clock}, {opinion}.
Next to the {job} there is a {look} door, and you ring {number} times.
[The appointment|The meeting|The lesson] with the {job} was moved from {clock} to {clock}, {because}.
Say that to {kin} and see how {mood} everybody gets.
[No|Oh no], not the {animal} again, {name}, we have only had it for {span}.
I heard it from {kin}, who heard it from a {job} in {town}, {opinion}.
That was {kin} on the other phone, {mood} as ever, {because}.
We could talk about {place} for {span}, {but}.
The {thing} you sent to {town} has arrived {look} and {look}, {but}.
Somebody has to drive {kin} to {place} by {clock} on {day}.
I must go now, {name}, {because}.
`,
  radio: `
Archaeologists digging near {place} have uncovered {number} bronze coins and a {look} helmet.
A wild boar wandered through {town} {past} and was photographed beside {place}.
Scientists measured the glacier above {town} and found it {number} metres shorter.
The orchestra performs a symphony in D minor at {place} on {day}, beginning at {clock}.
Interest rates remain unchanged, announced the central bank in {town}, {because}.
Police appeal to witnesses who saw a {look} van near {place} at about {clock}.
Fishermen off {town} report shoals of herring {when}.
The marathon passes {place} from {clock}, and spectators should leave their cars at home.
Our astronomer explains why Jupiter appears so {quality} this {season}.
An avalanche has buried the pass above {town}, rescuers with dogs are {mood} and hopeful.
Parliament debates a tax on sugar until {clock}, and {number} amendments are tabled.
Novelist {name} reads from a thriller set among lighthouse keepers and smugglers.
Ice hockey now, and {town} beat {town} by {number} goals to {number} {past}.
Crossword enthusiasts meet at {place} each {season}, armed with pencils and dictionaries.
The chess champion sacrificed a bishop, offered a draw after {span} and was refused.
Lottery numbers, without guarantee, {number}, {number}, {number}, {number} and {number}.
An epidemic of measles keeps {number} schools around {town} shut until {day}.
Gardeners, prune your roses before the frost, warns {name}, and mulch them thickly.
Our correspondent in {town} describes barricades, chanting students and a {mood} mayor.
Sailors, gale warning for all coasts between {town} and {town}, force {number} by {clock}.
The inquiry blames a faulty valve, tired operators and {span} of delay.
Jazz fans queued round {place} for {span}, saxophones under their arms.
What is left of {place} after {span} of {weather} will be sold on {day}.
Hold everything dear, says {name} of {town}, who lost a {look} {thing} {past}.
Start the day with {food} from {town}, and {food} will never be the same.
End the week at {place}, with {span} of music and a {animal} for every child.
Two more minutes from {name} of {town}, and the crowd grows {mood}.
Remind me, {name}, how many times {town} has won here since {past}?
Restart is a word that the {job} from {town} says {number} times in {span}.
Okay, kickers, cries the coach of {town}, {andThen}.
Step three of the plan for {place} costs {number} million, {but}.
It is {clock}, and here is the news from {town} and {town}.
The {job} from {town} who {did} {past} has been found {mood} and well.
[In the north|In the south|On the coast|In the hills] there will be {weather} by {clock}, with {weather} later on {day}.
Temperatures in {town} will [reach|rise to|fall to] {number} degrees, with {weather} in the evening.
Traffic is moving {how} between {town} and {town}, {because}.
There are {number} kilometres of standing traffic before {town}, so allow {span} more.
And that was the {ordinal} song from {town}'s {quality} choir, {opinion}.
Next up, after {span} of music, we talk to a {job} who {does}.
Our next guest {did} {past} and has written a {quality} book about {place}.
[Coming up|Still to come|Later this hour], why {number} people in {town} want their {thing} back.
The council of {town} will [close|repair|sell] {place} for {number} million, {but}.
Prices for {food} have gone up by {number} percent since {season}, {opinion}.
[The minister|The mayor|The union] said on {day} that {place} would [stay open|be sold|be built] {because}.
And it is {number} to {number} here at {place}, with {span} left to play.
The goalkeeper from {town} stops it with both hands, {andThen}.
[What a|Such a] {quality} pass, says {name}, who played here {past}, {andThen}.
In the {ordinal} half {town} started {how}, {but}.
This {season}, treat your kitchen to the {look} {kitchenThing} it has waited for, only at {place}.
Buy {number} {look} chairs at {place} before {clock} on {day} and pay for {number}.
Is your {kitchenThing} {look} or {quality}? Our {job} in {town} comes to your kitchen within {span}.
In today's talk from the kitchen garden, {name} explains what {weather} does to {food}.
[Cooks|Farmers|Teachers] in {town} have stopped work for {span}, {because}.
The {ordinal} train from {town} is {span} late, and the one after that does not run on {day}.
A {job} has won {number} thousand after he {did} {past}.
The question for {span} on the clock is how many {animal}s live near {place}.
No, the right answer was {number}, so {name} from {town} goes home with the {look} {thing}.
You are listening to {name} in the morning, with {span} of [songs|stories|music] without a stop.
[Turn|We turn] now to {town}, where {kin} of the winner {did} {when}.
The {quality} storm turned off the lights in {number} thousand kitchens {past}, {andThen}.
Set in {town} {past}, the film tells of a {job} who {does}, {andThen}.
Doctors in {town} say that {span} of walking a day makes people less {mood}.
[The court|The jury|The judge] in {town} took {span} to decide, {because}.
At {clock} the water at {place} stood {number} centimetres higher than {past}.
[Good evening|Good morning|Welcome back], this is the programme for people who are {mood} at {clock}.
The crowd in {town} was never louder than {past}, {opinion}.
More on that {quality} story {when}, and now the tides for {town}.
The rescue of the {animal} from {place} took {span}, {because}.
Voters in {town} go to {place} on {day}, and nobody expects a {quality} result.
Shares in {food} ended the day {number} points [up|down], {because}.
Dear listeners, {span} have gone by and {name} is still {mood}, {opinion}.
`,
  children: `
My knee is bleeding, a tiny bit, and I need {number} plasters, not one!
Dinosaurs did not have {food}, silly, they ate ferns and each other!
If you swallow a cherry stone a tree grows out of your ears, {name} says!
I built a castle from {number} blocks and {name} kicked it over {how}!
Pirates never brush their teeth, so why must I, {when}?
A ghost lives under {room}, it moans and rattles its chains {when}!
Can penguins sneeze, and do spiders dream, and who invented homework?
[She|He] pulled my plait and stuck her tongue out {number} times!
Teacher drew a volcano with chalk, and {name} was the lava!
I lost my mitten at {place}, the {look} one with the reindeer!
Abracadabra, {name} is a frog, and frogs eat flies and {food}!
Tag, you are it, and no hiding behind {kin}!
We are robots, beep, our batteries are empty in {span}, beep!
My caterpillar is called {name} and lives in a jam jar with {number} leaves!
Why is the moon following our car all the way to {town}?
Swing me higher, Papa, higher than {place}, up to the clouds!
The princess was {mood}, so the dragon baked her {food}, {andThen}!
Seven plus {number} is a hundred, isn't it, {name}?
My tummy hurts from the {food}, honestly, and from the roundabout!
Okay, kitty cat, you are the {job} and I stop the {kitchenThing}!
I said stop, and {name} went on {how}, {andThen}!
[First|Next] the {animal} goes in the oven of the doll's house, and then {kin}!
Is it done when the {animal} is {look}, or do we wait {span}, Papa?
The yes and no game is {quality}, {because}!
Twelve minutes, fifteen minutes, fifty minutes, a {animal} sleeps longer than that!
Mum, {name} [took|broke|hid|licked] my {look} {thing} {andThen}!
Mummy, why is the {animal} in {room} so {mood}?
But I [am not|was not] {mood}, I am only {number} {opinion}!
[He|She] started it {when}, {andThen}!
Look, {name}, a {animal} with a {look} {thing} on its head!
Stop it, {name}, that is my {look} {thing} and you {did}!
I want {food} with {food} [and not|but not|instead of that] {food}!
Can we have {food} on {day} [with|without] {name}, please, Mum, please?
My teacher {does} and has a {look} {thing}, really and truly.
When I am {number} I will be a {job} and live in {town} with a {animal}.
[You|We] said {span}, and now it is more than {number} {span}!
Is {number} more than {number}, or do you have to count the {animal} too?
One, two, three, four, five, the {animal} {did}, and you are out!
I am done with school when I am {number}, {name} said so {past}.
Next I am the {job} and you are the {animal}, okay, Kitty?
Okay, kids do not [eat|like|touch] {food} [at {place}|in {town}|on {day}], everybody knows that.
The {animal} says that it is {mood} and wants {number} pieces of {food}.
Why do we have to go to {place} [again|at all|on foot] {when}?
[Daddy|Papa|Grandma], the {animal} was in {room} and it {did}!
There is {weather} outside, and I cannot find my {look} {thing}!
I had a dream that the {kitchenThing} {did} and you were a {animal}.
{name} says that {kin} {does}, is that true?
You are the {quality} one, and I am the {quality} one, and {name} is the {animal}.
[Guess|Do you know] what we did at {place} {past}?
A {animal} cannot be louder than a {job}, {name}, they have no [voice|trumpet|ears].
My tooth has been loose for {span}, and {kin} {did} {when}.
Read me the one where the {animal} {did}, {andThen}.
We played kitchen at school and I was the oven and {name} was the {kitchenThing}.
[I can|You can|He can] count to {number} {how}, but {name} only to {number}.
It is not fair, {name} got {number} and I only got {number} and a bit of {food}!
Knock knock, who is there, it is the {look} {animal} from {town}!
I do not want to go to bed {when}, {because}!
Her {animal} can [open|close|lick] the oven door all by itself, I saw it {past}!
Then the {job} said to the {animal}, you have {span}, {andThen}.
There were {number} in the bed, and the {look} {animal} {did}, {andThen}.
`,
  guests: `
Cheers, {name}, to {number} years of marriage and to whoever invented divorce!
The sculpture at {place} resembles a melted bicycle, {opinion}.
I adore opera, but {kin} snores through every aria {how}.
Philosophy was my subject, {name}, until I discovered accounting in {town}.
My therapist recommends yoga, my wallet recommends {weather} and patience.
Inflation eats our savings, the mortgage eats our salary, and the {animal} eats the sofa.
They renovated the bathroom for {span} and found a mosaic beneath the lino.
Our guide in {town} spoke in riddles and walked like a {animal}.
Have you noticed how {quality} the wallpaper makes everyone look, {name}?
The bride wore emerald velvet and arrived on a {animal}, {andThen}.
I collected seashells as a boy, {number} boxes of them, labelled in Latin.
Rumour has it that the vicar bets on horses {when}.
Her memoirs mention {town} on {number} pages and her husband on none.
One glass of that liqueur and {kin} recites poetry {how}.
The novel bored me, the film annoyed me, the musical made me {mood}.
Everyone gossips about the dentist's yacht, {because}.
Democracy is exhausting, sighed {name}, and passed the {food}.
Our tortoise outlived {number} goldfish, a budgerigar and my marriage.
Vegetarians, they seated us beside the butcher from {town}, {opinion}.
Those curtains were sewn from parachute silk {past}, {opinion}.
Okay, the kitchen talk is over, {name}, how is {kin} in {town}?
More of the same from {kin} {past}, {andThen}.
Speak again of {place} and {kin} leaves the room, {opinion}.
Where was I when {kin} {did}, you ask, and I say at {place}.
What is one to do with a {job} who {does}, {name}?
Tell me more about {kin} and the {look} {thing}, {name}, but not {when}.
How do I know that {kin} is {mood}, well, he {does}.
Faster than a {animal} and slower than {kin}, {opinion}.
[So|Well|Now then], how did you and {name} meet, was it in {town} or at {place}?
We have lived [near|behind|opposite] {place} for {span}, {opinion}.
[My|Our] flight to {town} was at {clock}, {but}.
{kin} {does}, {andThen}.
{kin} {did} {past}, {because}.
They say that the {job} next to {place} {does}, {opinion}.
I have been reading about a {job} who {did} {when}, {andThen}.
[Have|Had] you ever been to {town} in {season}, {name}, with all that {weather}?
In {season} we took the children to {place}, {andThen}.
She is [a|such a|rather a] {quality} {job}, {but}.
The thing about {town} is the {weather}, {opinion}.
Nobody in my family can [whistle|dance|swim], {but}.
[Work|The office|The firm] has been {quality} since {name} {did}.
I stopped [reading|believing|answering] that man {past}, {because}.
[If|Even if] {name} never {did}, I am {mood} about it, {opinion}.
My next car will be {look}, {opinion}.
What do people want with {number} {look} {thing}s, {name}?
Thank you for the {look} {thing}, it is standing in {room} next to the {kitchenThing}.
[We should|We could|You must] all go to {place} together on {day}, {but}.
He asked me at {clock} whether I was {mood}, and of course I was.
The band played {span} longer than they were paid for, {andThen}.
I would rather have a {quality} {animal} than a {quality} neighbour, {opinion}.
The house was built {past} by a {job}, {andThen}.
[Every|Each] {season} {kin} goes to {town} {how}, {because}.
It takes {span} to learn and {span} to forget, {opinion}.
[Politics|Football|Money] makes {kin} {mood}, {but}.
A man at {place} offered me {number} crowns for my {thing} {when}.
They got married at {place} {past}, in {weather}, {andThen}.
The {ordinal} time I saw {town} it was under {weather}, {opinion}.
[I heard|I read|They told us] that {name} is going to be a {job}, of all things.
Do you [still|ever] play the {thing}, or has {kin} put a stop to it?
He is {number}, she is {number}, and between them they own {number} {animal}s.
[Oh|Ah], the {look} one over there, that is by a {job} from {town}.
[It was|It must have been] {quality} weather for {season}, with {weather} until {clock}.
Her speech went on for {span}, {andThen}.
Talking of {food}, {kin} once ate it with {food} for {span}.
We walked [up|down|back] from {place} in {span}, {how}, {opinion}.
You look {mood}, {name}, has {kin} been telling the one about {place}?
{name} and I have not spoken since {name} {did}, {because}.
I will say one thing for {town}, you can park next to {place} for {span}.
`,
  prose: `
Snow muffled the hooves of the horses, and the coachman's lantern swung {how} above the ditch.
Her grandfather's fortune, founded on whale oil and rumours, evaporated within {span}.
A heron rose from the reeds beyond {place}, unhurried as a bishop.
The smell of tar and oranges hung about the quay {when}.
Sergeant {name} folded the map, unfolded it, and confessed himself lost.
Moss had swallowed the inscription, save for a date and the syllable of some forgotten surname.
Poverty, {name} reflected, sharpens the ears and dulls the appetite for sermons.
Upon the mantelpiece a porcelain shepherdess simpered at a stuffed {animal}.
The widow poured tea {how}, as though each cup contained a verdict.
Lightning showed them the mast, the gulls, the white faces of the crew, {andThen}.
No tyrant in history, the professor declared, had ever been fond of {food}.
In the margin somebody had scribbled a proverb concerning {animal}s and ambition.
The caravan crossed the salt plain by starlight, its bells wrapped in wool.
He possessed {number} waistcoats, a telescope, and not a single friend.
Whoever carved that threshold knew nothing of mercy and everything of oak.
Autumn came early to {town}, reddening the vines and the noses of magistrates.
Their quarrel, begun over a hedge, had by {day} embraced theology.
"Sell the orchard," whispered the notary, "before the blight reaches {town}."
Twilight gathered in the folds of the curtains while {name} rehearsed an apology.
Across the marsh a bell tolled {number}, muffled, reluctant, like a debtor counting.
The duke's astrologer predicted drought, and was drenched {how} on his way home.
Every Thursday the ferryman's niece brought him tobacco, gossip, and {number} eggs.
A gust scattered the manuscript over the rooftops, chapter by chapter, {andThen}.
Memory is a careless tenant, {name} used to say, it leaves the gas on and loses the deeds.
She had inherited her mother's cheekbones and her father's habit of vanishing {when}.
"Next man in," said the {job}, and {name} stood up {how}.
What now lay on the {kitchenThing} was a {look} {thing}, {andThen}.
The {ordinal} step was the worst, for it led {how} past {place}.
"More time is what {kin} wants," said {name}, "{because}."
An hour is {span} when one is {mood}, {opinion}.
{name} {did} {when}, {andThen}.
It was {clock} on a {quality} day in {season}, and {town} lay under {weather}.
The {job} put the {look} {thing} on the table and looked at {kin} {how}.
Nobody at {place} remembered when the {animal} had first been seen, {but}.
There was {weather} over {place}, and the {look} {thing} stood where {name} had left it {past}.
[He|She] opened the {look} door {how}, {andThen}.
[For|After|Within] {span} nothing moved in {room} but the {animal}, {opinion}.
"I am not {mood}," said the {job} {how}, "only {mood}, {because}."
The letter from {town} spoke of {weather}, of a {look} {thing}, and of {kin}.
{name} had once been a {job}, and {how} a {quality} one.
Beyond {place} the road goes on for {span} through {weather} to {town}.
The clock in {room} struck {number} {when}, and {name} counted {how}.
[Few|Many|Some] people in {town} {did} that {season}, {but}.
At the next bend stood a {look} house, and before it a {animal}, as {mood} as its master.
The kitchen was dark, and on the {kitchenThing} lay the {look} {thing} of which {name} had spoken.
[He|She] thought of {place}, of {food} and {food}, and of {kin} who {did} {past}.
What {name} wanted was neither the {thing} nor the {thing}, {but}.
In those days {town} had {number} bakers and not one {job}, {opinion}.
The {animal} stopped, looked at {name}, and went on {how}.
[Slowly|Quietly|Wearily] the {job} began to speak, {andThen}.
All through {season} the {job} and the {job} did not exchange one word, {because}.
The river rose {how} {when}, {andThen}.
It is a {quality} thing to be {mood} at {place} on {day}, {when}.
The {ordinal} chapter tells how {name} {did} and why {kin} was {mood}.
[Between|Somewhere between] {town} and {town} the train stopped, {andThen}.
{name} paused with the {look} {thing} in one hand, {because}.
"Just how long," asked {name} {how}, "has the {animal} been in {room}?"
They ate {food} and {food} {how}, {when}.
Her voice was {quality}, louder than {name} remembered it from {town}, {but}.
A {job} must be {quality} and {quality}, {opinion}, and above all never {mood}.
Of the {number} houses by {place} only the {look} one was still lived in {past}.
The oldest of them {does}, the second {does}, and the youngest {does}.
[Nothing|Little] is known of the {job} who {did} in {town}, {but}.
The captain set a course for {town}, and {span} later there was {weather} on every side.
Many years before, {when}, {name} stood in this very kitchen and {did}.
The timetable promised a train at {clock}, {but}.
Dust lay on the {look} {thing}, and {room} smelled of {food} and {weather}.
[The wind|The dog|The old clock] was done before {clock}, {andThen}.
Each step on the stair of {place} had its own sound, and {name} knew the {ordinal} {how}.
"Go on home," said the {look} man to the {animal}, "{town} is {span} away, {because}."
`,
};
