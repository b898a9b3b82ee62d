/** What the command says besides a report. File names, options and what the system says are put in as they are. */

const many = (count: number, one: string, more = `${one}s`): string => `${count} ${count === 1 ? one : more}`;
const tryHelp = (command: string): string => `Try: evenfall ${command}--help`;

const UNWRITABLE: Readonly<Record<string, string>> = {
  EACCES: 'that is not allowed there',
  EPERM: 'that is not allowed there',
  EROFS: 'nothing can be written there',
  ENOSPC: 'there is no room left there',
  EDQUOT: 'there is no room left there',
  EISDIR: 'it is a folder',
  ENOTDIR: 'its folder is a file',
  EEXIST: 'its folder is a file',
};

export const MESSAGES = {
  standardInput: 'standard input',
  standardOutput: 'standard output',
  beatsAMinute: (bpm: string) => `${bpm} beats a minute`,
  /** of a date */
  dateLocale: 'en-GB',
  didYouMean: (word: string) => ` Did you mean "${word}"?`,
  and: 'and',
  usage: {
    nothingToDo: `Nothing to do. ${tryHelp('')}`,
    noCommand: (name: string, commands: readonly string[], hint: string) =>
      `"${name}" is no command; there are ${commands.join(', ')}.${hint} ${tryHelp('')}`,
    noOption: (command: string, option: string, hint: string) =>
      `${command} has no option ${option}.${hint} ${tryHelp(`${command} `)}`,
    optionWithout: (command: string, option: string) =>
      `Option ${option}: argument missing. ${tryHelp(`${command} `)}`,
    optionWith: (command: string, option: string) =>
      `Option ${option} takes no argument. ${tryHelp(`${command} `)}`,
    needsFolder: `desk needs a folder of recordings. ${tryHelp('desk ')}`,
    needsReview: `review needs a review file, or - for standard input. ${tryHelp('review ')}`,
    needsFile: (command: string) =>
      `${command} needs at least one sound file, or - for standard input. ${tryHelp(`${command} `)}`,
    oneForOne: (option: string, file: string, what: 'recording' | 'review', files: number) =>
      `${option} ${file} can hold one ${what}, but ${files} files are given. Give one.`,
    overInput: (file: string) =>
      `${file} is a recording or a folder that is read; it is never written over. Choose another name.`,
    overForeign: (file: string) =>
      `${file} is there already and was not written by evenfall. Choose another name, or write over it with --force.`,
    oneToStdout: 'Standard output (-) can take one thing only. Leave one of the options out.',
    noShard: (text: string) =>
      `--shard ${text} is no part of --lines. Write e.g. --lines 3.jsonl --shard 3/16, from 1/16 to 16/16.`,
    linesAlone: '--lines tells each recording by itself: leave --json, --csv and --html out.',
    foldersNeedNames: '--html of desk writes several pages: name a folder.',
    inputTwice: 'Standard input (-) can be read only once. Give it once.',
    oneWordMore: (word: string) =>
      `"${word}" is one word too many: exercises takes options only, e.g. --key "D major".`,
    alone: (option: string, needed: readonly string[]) =>
      `${option} alone does not say which exercise it is: add ${needed.join(' and ')}, ` +
      'or leave them all out to have it recognised.',
    needsExercise: (option: string) => `${option} goes with --exercise FILE only.`,
    besideExercise: (option: string) =>
      `--exercise FILE says what is played: leave ${option} out. --hands goes with it.`,
    notForHands: (hands: string) => `--hands ${hands}: there is nothing to play for that in the passage.`,
    noPassage: (number: number, file: string, passages: number) =>
      `--passage ${number}: ${file} holds ${many(passages, 'passage')}.`,
    needsAsExercise: (option: string) => `${option} goes with --as-exercise OUT.json only.`,
    noTime: (text: string) => `--time "${text}" is no metre. Write e.g. 4/4, 3/4 or 6/8.`,
    noBars: (text: string) => `--bars "${text}" are no bars. Write e.g. 5-8, or 5.`,
    addKey: 'Add --key, e.g. --key "D major", to see an exercise note by note.',
    noKey: (text: string, hint: string) =>
      `--key "${text}" is no key.${hint} Write e.g. "D major", "F# minor" or "Bb major".`,
    noStretch: (text: string, steps: number) =>
      `--stretch "${text}" is no stretch of this exercise. Write two of its steps, 1 to ${steps}, e.g. 1-${Math.min(8, steps)}, or up or down where it turns back.`,
    notBlocked: '--blocked needs one hand alone and an exercise whose notes come one by one.',
    needsBothHands: (option: string) => `${option} needs --hands together.`,
    noWord: (option: string, text: string, accepted: readonly string[], hint: string) =>
      `${option} "${text}" is not one of ${accepted.join(', ')}.${hint}`,
    noNumber: (option: string, text: string, whole: boolean, least: number, most: number) =>
      `${option} ${text} must be a ${whole ? 'whole ' : ''}number from ${least} to ${most}.`,
    noMinorScale: (form: string, key: string) =>
      `--minor-scale does not go with ${form} in ${key}; only scales of a minor key have one. Leave it out.`,
    noFingering: (name: string, form: string, key: string, accepted: readonly string[]) =>
      accepted.length === 0
        ? `--fingering: ${form} in ${key} has only the usual fingers for these hands. Leave it out.`
        : `--fingering ${name} is none of those for ${form} in ${key} and these hands: ${accepted.join(', ')}.`,
    noNotesABeat: (form: string, accepted: readonly number[]) =>
      `--notes-a-beat: ${form} has ${accepted.join(', ')}.`,
    beyondKeyboard: (register: string) => `--register ${register}: that lies beyond the keyboard.`,
    oneOctave: (form: string) => `--octaves: ${form} always has 1. Use 1, or choose arpeggio or scale.`,
    tooManyRecordings: (count: number, most: number) =>
      `There are ${count} recordings; at most ${most} are sorted at once. Name some of the folders in it.`,
  },
  problems: {
    noPlaying: (why: string) => `No playing was found in it. ${why}`.trim(),
    noPassage: 'There is no passage in it: fewer than two notes or chords, one after the other.',
    noExercise: (notes: number, why: string) =>
      `${many(notes, 'note was', 'notes were')} heard, but no exercise in them. ${why}`,
    nearest: 'What comes nearest:',
    howToChoose: 'On the command line: --key, --form and --hands.',
    /** by the system's code (POSIX errno) */
    unwritable: (code: string) =>
      `It could not be written: ${UNWRITABLE[code] ?? `the system refuses (${code})`}. Choose another place.`,
    pianoUnreadable: 'It cannot be read. Name another file with --piano.',
    noPiano:
      'It holds nothing that is known of a piano. Name another file with --piano, or one that is not there yet.',
    nothingPiped: 'Nothing is piped into standard input. Give a file, or pipe one in.',
    noRecording: 'There is no recording in it.',
  },
  report: {
    chosen: 'Chosen',
    asChosen: (title: string) => `${title}; --as-chosen measures that`,
    hand: 'Hand',
    handOpen: (likelier: string, other: string, options: string) =>
      `not known, it cannot be heard; measured as the ${likelier}, likelier where it lies. The ${other}: ${options}`,
    hands: { left: 'left', right: 'right' },
  },
  transcribe: {
    head: '  time/s  key    level/dB  released/s  sure/%',
    sum: (notes: number, a4Hz: string, cents: string) =>
      `${many(notes, 'note')}; A4 = ${a4Hz} Hz ± ${cents} cents`,
    sound: (finding: string) => `Sound: ${finding}`,
  },
  desk: {
    progress: (done: number, of: number) => `${done} of ${of} recordings`,
    stopped: (done: number, of: number) =>
      `Stopped. ${done} of ${of} recordings are sorted and kept; the same command goes on from there.`,
    passedOver: (files: number) => `${many(files, 'other file was', 'other files were')} passed over.`,
    newNames: (file: string, names: readonly string[]) =>
      `Not in ${file}, and taken from folders and files as they stand: ${names.join(', ')}. Add them, or write their names behind a colon to whom they belong.`,
    noName: 'no name',
    cannotTell: 'cannot tell which exercise',
    otherPlaying: 'other playing',
    likeliest: (readings: readonly string[]) => `Likeliest: ${readings.join('; or ')}.`,
    /** how many recordings, attempts and students, and what else there was */
    sum: (files: number, attempts: number, students: number) =>
      `${many(files, 'recording')}, ${many(attempts, 'attempt')}${students === 0 ? '' : ` of ${many(students, 'student')}`}`,
    notRecognised: (stretches: number) =>
      `${many(stretches, 'stretch', 'stretches')} of playing not recognised`,
    withoutPlaying: (files: number) => `${files} without playing`,
    unread: (files: number) => `${files} that could not be read`,
    title: 'Recordings',
    notListed: 'Left out',
    sinceBefore: 'Since the attempt before',
    since: (day: string) => `Since ${day}`,
    /** the fastest tempo that is still even; `least`: nothing faster has failed */
    fastest: (title: string, tempo: string, least: boolean) =>
      `Fastest still even, ${title}: ${least ? `at least ${tempo}` : tempo}.`,
    asBefore: 'as before',
    change: (what: string, now: string, before: string) => `${what}, ${now} (before ${before})`,
    changes: {
      mistakes: { better: 'fewer mistakes', worse: 'more mistakes' },
      evenness: { better: 'more even', worse: 'less even' },
      crossings: { better: 'fewer late crossings', worse: 'more late crossings' },
      spread: { better: 'chords more as one', worse: 'chords more spread' },
      loudness: { better: 'loudness more even', worse: 'loudness less even' },
      tempo: { better: 'faster', worse: 'slower' },
    },
  },
  review: {
    review: (student: string) => (student === '' ? 'A review' : `A review for ${student}`),
    attempts: (student: string) => (student === '' ? 'Attempts' : `Attempts of ${student}`),
    from: (teacher: string) => `from ${teacher}`,
    to: (teacher: string) => `to ${teacher}`,
    toPractise: 'To practise',
    played: (day: string) => `played ${day}`,
    withSound: 'with its sound',
    withoutSound: 'without its sound',
    takenFor: (title: string) => `Taken for: ${title}; the teacher chose the exercise.`,
    corrects: (place: string, verdict: string, why: string) =>
      `The teacher says of ${place}: ${verdict}. ${why}`.trimEnd(),
    verdicts: {
      correct: 'it was right',
      wrong: 'it was wrong',
      missed: 'it was missed',
      'not-played': 'it was not played',
      mistaken: 'that is mistaken',
    },
    example: 'Your teacher played it as an example; it is heard on the page.',
    spoken: '(spoken)',
    /** names of sounds that came from no file */
    names: {
      'your recording': 'your recording',
      'example attempt': 'example attempt',
      'at the piano': 'at the piano',
    } as Readonly<Record<string, string>>,
    wholeAttempt: 'the attempt',
    stretch: (from: number, to: number, first: string, last: string) =>
      `notes ${from} to ${to} (${first} to ${last})`,
    extraNote: (sec: string) => `an extra note${sec === '' ? '' : ` at ${sec} s`}`,
    note: (number: number, name: string) => `note ${number} (${name})`,
    atTempo: (bpm: number) => `at ${bpm} beats a minute`,
    inARow: (times: number) => (times === 1 ? 'once' : `${times} times in a row`),
    evenness: (percent: string) => `variation ${percent} % at most`,
    asUsual: 'as usual',
  },
  exercises: {
    forms: {
      arpeggio: (most: number) => `the tonic triad note by note, up and down, 1 to ${most} octaves`,
      triads: () => 'the tonic triad and its inversions, solid, up and down an octave',
      'broken-triads': () => 'the same chords broken, three notes each',
      progression: () => 'I-IV-I-V7-I (i-iv-i-V7-i) in close position',
      scale: (most: number) => `the scale up and down, 1 to ${most} octaves (minor: see --minor-scale)`,
      'dominant-seventh': (most: number) => `V7 note by note, up and down, 1 to ${most} octaves`,
      'diminished-seventh': (most: number) =>
        `the diminished seventh on the leading note, note by note, 1 to ${most} octaves`,
      chromatic: (most: number) => `all twelve notes up and down from the tonic, 1 to ${most} octaves`,
      'five-finger': () => 'the first five notes of the key up and down, a finger each',
      'contrary-motion': (most: number) => `the hands from one key apart and back, 1 to ${most} octaves`,
      'two-octaves-apart': (most: number) => `the scale, hands two octaves apart, 1 to ${most} octaves`,
      'tenths-apart': (most: number) =>
        `the scale, the right hand a tenth above the left, 1 to ${most} octaves`,
      'sixths-apart': (most: number) =>
        `the scale, the right hand a sixth above the left, 1 to ${most} octaves`,
      'thirds-apart': (most: number) =>
        `the scale, the right hand a third above the left, 1 to ${most} octaves`,
      'double-thirds': (most: number) => `the scale in thirds, each hand both notes, 1 to ${most} octaves`,
      'double-sixths': (most: number) => `the scale in sixths, each hand both notes, 1 to ${most} octaves`,
      'scale-in-octaves': (most: number) => `the scale, each hand in octaves, 1 to ${most} octaves`,
      'arpeggio-first-inversion': (most: number) => `the arpeggio from its third, 1 to ${most} octaves`,
      'arpeggio-second-inversion': (most: number) => `the arpeggio from its fifth, 1 to ${most} octaves`,
      'four-note-chords': () => 'the triads with their lowest note on top too, solid',
      'broken-four-note-chords': () => 'the same chords broken, four notes each',
      'cadence-fifth': () => 'I-IV-I-V-I, bass in the left hand, chords in the right, the fifth first on top',
      'cadence-octave': () =>
        'I-IV-I-V-I, bass in the left hand, chords in the right, the octave first on top',
      'cadence-third': () => 'I-IV-I-V-I, bass in the left hand, chords in the right, the third first on top',
      'cadence-seventh-fifth': () =>
        'I-IV-I-V7-I, bass in the left hand, chords in the right, the fifth first on top',
      'cadence-seventh-octave': () =>
        'I-IV-I-V7-I, bass in the left hand, chords in the right, the octave first on top',
      'cadence-seventh-third': () =>
        'I-IV-I-V7-I, bass in the left hand, chords in the right, the third first on top',
      'cadence-second-fifth': () =>
        'I-IV-ii6-V7-I, bass in the left hand, chords in the right, the fifth first on top',
      'cadence-second-octave': () =>
        'I-IV-ii6-V7-I, bass in the left hand, chords in the right, the octave first on top',
      'cadence-second-third': () =>
        'I-IV-ii6-V7-I, bass in the left hand, chords in the right, the third first on top',
    },
    noteByNote: 'Note by note, with fingers:',
    otherFingers: 'Other fingers',
    noSource: 'common practice, no source',
    tables: (letters: string) => `in published tables (${letters})`,
    signature: 'Signature',
    accidentals: {
      none: () => 'no sharps or flats',
      sharps: (n: number) => `${n} sharps`,
      flats: (n: number) => `${n} flats`,
    },
    scale: 'Scale',
    minorScale: (kind: 'natural' | 'harmonic' | 'melodic') => `Scale, ${kind}`,
    triad: 'Tonic triad',
    step: 'step',
    beat: 'beat',
    hand: { left: 'left hand', right: 'right hand' },
    crossings: { 'thumb-under': 'thumb under', 'over-thumb': 'over the thumb' },
  },
};

export type Messages = typeof MESSAGES;
