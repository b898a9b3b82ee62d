import { attempts } from './amounts.ts';

/** Attempts on their way to a teacher. */
export const SEND = {
  title: 'Send to my teacher',
  back: 'The journal',
  nothing: 'There is nothing to send yet. Record an attempt first.',
  which: 'Which attempts',
  chosen: (count: number) => `${attempts(count)} chosen`,
  none: 'Choose at least one attempt.',
  most: (count: number) => `At most ${count} attempts go into one file.`,
  older: 'Older attempts',
  newestOnly: 'The newest of each exercise',
  noSoundKept: 'sound not kept',
  sound: { legend: 'Sound', with: 'With its sound', without: 'Without sound' },
  name: 'Your name',
  nameHint: 'as your teacher knows you; it is remembered on this device',
  words: 'A few words',
  wordsHint: 'if you like: what was hard, what you would like to know',
  inside: (count: number, withSound: boolean) =>
    `In the file: your name and words, and ${attempts(count)} with the report${withSound ? ' and the sound, packed small' : ', without sound'}.`,
  nothingSent:
    'Evenfall sends nothing itself. It makes a file on this device, and you pass it on to your teacher by whatever way you use.',
  consent: 'Pass on recordings of children only with their guardian’s consent.',
  make: 'Make the file',
  making: 'The file is being made',
  cancel: 'Cancel',
  made: (name: string, bytes: string) => `${name} is ready (${bytes}).`,
  save: 'Save the file',
  share: 'Pass it on …',
  shared: 'Handed to the system, which passes it on.',
  saved: 'Saved. Now send it to your teacher, by mail or as you like.',
  this: 'Send this to my teacher',
};
