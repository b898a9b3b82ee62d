import { FORM_NAMES } from '../../../engine/index.ts';
import type { FaultKind, FaultPlace, Hands, Level, SetForm, Touch } from '../../../engine/index.ts';
import { attempts, inWords } from './amounts.ts';
import { LEVEL_TABLE } from './levels.ts';

const HANDS: Readonly<Record<Hands, string>> = {
  left: 'left hand',
  right: 'right hand',
  together: 'hands together',
};
const LEVELS: Readonly<Record<Level, string>> = {
  new: 'not played',
  'not-yet': 'not yet',
  nearly: 'nearly',
  ready: 'ready',
};
const first = (word: string): string => word.charAt(0).toUpperCase() + word.slice(1);
const notes = (count: number): string => `${inWords(count)} ${count === 1 ? 'note was' : 'notes were'}`;

/** The journal: what was played, where each exercise stands, and what is due. */
export const JOURNAL = {
  title: 'Journal',
  opening: 'Opening the journal …',
  close: 'Close',
  locale: 'en-GB',
  FORMS: FORM_NAMES.en,
  HANDS,
  LEVELS,
  /** a form in its key; `tonic` where the form says the mode itself */
  called: (key: string, tonic: string | null, form: string) => `${tonic ?? key} ${form}`,
  minorScales: {
    natural: 'natural minor scale',
    harmonic: 'harmonic minor scale',
    melodic: 'melodic minor scale',
  },
  octaves: (count: number) => `${count} ${count === 1 ? 'octave' : 'octaves'}`,
  attempts,
  playIt: 'Play it',
  today: {
    title: 'Today',
    minutes: 'Minutes',
    rest: (minutes: number) => `Then rest for ${minutes} minutes, hands in your lap.`,
    /** `tempo`: ", ♩ = 80" or nothing */
    length: (minutes: number, tempo: string) => `${minutes} ${minutes === 1 ? 'minute' : 'minutes'}${tempo}.`,
  },
  /** why something is in the plan of the day */
  reasons: {
    longAgo: (days: number) =>
      days < 14
        ? `Not played for ${days} days.`
        : days < 60
          ? `Not played for ${Math.floor(days / 7)} weeks.`
          : `Not played for ${Math.floor(days / 30)} months.`,
    upkeep: 'Ready; once more, so that it stays.',
    handFirst: 'This hand alone, before the hands go together.',
    first: 'To begin with, each hand alone.',
    otherHand: 'The other hand is ready; now this one alone.',
    together: 'Each hand alone is ready: hands together, slower at first.',
    beside: 'Something else in the same key; one hand at a time.',
    nextForm: (key: string) => `Part of what ${key} asks for; one hand at a time.`,
    moreOctaves: (key: string) => `All of ${key} is ready: over more octaves, one hand at a time.`,
    nextKey: (key: string, next: string) => `${key} is ready; ${next} is the next key.`,
    faster: (tempo: string) => `Ready at that; now faster, up to ${tempo}.`,
  },
  /** what kept the last attempt from the criterion; each reads on after "Last time" and after "also" */
  shortfalls: {
    lastTime: (what: string) => `Last time ${what}.`,
    also: (what: string) => `Also, ${what}.`,
    wrong: (count: number) => `${notes(count)} wrong`,
    missed: (count: number) => `${notes(count)} missed`,
    extra: (count: number) => `${notes(count)} too many`,
    several: (wrong: number, missed: number, extra: number) => {
      const parts = [
        ...(wrong > 0 ? [`${wrong} wrong`] : []),
        ...(missed > 0 ? [`${missed} missed`] : []),
        ...(extra > 0 ? [`${extra} too many`] : []),
      ];
      return `${notes(wrong + missed + extra)} not right: ${parts.join(', ')}`;
    },
    unsure: (count: number, of: number) => `${count} of ${of} notes could not be told`,
    crossing: (amount: string) => `one crossing came ${amount} late`,
    crossings: (count: number, amount: string) =>
      `${inWords(count)} crossings came late, the worst by ${amount}`,
    evenness: (value: string, bound: string) =>
      `the timing varied by ${value} from note to note, and up to ${bound} counts as even`,
    chords: (value: string, bound: string) =>
      `the notes of a chord came ${value} apart, and up to ${bound} counts as one`,
    hands: (value: string, bound: string) =>
      `the hands were ${value} apart, and up to ${bound} counts as together`,
    tempo: (bpm: string, least: string) => `it went at ${bpm}, and ${least} or more is asked for`,
    touch: {
      legato: (gap: string) => `${gap} were silent between the notes, and legato is asked for`,
      detached: () => 'the notes ran into each other, and detached is asked for',
      staccato: () => 'the notes were held too long for the staccato that is asked for',
    } satisfies Record<Touch, (gap: string) => string>,
    loudness: (value: string, bound: string) =>
      `the loudness varied by ${value} from note to note, and up to ${bound} is asked for`,
    evennessUnknown: 'its evenness could not be measured',
    tempoUnknown: 'its tempo could not be measured',
  },
  /** what to do about it; common practice, no source */
  remedies: {
    notes: 'Slower, until every note is right.',
    unsure: 'Nearer to the piano, or in a quieter room, so that every note can be heard.',
    evenness: 'The same, with the pulse.',
    crossings: 'Only the notes around the crossing, slowly; then the whole.',
    chords: 'Touch all the keys of the chord before pressing.',
    hands: 'Slower, stopping on each beat, both hands together.',
    tempo: 'Two or three beats faster each time, as long as it stays even.',
    touch: 'Slower, listening to how each note joins the next.',
    loudness: 'Slower, each note as loud as the one before.',
    'evenness-unknown': 'Once more, to the end and without a stop.',
    'tempo-unknown': 'Once more, to the end and without a stop.',
  },
  /** `at`: ", at ♩ = 80 or more" or nothing */
  inARow: (count: number, at: string) =>
    count === 1
      ? `The last attempt was right and even${at}.`
      : `The last ${inWords(count)} attempts were right and even${at}.`,
  at: (tempo: string) => `, at ${tempo} or more`,
  more: (count: number) =>
    count === 1 ? 'One more like it makes it ready.' : `${first(inWords(count))} more like it make it ready.`,
  moreOnDays: (count: number, days: number) =>
    count === 1
      ? 'One more like it, on another day, makes it ready.'
      : `${first(inWords(count))} more like it make it ready, ${days === 1 ? 'one of them on another day' : `on ${inWords(days)} more days`}.`,
  onDays: (days: number) =>
    days === 1
      ? 'Once more on another day, and it is ready.'
      : `On ${inWords(days)} more days, and it is ready.`,
  handsFirst: (hands: readonly string[]) =>
    `It is ready when ${hands.length === 1 ? `the ${hands[0]} alone is` : 'each hand alone is'}.`,
  cold: (right: number, days: number) =>
    `First try of the day: right and even on ${right === 0 ? 'none' : inWords(right)} of the last ${inWords(days)} days.`,
  leastBpm: (sign: string) => `Ready from ${sign} =`,
  notPlayedYet: 'Not played yet.',
  overview: {
    title: 'Where each stands',
    order: 'in each field: left hand, right hand, together',
    captions: {
      major: 'Major keys, round the circle of fifths',
      minor: 'Minor keys, round the circle of fifths',
    },
    key: 'Key',
    further: 'Further forms, as far as you have played them',
    /** soft hyphens where a narrow column may break the word */
    columns: {
      arpeggio: 'Arpeg\u00adgio',
      scale: 'Scale',
      triads: 'Triads',
      'broken-triads': 'Broken triads',
      progression: 'Progres\u00adsion',
    } satisfies Readonly<Record<SetForm, string>>,
    next: 'Next:',
    beginIt: 'Begin it',
  },
  trend: {
    when: 'When',
    evenness: 'Variation',
    notes: 'Notes',
    tempo: 'Tempo',
    notMeasured: 'not measured',
    label: (name: string, count: number) => `${name}: variation of the last ${attempts(count)}`,
    fromTo: (first: string, last: string) => `, first ${first}, last ${last}`,
    of: (count: number) => `Variation of ${attempts(count)}`,
    ofLast: (count: number, all: number) =>
      `Variation of the last ${count} of ${all.toLocaleString('en-GB')} attempts`,
  },
  list: {
    title: 'Attempts',
    label: 'Attempts, newest first',
    exercise: 'Exercise',
    all: 'all',
    empty:
      'Nothing is in it yet. What you record is kept here, with its sound and its report, on this device alone, until you pass it on yourself.',
    unread:
      'The journal could not be read: attempts that are kept in it are not shown. Load this page anew to try again.',
    unanalysed: 'not listened to yet',
    noReport: 'nothing to report was heard',
    right: (right: number, of: number, extra: number) =>
      `${right} of ${of} right${extra > 0 ? `, ${extra} extra` : ''}`,
    evenness: (value: string) => `variation ${value}`,
    today: (time: string) => `today ${time}`,
    yesterday: (time: string) => `yesterday ${time}`,
    remove: 'Delete',
    removed: (what: string) => `Deleted: ${what}.`,
    undo: 'Undo',
    deleted: (count: number) =>
      `${count} deleted ${count === 1 ? 'attempt' : 'attempts'} can be brought back within a week.`,
    bringBack: 'Bring back',
    back: 'The journal',
    storedOnly: 'This attempt was stored, but it has not been listened to yet.',
    listen: 'Listen to it now',
    noSound: 'The sound of this attempt is not kept any more; its report is whole.',
  },
  criteria: {
    title: 'What counts as ready',
    about:
      'No wrong, missed or repeated note, and what stands below. A teacher may want it otherwise: change it here. What ' +
      'counts as late at a crossing is for attempts from now on; the rest is judged anew for all.',
    lines: {
      readyInARow: 'Attempts in a row at the criterion',
      readyDays: '… on so many different days',
      evennessPercent: 'Variation of time at seven notes a second, at most',
      crossingPercent: 'A crossing late by at most, of its interval',
      chordSpreadMs: 'First to last note of a chord, at most',
      handsApartMs: 'Hands apart by at most',
      tempoPercent: 'Under the tempo asked for, by at most',
    },
    evenAt: (two: string, four: string, ten: string) =>
      `What is heard as uneven depends on the tempo: at two notes a second that is ${two}, at four ${four}, at ten ${ten}. At a crossing, a tenth stands for 24 ms in fast playing; another share holds at any tempo.`,
    reset: 'As it was at first',
  },
  /** the fastest tempo still even; `tempo`: "♩ = 96", with its ± where it has one */
  fastest: {
    about: (tempo: string) => `Fastest still even: ${tempo}.`,
    atLeast: (tempo: string) => `Fastest still even: ${tempo}; nothing faster has failed.`,
    grew: (steps: string) => `So it grew: ${steps}.`,
  },
  levels: LEVEL_TABLE,
  overWeeks: {
    title: 'Over the weeks',
    about:
      'The same fault at the same kind of place, in attempt after attempt and whatever the key; told only where it is no chance ' +
      '(an exact test over the last 200 attempts; in 95 of 100 journals without such a fault it tells none).',
    looking: 'Looking through the attempts …',
    none: 'No fault comes back so often that it is no chance.',
    hands: { left: 'Left hand', right: 'Right hand', together: 'Hands together' },
    places: {
      'degree-1': 'the tonic',
      'degree-2': 'the second degree of the key',
      'degree-3': 'the third degree of the key',
      'degree-4': 'the fourth degree of the key',
      'degree-5': 'the fifth degree of the key',
      'degree-6': 'the sixth degree of the key',
      'degree-7': 'the seventh degree of the key',
      'crossing-up': 'the note after a crossing going up',
      'crossing-down': 'the note after a crossing going down',
      turn: 'the note at the turn',
    } satisfies Readonly<Record<FaultPlace, string>>,
    kinds: { note: 'was wrong or missed', late: 'came late' } satisfies Readonly<Record<FaultKind, string>>,
    found: (hands: string, what: string, count: number, of: number, keys: number, ofKeys: number) =>
      `${hands}: ${what} in ${count} of ${of} attempts, in ${keys} of ${ofKeys} ${ofKeys === 1 ? 'key' : 'keys'}.`,
    then: (before: number, ofBefore: number, since: number, ofSince: number) =>
      `In the earlier half ${before} of ${ofBefore}, in the later one ${since} of ${ofSince}.`,
    behind: (count: number) => `The ${attempts(count)} behind it`,
    coldBest: (cold: string, best: string, days: number) =>
      `From cold it varies by ${cold}, at the best of the day by ${best} (the middle of ${inWords(days)} days).`,
  },
  storage: {
    title: 'Kept on this device',
    /** leads there */
    toKeeping: 'Keep a copy',
    kept: (count: number, withSound: number, bytes: string) => {
      if (withSound === 0) return `${attempts(count)}, none with sound.`;
      return `${attempts(count)}, ${withSound === count ? 'all' : withSound.toLocaleString('en-GB')} with sound (${bytes}).`;
    },
    use: (used: string, quota: string) => `Evenfall takes ${used} of the ${quota} that this browser allows.`,
    persisted: 'The browser has promised not to clear it by itself.',
    notPersisted: 'When room gets short, the browser may clear it, unless it promises not to.',
    nowhereElse: 'It is nowhere else: export it now and then.',
    remind: (count: number) =>
      `${attempts(count)} are on this device only. Export the journal to keep a copy.`,
    export: 'Export the journal',
    import: 'Import a journal',
    toImport: 'A journal to import',
    persist: 'Ask the browser to keep it',
    forget: (count: number, bytes: string) => `Let go of the sound of ${count} older attempts (${bytes})`,
    file: 'Journal file',
    written: (bytes: string) => `Written: ${bytes}.`,
    promised: 'The browser will not clear the journal by itself.',
    notPromised:
      'The browser would not promise it. Installing the page, or using it often, may help; and export the journal now ' +
      'and then.',
    added: (count: number) => `${attempts(count)} added`,
    same: (count: number) => `${count} here already`,
    both: (count: number) => `${count} here already but otherwise: both are kept`,
    refused: (count: number) => `${count} not taken over`,
  },
};
