import { counted } from '../../kit/figures.ts';

/** The class as a whole, on the page for teachers: names, a line each, what came in, one file of all. */
export const CLASS = {
  glance: {
    title: (count: number) => `The class: ${counted(count, 'student', 'students')}`,
    search: 'Find a name',
    order: 'First',
    byHelp: 'who needs help most',
    byName: 'by name',
    byLast: 'who sent last',
    nothingOpen: 'nothing open',
    open: (count: number) => `${count} open`,
    unheard: (count: number) => `${count} to be heard`,
    remarked: (count: number) => `${count} with remarks`,
    untold: (count: number) => `nothing was recognised in ${counted(count, 'recording', 'recordings')}`,
    weeks: (sent: number, of: number) => `sent something in ${sent} of the last ${of} weeks`,
    nobody: 'Nobody is called so.',
    common: 'Common now:',
    faults: {
      notes: (count: number) => `notes not right with ${counted(count, 'student', 'students')}`,
      unsure: (count: number) => `notes that could not be told with ${counted(count, 'student', 'students')}`,
      crossings: (count: number) => `late crossings with ${counted(count, 'student', 'students')}`,
      evenness: (count: number) => `uneven time with ${counted(count, 'student', 'students')}`,
      chords: (count: number) => `spread chords with ${counted(count, 'student', 'students')}`,
      hands: (count: number) => `hands apart with ${counted(count, 'student', 'students')}`,
      tempo: (count: number) => `under the tempo with ${counted(count, 'student', 'students')}`,
      touch: (count: number) => `another touch than asked with ${counted(count, 'student', 'students')}`,
      loudness: (count: number) => `uneven loudness with ${counted(count, 'student', 'students')}`,
      'evenness-unknown': (count: number) =>
        `evenness not measured with ${counted(count, 'student', 'students')}`,
      'tempo-unknown': (count: number) => `tempo not measured with ${counted(count, 'student', 'students')}`,
    },
    reviews: (count: number) => `Make ${counted(count, 'review', 'reviews')} at once`,
    reviewsHint:
      'with all that was heard or remarked on and is not answered yet; one file for each student, in one zip',
    saved: (count: number, name: string, bytes: string) =>
      `${counted(count, 'review', 'reviews')} saved in ${name} (${bytes}). Nothing was sent: unpack it and send each as you like.`,
    fileName: 'reviews',
  },
  cameIn: {
    title: (count: number) => `Everything that came in (${count})`,
    hint: 'each recording whole, with talk and pauses',
    hear: 'Hear it whole',
    stop: 'Stop',
    opening: 'Opening …',
    nothing: 'No exercise was found in it.',
    found: (attempts: number, other: number) =>
      `${counted(attempts, 'attempt', 'attempts')}${other === 0 ? '' : `, ${counted(other, 'stretch', 'stretches')} of other playing`}.`,
    kept: (count: number, bytes: string) =>
      `${counted(count, 'recording', 'recordings')} as they came, ${bytes}, to be heard whole.`,
    letGo: 'Let go of these; their attempts stay',
  },
  piano: {
    stands: (where: string) =>
      `The piano stands ${where}, as your correction showed: all recordings of it are read so.`,
    reading: (done: number, of: number) => `${done} of ${counted(of, 'recording', 'recordings')} read anew`,
    forget: 'Forget that',
  },
  example: {
    title: 'Play it as an example',
    hint: 'at your own piano; it goes along in the review',
    there: 'played; it goes along in the review',
    about:
      'Your playing is listened to like an attempt and stands as a string beside the student’s. Nothing is judged in it for the student.',
    speak: 'Play it now',
    speakAgain: 'Play it again',
    recording: 'Listening, up to three minutes',
    packing: 'It is being listened to …',
    hear: 'Hear your example',
    throwAway: 'Throw the example away',
  },
  templates: {
    remarks: 'Your words, to be used again',
    keep: 'Keep these words to use again',
    all: (count: number) => `All your words (${count})`,
    fewer: 'Fewer',
    remove: 'Delete',
    assignments: 'Your own assignments',
    name: 'A name for these exercises',
    keepAssignment: 'Keep these exercises to assign again',
  },
  backup: {
    never: 'All this lies on this device only, and was never saved anywhere else.',
    last: (when: string) => `All of it was saved in one file last ${when}.`,
    persisted: 'The browser has promised not to clear it by itself.',
    notPersisted: 'The browser may clear it when space runs short.',
    persist: 'Ask the browser to keep it',
    promised: 'The browser has promised to keep it.',
    notPromised: 'The browser promised nothing. Save it in one file now and then.',
    save: 'Save everything in one file',
    bringIn: 'Bring such a file in',
    toBringIn: 'A file with everything, to bring in',
    working: 'Packing or unpacking',
    fileName: 'evenfall-teacher',
    saved: (name: string, bytes: string) =>
      `Saved as ${name} (${bytes}), where your browser puts downloads. It holds recordings of your students: keep it where only you can open it.`,
    broughtIn: (students: number, attempts: number, known: number, refused: number) =>
      `${counted(students, 'student', 'students')} and ${counted(attempts, 'attempt', 'attempts')} came in; ${counted(known, 'attempt was', 'attempts were')} here already. Nothing here was overwritten.` +
      (refused === 0 ? '' : ` ${counted(refused, 'part', 'parts')} of the file could not be read.`),
  },
  names: {
    title: (count: number) => (count === 1 ? 'Is this name right?' : `Are these ${count} names right?`),
    about:
      'Names were read out of folders and files. Say once that they are right, or whose they are: from then on recordings that are called so are known.',
    all: 'All are right',
    right: 'That is right',
    same: (name: string) => `It is ${name}`,
    name: 'Whose they are',
    more: (count: number) => `and ${count} more`,
    given: (name: string) => `These recordings belong to ${name} now.`,
  },
};
