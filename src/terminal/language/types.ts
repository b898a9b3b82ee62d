import type { Hand } from '../../engine/index.ts';

/** All that the command says of a report in one language; figures come with their units. */
export interface ReportStrings {
  readonly next: string;
  readonly notSure: string;
  readonly sound: string;
  /** at the head of a hand's string */
  readonly hands: Readonly<Record<Hand, string>>;
  /** between what was struck and what was wanted */
  readonly insteadOf: string;
  /** before names of notes that are missing in a chord */
  readonly without: string;
  /** short names of chords, by what the engine calls them */
  readonly chords: Readonly<Record<string, string>>;
  readonly step: (step: number) => string;
  readonly placed: (step: number, hand: Hand, reason: string) => string;
  readonly notMeasured: (labels: readonly string[], reason: string) => string;
  /** what the signs of the picture mean */
  readonly legend: Readonly<Record<string, string>>;
  readonly figures: Readonly<
    Record<
      | 'notes'
      | 'evenness'
      | 'ends'
      | 'crossings'
      | 'chords'
      | 'hands'
      | 'loudness'
      | 'tempo'
      | 'touch'
      | 'piano',
      string
    >
  >;
  readonly parts: {
    readonly withoutCrossings: string;
    readonly evenUpTo: (value: string) => string;
    readonly turn: string;
    readonly first: string;
    readonly last: string;
    readonly spread: string;
    readonly slowestChange: string;
    readonly inner: string;
    readonly apart: string;
    readonly asItSounds: string;
    readonly keysAllowedFor: string;
    readonly thumb: string;
    readonly fade: string;
    readonly cents: string;
    readonly aim: (bpm: number) => string;
    readonly silence: (value: string) => string;
    readonly heldOver: (value: string) => string;
    readonly leads: (hand: Hand, value: string) => string;
    readonly way: Readonly<Record<'up' | 'down', string>>;
    readonly steady: string;
    readonly drifts: (slower: boolean, value: string) => string;
    readonly connected: (value: string) => string;
    readonly detached: (value: string) => string;
    readonly either: (value: string) => string;
    readonly neitherLeads: (value: string) => string;
    readonly longerOrShorter: (value: string) => string;
    readonly louderOrSofter: (value: string) => string;
    readonly right: (right: number, of: number) => string;
    readonly wrong: string;
    readonly missed: string;
    readonly extra: string;
    readonly unsure: string;
  };
  /** names of the measures in a sentence */
  readonly measures: Readonly<
    Record<
      | 'evennessPercent'
      | 'evennessWithoutCrossingsPercent'
      | 'turnDeviationMs'
      | 'crossingDelayMs'
      | 'chordSpreadMs'
      | 'changeHesitationRatio'
      | 'changeGapMs'
      | 'innerBalanceDb'
      | 'loudnessEvennessDb'
      | 'thumbAccentDb'
      | 'tempoBpm'
      | 'driftPercent'
      | 'touchMs',
      string
    >
  >;
  /** "." or "," in figures */
  readonly decimalSign: string;
}
