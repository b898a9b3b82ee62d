import type { Correction } from '../../../io/review/index.ts';

const VERDICTS: Readonly<Record<Correction['verdict'], string>> = {
  correct: 'it was right',
  wrong: 'it was wrong',
  missed: 'it was missed',
  'not-played': 'it was not played',
  mistaken: 'that is mistaken',
};

/** An attempt that a teacher has reviewed, and the page that it is sent as. */
export const REVIEW = {
  remarks: 'Remarks',
  noRemarks: 'No remarks on this attempt.',
  /** what a mark over the string is called */
  pin: (number: number, place: string) => `Remark ${number}: ${place}`,
  note: (name: string, number: number) => `note ${number}, ${name}`,
  extraNote: (name: string) => `${name}, not in the exercise`,
  stretch: (from: string, to: string, first: number, last: number) =>
    `from ${from} to ${to}, notes ${first} to ${last}`,
  attempt: 'The whole attempt',
  hearPlace: ': hear this spot',
  hear: 'Hear the remark',
  hush: 'Stop',
  opening: 'Opening …',
  spoken: 'This remark is spoken.',
  cannotHear: 'This spoken remark cannot be played here.',
  heardAs: (words: string) => `Evenfall heard: ${words}.`,
  VERDICTS,
  says: (verdict: string) => `Your teacher says: ${verdict}.`,
  tookFor: (title: string) => `Evenfall took it for: ${title}. Your teacher chose the exercise.`,
  /** the page */
  title: (student: string) => (student === '' ? 'A review' : `A review for ${student}`),
  sentTitle: (student: string) => (student === '' ? 'Attempts' : `Attempts of ${student}`),
  from: (teacher: string) => `from ${teacher}`,
  made: (when: string) => `of ${when}`,
  played: (when: string) => `played ${when}`,
  /** where the picture of an attempt is told by its verdict */
  picture: 'The attempt as a string of pearls; what matters in it is told in words beside it.',
  example: 'How your teacher plays it',
  hearExample: 'Hear it',
  examplePicture: 'The teacher’s playing as a string of pearls.',
  exampleSound: 'Your teacher plays it',
  sound: 'The recording',
  next: 'Next:',
  assigned: 'To practise',
  onPaper: 'Spoken remarks and recordings are heard in the file, not on paper.',
  madeBy:
    'This page was made by Evenfall. It holds everything itself: it asks nothing of any network and runs no program.',
  care: 'With pain or numbness stop and rest, and ask your teacher and a health professional.',
};
