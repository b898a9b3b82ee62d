import type { Notice } from '../../engine/index.ts';
import type { A, NO_ROOM, OTHERS, SENTENCES } from './sentences.ts';

/** What keeps something on this device. */
export type Keeper = keyof typeof NO_ROOM;
/** What a file turned out to be that is no sound file, or sound of a kind that is not read here. */
export type OtherFile = keyof typeof OTHERS;
/** Files that say in a header what sound they hold. */
export type Container = keyof typeof A;
/** Without any values. */
type Plain = keyof typeof SENTENCES;

/** With its values. `of` and `because` are what lies behind it. */
type Valued =
  | { readonly trouble: 'within'; readonly name: string; readonly of: Trouble }
  | { readonly trouble: 'page-opens-it'; readonly of: Trouble }
  | { readonly trouble: 'file-other'; readonly what: OtherFile }
  | { readonly trouble: 'opus-channels'; readonly channels: number }
  | { readonly trouble: 'header-missing' | 'container-without-sound'; readonly container: Container }
  | {
      readonly trouble: 'header-senseless';
      readonly container: Container;
      readonly channels: number;
      readonly rateHz: number;
      readonly bits: number;
    }
  /** null: of a rare kind */
  | {
      readonly trouble: 'packed-otherwise';
      readonly container: Container;
      readonly codec: string | null;
    }
  | { readonly trouble: 'rate-impossible'; readonly rateHz: number }
  | { readonly trouble: 'codec-other'; readonly codec: string }
  | { readonly trouble: 'zip-too-large'; readonly mostMb: number }
  | { readonly trouble: 'zip-too-many'; readonly files: number; readonly most: number }
  | { readonly trouble: 'zip-member-too-large'; readonly name: string; readonly mostMb: number }
  | { readonly trouble: 'zip-unpacks-too-much'; readonly mostMb: number }
  | {
      readonly trouble: 'zip-member-swells' | 'zip-twice' | 'zip-member-damaged' | 'same-sound';
      readonly name: string;
    }
  | { readonly trouble: 'review-unopened' | 'review-refused'; readonly because: Trouble }
  | {
      readonly trouble: 'review-part-too-large' | 'review-no-sound' | 'review-too-many-notes';
      readonly name: string;
    }
  | { readonly trouble: 'review-manifest'; readonly place: string }
  | { readonly trouble: 'review-no-report'; readonly name: string; readonly place: string }
  | { readonly trouble: 'review-no-such-step'; readonly attempt: number }
  | { readonly trouble: 'review-unwritable'; readonly place: string; readonly detail: string }
  | { readonly trouble: 'music-too-large'; readonly mostMb: number }
  | { readonly trouble: 'music-too-long'; readonly bars: number; readonly most: number }
  | { readonly trouble: 'music-no-bars'; readonly from: number; readonly to: number; readonly bars: number }
  /** null: no other bars would do */
  | {
      readonly trouble: 'music-grace' | 'music-no-pitches' | 'music-between-keys' | 'music-endings';
      readonly bars: number | null;
    }
  | { readonly trouble: 'music-staves'; readonly staves: number }
  /** an attempt in a journal's file. `whenMs`: when it was played; null: its name does not tell. `place`: where in it, by its schema */
  | { readonly trouble: 'journal-attempt'; readonly whenMs: number | null; readonly place: string }
  | { readonly trouble: 'journal-no-sound' | 'journal-too-large'; readonly whenMs: number | null }
  | { readonly trouble: 'levels-damaged'; readonly place: string }
  | { readonly trouble: 'journal-and-more'; readonly more: number }
  | { readonly trouble: 'no-room' | 'used-by-newer' | 'keeps-nothing'; readonly keeper: Keeper }
  | { readonly trouble: 'not-kept'; readonly keeper: Keeper; readonly because: Trouble }
  | { readonly trouble: 'sound-lost'; readonly lostSec: number }
  | { readonly trouble: 'not-worked-out' | 'file-not-made' | 'not-passed-on'; readonly because: Trouble }
  | { readonly trouble: 'not-reported'; readonly notice: Notice }
  /** as the system names it (POSIX errno) */
  | { readonly trouble: 'system-refuses'; readonly code: string }
  | { readonly trouble: 'unforeseen'; readonly detail: string };

/** What did not work, without any language: a code with its values. Told by `tellTrouble`. */
export type Trouble = { readonly trouble: Plain } | Valued;
export type TroubleName = Trouble['trouble'];

/** How every trouble is told; one without values is a sentence as it stands. */
export type Tellings = {
  readonly [Name in TroubleName]: Name extends Plain ? string : (values: ValuesOf<Name>) => string;
};
/** Of several codes with the same values, those. */
type ValuesOf<Name extends TroubleName> = Valued extends infer One
  ? One extends { readonly trouble: infer Names }
    ? Name extends Names
      ? One
      : never
    : never
  : never;
/** Tells what lies behind. */
export type Tell = (trouble: Trouble) => string;
