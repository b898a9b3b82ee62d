import * as v from 'valibot';
import { NOTE_NAME, NUMBER, told, type Shape } from '../base/shapes.ts';

const notice = <Name extends string, Values extends v.ObjectEntries>(name: Name, values: Values) =>
  v.object({ notice: v.literal(name), ...values });

const COUNT = v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(1e9));
const SEC = v.pipe(v.number(), v.minValue(0), v.maxValue(1e6));

/** What was found about the sound. */
const FOUND = [
  notice('too-short', { lastsSec: SEC }),
  notice('silence', {}),
  notice('bad-samples', { samples: COUNT }),
  notice('too-quiet', { peakDb: told('of full scale', NUMBER) }),
  notice('clipping', { times: COUNT }),
  notice('dead-channel', { channels: COUNT }),
  notice('channels-cancel', { lostDb: NUMBER }),
  notice('noise', { aboveDb: told('of the playing over the room', NUMBER) }),
  notice('hum', { mainsHz: NUMBER, belowDb: told('under the playing', NUMBER) }),
  notice('speech', { places: COUNT }),
  notice('not-a-piano', {}),
] as const;

/** Why there is no report. */
const UNREPORTED = [notice('no-notes', {}), notice('not-recognised', {})] as const;

/** What became of the sound on its way here. */
const ON_THE_WAY = [
  notice('cut-at', { minutes: SEC }),
  notice('partly-read', { readSec: SEC, wholeSec: SEC }),
  notice('form-changes', { afterSec: SEC }),
  notice('channels-left-out', { channels: COUNT, read: COUNT }),
  notice('one-channel-taken', { channels: COUNT }),
  notice('damaged-after', {}),
  notice('holes-filled', {}),
  notice('breaks-off', { thereSec: SEC, wholeSec: SEC }),
  notice('device-processing', {
    by: v.picklist(['echo-cancellation', 'noise-suppression', 'automatic-gain']),
  }),
  notice('sound-lost', { lostSec: SEC }),
  notice('page-closed', {}),
] as const;

/** Why a figure could not be had. */
const NO_FIGURE = [
  notice('no-note-judged', {}),
  notice('needs-thumb-and-others', {}),
  notice('needs-right-notes', { needed: COUNT, there: COUNT }),
  notice('needs-right-notes-of-each-hand', {}),
  notice('within-own-error', { errorDb: NUMBER }),
  notice('needs-intervals', { needed: COUNT, there: COUNT }),
  notice('no-turn', {}),
  notice('interval-not-whole', { which: v.picklist(['first', 'last', 'turn']) }),
  notice('hand-not-known', {}),
  notice('no-crossing', {}),
  notice('no-crossing-whole', {}),
  notice('needs-chords', {}),
  notice('needs-chords-of-one-hand', {}),
  notice('needs-chords-of-three', {}),
  notice('needs-changes', {}),
  notice('needs-steps-of-both-hands', {}),
  notice('too-few-between-ends', {}),
  notice('pedal-held', {}),
  notice('levels-cut', {}),
  notice('damping-not-heard', { of: v.picklist(['notes', 'chords', 'this-chord']) }),
] as const;

/** Why it cannot be told whether a written note was struck. */
const NOT_SURE = [
  notice('may-be-covered', { name: NOTE_NAME }),
  notice('too-faint-to-name', { name: NOTE_NAME }),
  notice('too-faint', { name: NOTE_NAME }),
  notice('not-certain', { name: NOTE_NAME }),
  notice('may-be-held-over', { name: NOTE_NAME }),
] as const;

/**
 * What is to know besides the playing, without any language: of the sound, of a figure that could not be had, of a note that is
 * not sure. Told by `tellNotice`.
 */
export const NOTICE = told(
  'what the sentence beside it says, as values, from which it is told in any language; absent in version 0.1',
  v.variant('notice', [...FOUND, ...UNREPORTED, ...ON_THE_WAY, ...NO_FIGURE, ...NOT_SURE]),
);
export type Notice = Shape<typeof NOTICE>;
export type NoticeName = Notice['notice'];
/** The values of one. */
export type Noticed<Name extends NoticeName> = Extract<Notice, { readonly notice: Name }>;
/** How every notice is told: what one language can tell, all must be able to. */
export type Tellings = { readonly [Name in NoticeName]: (values: Noticed<Name>) => string };

export const SOUND_NOTICE = told(
  'the same as values, from which it is told in any language; absent in version 0.1',
  v.variant('notice', FOUND),
);
/** What was found about the sound, the gravest of it a reason why there is no report. */
export type SoundNotice = Shape<typeof SOUND_NOTICE>;

/** What is kept of a notice: the notice itself, or the sentence that version 0.1 kept in its place. */
export type KeptNotice = Notice | string;
