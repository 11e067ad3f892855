/** What a token of a message is; the letter stands for it where runs of tokens are compared with patterns. */
export type Kind =
  /** a question named by its number ("Q3", "question three", "the 3rd one") */
  | 'Q'
  /** a number with a mark behind it, where a list's number may stand ("3)", "3.") */
  | 'L'
  /** an ordinal alone ("third") */
  | 'O'
  /** a calculation that a question of the marksheet states, or another one before an equals sign */
  | 'C'
  /** a number that may be an answer; H one whose groups of three are parted by single spaces, which may be two numbers */
  | 'N'
  | 'H'
  /** two numbers with a colon between them, as in a time or between a label and an answer */
  | 'T'
  /** a number in a form that no answer has */
  | 'y'
  /** a number that is no answer: a date, a time, an age, a score, a telephone number */
  | 'x'
  /** "=", "is", "was" · "I got", "my answer is" · "for", "the answer to" · a dash with room around it */
  | 'e'
  | 'g'
  | 'f'
  | 'd'
  /** left out ("didn't do") · a doubt ("maybe") · a negation · a correction ("sorry, I meant") · another person ("my friend") */
  | 'z'
  | '?'
  | 'k'
  | 'c'
  | 't'
  /** a word that may follow an answer ("easy") · any other word · "and", "then" · a comma · a sentence's end · another sign */
  | 'o'
  | 'w'
  | 's'
  | ','
  | '.'
  | 'm'

const MONTH =
  '(?:jan(?:uary)?|feb(?:ruary)?|mar(?:ch)?|apr(?:il)?|may(?! be)|june?|july?|aug(?:ust)?|sept?(?:ember)?|oct(?:ober)?|nov(?:ember)?|dec(?:ember)?)'
const DAY = '(?:mon|tues?|wed(?:nes)?|thu(?:rs?)?|fri|sat(?:ur)?|sun)(?:day)?'
const COUNTED =
  '(?:years?|yrs?|months?|weeks?|days?|minutes?|mins?|hours?|hrs?|seconds|secs|times|questions?|qs|sums|calculations|problems|answers|right|wrong|correct|incorrect|marks?|points?|stars?|stickers?|house ?points?|people|friends|children|pages?|more|lines?|goes|tries|attempts|others?|digits?|columns?|exchanges?|cats?|dogs?|sisters?|brothers?|books?|sleeps|percent|of (?:them|these|those|the|my|it))'
const PLACE =
  '(?:year|yr|class|room|pages?|pg|p\\.|week|wk|lesson|set|homework|hw|unit|group|table|chapter|exercise|ex|test|paper|worksheet|sheet|book|part of|iphone|ipad|galaxy|android|windows|ios|version|v\\.?|bus|house|flat|term|grade|age|level|step|day|key stage|ks|times table|the other|the first|the last|last|top|next|all|only|other)'

/** Numbers that are no answers. Each form stands at the place where it is looked for. */
export const NOISE: readonly RegExp[] = [
  /https?:\/\/\S+|www\.\S+|\S+@\S+\.\S+/y,
  /(?:(?:tel|phone|mobile|mob|call|ring|text)\b\W{0,3}(?:me |us )?(?:on |at )?)?(?:\+\d{1,3}[ -]?(?:\(0\))?|\(?0)\d{2,4}\)?[ -]?\d{3,4}[ -]?\d{3,4}(?!\d)/y,
  /\d{4}-\d{2}-\d{2}(?:t[\d:.z]+)?/y,
  /\d{1,2}([/.-])\d{1,2}\1(?:\d{4}|\d{2})(?!\d)/y,
  new RegExp(`(?:${DAY} )?(?:the )?\\d{1,2}(?:st|nd|rd|th)?(?: of)? ${MONTH}\\b(?:,? \\d{4}\\b)?`, 'y'),
  new RegExp(`${MONTH} (?:the )?\\d{1,2}(?:st|nd|rd|th)?\\b(?![):])(?:,? \\d{4}\\b)?`, 'y'),
  new RegExp(`${DAY},? (?:the )?\\d{1,2}(?:st|nd|rd|th)\\b`, 'y'),
  /(?:at |by |until |from )?\d{1,2}(?:[:.]\d{2})? ?(?:am|pm|a\.m\.|p\.m\.|o'?clock)(?![a-z])/y,
  /(?:half|quarter|\d{1,2}) (?:past|to) \d{1,2}(?!\d)/y,
  /(?:at|by|until|till|around|about) \d{1,2}(?:[:.]\d{2})?(?![\d,.:)/]\d?|\))(?! ?[-+−–=])/y,
  /\d{1,3} ?\/ ?(?:\d{1,3})(?![\d/])|\d{1,3} out of (?:\d{1,3})|\d{1,3} of (?:the |my )?\d{1,3}(?!\d)/y,
  /\d{1,3}(?:\.\d+)? ?%/y,
  /(?:i am|i'm|im|she is|she's|he is|he's|aged?|turning|turned|who is|just turned) (?:now |only |nearly |almost )?\d{1,2}(?:(?: and a half|½))?(?: (?:years?(?: old)?|now|today|soon|tomorrow))?(?![\d,.]\d|\d)/y,
  new RegExp(`\\d{1,3} ?(?:-| )?(?:and a half )?${COUNTED}(?![a-z])(?! ?[\\d#])`, 'y'),
  new RegExp(`(?:on |in |from |of )?${PLACE} ?(?:number |no\\.? )?\\d{1,3}[a-z]?(?![\\d,.]\\d|\\d)`, 'y'),
  /[a-z]{1,2}\d[a-z\d]? \d[a-z]{2}(?![a-z\d])/y,
  /\d{1,4} [a-z]+ (?:road|rd|street|st|lane|ln|avenue|ave|close|drive|way|court|crescent|gardens|place|terrace)(?![a-z])/y,
  /(?:19|20)\d{2}[-/](?:19|20)?\d{2}(?!\d)/y,
]

const words = (list: string) => new RegExp(`(?:${list})(?![a-z'])`, 'y')

/** Words and phrases by what they mean for an answer; the first that fits counts. */
/** Numbers in words, which stay for the teacher to read. */
export const SPELT =
  /(?:(?:twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety)(?:[- ]?(?:one|two|three|four|five|six|seven|eight|nine))?|hundred|thousand|eleven|twelve|(?:thir|four|fif|six|seven|eigh|nine)teen)(?![a-z])/y

export const PHRASES: readonly (readonly [Kind, RegExp])[] = [
  [
    'z',
    words(
      "(?:i |we |she |he |they )?(?:didn'?t|did not|couldn'?t|could not|can'?t|cannot|haven'?t|have not|hasn'?t|has not) (?:do|done|get|answer(?:ed)?|finish(?:ed)?|try|tried|know|understand|work out)|(?:i |we |she |he )?(?:skipped|missed(?: out)?|left out|left blank|skip|missing|omitted|forgot(?: to do)?|ran out of time (?:for|on|before))|not done|left blank|blank|don'?t know|dunno|no answer|no idea|stuck on|got stuck on|n/a",
    ),
  ],
  [
    'g',
    words(
      "(?:i |we |she |he |they )?(?:think )?(?:my|her|his|our|their|the) (?:final )?answer(?: (?:is|was|came to))?|(?:i|we|she|he|they)(?:'ve|'d)?(?: have| had)?(?: think)? (?:got|get|put|wrote(?: down)?|made|make|worked out|found|have|had)(?: it)?(?: (?:is|was|as|to be|down))?|got|wrote|put|made|answers?|ans\\.?|(?:i |we |she |he )?(?:thinks?|reckons?|believe)(?: (?:it|that)(?:'s| is| was)?)?",
    ),
  ],
  ['f', words('(?:is |was )?(?:my |the |her |his )?(?:answer|ans)s? (?:to|for|of)|for|on|in|to')],
  [
    'e',
    words(
      "as(?= ?[£\\d])|is equal to|equals?|is|was|it'?s|it is|it was|makes|gives|comes? to|came to|comes? out (?:as|at)|came out (?:as|at)|leaves|that'?s|that is",
    ),
  ],
  [
    'c',
    words(
      'sorry|oops|whoops|wait|hang on|actually|i meant?|meant|i mean|instead|changed?|correction|mistake|scrap|scratch that|rubbed out|crossed out|should (?:be|have been)|at first|originally|thought|used to|earlier|before|again|rather|edit|update|typo',
    ),
  ],
  [
    'k',
    words(
      "not|isn'?t|wasn'?t|aren'?t|never|nope|no|ignore|wrong|incorrect|except|don'?t|doesn'?t|can'?t|without|neither|between|nearly|almost|over|under|than|less than|more than|same as",
    ),
  ],
  [
    '?',
    words(
      'maybe|perhaps|possibly|probably|might|could|or|either|about|roughly|approximately|around|guess(?:ed|ing)?|unsure|not sure|confused|hopefully|remainder|r|and a half',
    ),
  ],
  [
    't',
    words(
      "(?:my |her |his )?(?:friend|best friend|brother|sister|cousin|partner|calculator|neighbour|twin|classmate|mate)(?:'s|s)?|(?:my )?(?:mum|mummy|dad|daddy|nan|nanny|gran|granny|grandad|grandma|teacher) (?:got|says?|said|thinks?|thought|put|told|reckons?)|someone|everyone|example|e\\.?g\\.?|for example|for instance|if|reverse|backwards",
    ),
  ],
  ['s', words('and|then|next|plus|also|&')],
  [
    'o',
    words(
      'because|cause|cos|which|but|so|easy|easier|hard|harder|tricky|trickier|fine|ok|okay|good|great|fun|thanks?|thank you|thx|ta|hope|love|from|regards|kind regards|best|best wishes|many thanks|cheers|bye|yours|xx*|ox*o*|i|he|she|we|it|this|that|quite|really|very|bit|a|super|too|done|yay|phew|please|see you|hi|hello|dear|miss|mrs?|ms|sir|using|with|after|as|lol|haha|smiley|working|checked',
    ),
  ],
]
