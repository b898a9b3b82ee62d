/** Recording an attempt and opening a file. */
export const RECORD = {
  yourAttempt: 'Your attempt',
  record: 'Record',
  open: 'Open a recording',
  example: 'Example',
  aside: 'or drop a recording anywhere on this page',
  /** where a browser does not */
  noAac: 'This browser reads no M4A (AAC); WAV, FLAC, MP3, Ogg, Opus and WebM it does.',
  toOpen: 'A recording to open',
  reading: (name: string) => `Reading ${name}`,
  listening: (name: string) => `Listening to ${name}`,
  /** names of sounds that have no file's name */
  names: {
    'your recording': 'your recording',
    'example attempt': 'example attempt',
    'at the piano': 'at the piano',
  },
  /** what did not work; why stands below it */
  failed: {
    microphone: 'The microphone could not be opened',
    'microphone-gone': 'The microphone went away',
    file: 'This file could not be opened',
    analysis: 'This attempt could not be analysed',
    reviews: 'The reviews could not be kept or read',
  },
  cancel: 'Cancel',
  waiting: 'Waiting for the microphone: your browser may ask whether this page may use it.',
  explain:
    'The microphone is on only while you record, and the sound stays on this device. Stand the device one to two ' +
    'metres from the piano.',
  turnOn: 'Turn on the microphone',
  notNow: 'Not now',
  recording: 'Recording',
  ready: 'Ready',
  microphone: 'Microphone',
  level: 'Level of the microphone',
  clipping: 'clipping',
  start: 'Start',
  stop: 'Stop',
  throwAway: 'Throw away',
  tooLoud: 'Too loud: move the device away.',
  nothingYet: 'No sound comes in: play a note.',
  veryQuiet: 'Very quiet: move the device nearer.',
  levelGood: 'The level is good.',
};
