import { capital } from '../../../engine/index.ts';
import { inWords } from './amounts.ts';

/** What comes from a teacher: reviews, and what is assigned. */
export const FROM_TEACHER = {
  title: 'From your teacher',
  empty:
    'When your teacher answers with a review, open its file here: the remarks are shown on your attempts, and what is ' +
    'assigned comes first in the plan.',
  open: 'Open a review',
  send: 'Send to my teacher',
  toOpen: 'A review to open',
  reading: (name: string) => `Reading ${name}`,
  close: 'Close',
  assigned: 'Assigned',
  reviews: 'Reviews',
  /** what is asked of an exercise, after its tempo */
  asked: {
    inARow: (count: number) =>
      count === 1 ? 'once' : count === 2 ? 'twice in a row' : `${inWords(count)} times in a row`,
    evenness: (bound: string) => `variation ${bound} at most`,
    asUsual: 'as usual',
  },
  /** in the plan of the day */
  inPlan: (how: string) => `Your teacher asks for it. ${how}`,
  notPlayed: 'Not played since.',
  soFar: (count: number, wanted: number) =>
    `${capital(inWords(count))} of ${inWords(wanted)} in a row so far.`,
  met: (when: string) => `Done, ${when}.`,
  /** "From Ms Ley, 24 Nov 2026" */
  from: (teacher: string, when: string) => (teacher === '' ? when : `From ${teacher}, ${when}`),
  unread: 'Not read yet.',
  holds: (attempts: number, remarks: number) =>
    `${capital(inWords(attempts))} ${attempts === 1 ? 'attempt' : 'attempts'}, ${inWords(remarks)} ${remarks === 1 ? 'remark' : 'remarks'}.`,
  remove: 'Delete',
  removed: (what: string) => `Deleted, with what it assigned: ${what}.`,
  undo: 'Undo',
  deleted: (count: number) =>
    `${count} deleted ${count === 1 ? 'review' : 'reviews'} can be brought back within a week.`,
  bringBack: 'Bring back',
  page: {
    back: 'The journal',
    print: 'Print it',
    title: (teacher: string) => (teacher === '' ? 'From your teacher' : `From ${teacher}`),
    attempt: (number: number, of: number) => `Attempt ${number} of ${of}`,
    before: 'The one before',
    next: 'The next one',
    played: (when: string) => `played ${when}`,
    noSound: 'It was sent without its sound, and this device does not keep it either.',
    ownSound: 'It was sent without its sound; you hear your own recording.',
    noAttempts: 'No attempt came with this review.',
  },
};
