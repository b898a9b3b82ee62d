import type { Strings } from '../english/index.ts';
import { COMPARE } from './compare.ts';
import { COMPOSE } from './compose.ts';
import { DETAIL } from './detail.ts';
import { FRAME } from './frame.ts';
import { FROM_TEACHER } from './from-teacher.ts';
import { JOURNAL } from './journal.ts';
import { KEYS } from './keys.ts';
import { LISTEN } from './listen.ts';
import { NAMES } from './names.ts';
import { PEARLS } from './pearls.ts';
import { PREPARE } from './prepare.ts';
import { RECORD } from './record.ts';
import { MEASURES, REPORT } from './report.ts';
import { REVIEW } from './review.ts';
import { SEND } from './send.ts';
import { STAND } from './stand.ts';
import { TAKE_OUT } from './take-out.ts';
import { TEACHER } from './teacher.ts';
import { THEORY } from './theory.ts';

/** The page in German; says "du". A string that is missing does not compile. */
export const GERMAN: Strings = {
  decimalSign: ',',
  and: 'und',
  frame: FRAME,
  fromTeacher: FROM_TEACHER,
  names: NAMES,
  journal: JOURNAL,
  keys: KEYS,
  prepare: PREPARE,
  record: RECORD,
  pearls: PEARLS,
  report: REPORT,
  measures: MEASURES,
  listen: LISTEN,
  detail: DETAIL,
  compare: COMPARE,
  compose: COMPOSE,
  review: REVIEW,
  send: SEND,
  stand: STAND,
  takeOut: TAKE_OUT,
  teacher: TEACHER,
  theory: THEORY,
};
