import { logOddsOf, probabilityOf } from '../base/odds.ts';
import type { PlayedNote } from '../listen/index.ts';
import type { Alignment, ExtraKind } from '../match/index.ts';
import type { Answer, Asker } from './asker.ts';
import type { StepHeard } from './steps.ts';

/*
 * Keys that answer nothing, or stand in place of a written one. The blind ear alone invents hardly any, but beside a voice or in a long
 * room it does: a spoken vowel begins like a key, an echo like a second blow. The closer look, trained on both, is asked about each at its
 * own moment.
 */

/** Struck ones for each invented one where the closer look was trained (training/look/strays.py): what its log odds go by. */
const TRAINED_ODDS = 0.2;
/** To be added to them where struck and invented ones are as common. */
const EVEN = -Math.log(TRAINED_ODDS);
/**
 * What is taken to have been met before an attempt: in quiet sound 62 of 65 extra keys are found and none is invented in 4445 notes
 * (FIGURES.md of the benches).
 */
const BEFORE = { struck: 1, invented: 0.03 } as const;
const ROUNDS = 20;
/**
 * The closer look denies a key caught with a right one now and then, by whose partials its own are covered: log odds −4.7 to −0.7 at four of
 * five in lines, development piano and Iowa's, all of which the blind ear was sure of. So much more speaks for it.
 */
const CAUGHT = 5;
/**
 * Where no key of the attempt is denied nobody talks, and for one caught with a right key both listenings speak together: their log odds, and that it
 * lies where slips lie. Development piano: of 132 such keys that were struck and reported, two in each of 120 attempts, 100 are told; of four reported
 * in 7000 notes that nobody struck, half of them in hard rooms, none is by this, and of one noise beside four exercises it is once.
 */
const NONE_DENIED = 4;
/** to be added to the log odds of both listenings for where it lies: beside a right key, at its moment */
const BESIDE_RIGHT = 2.5;
/** struck so near to another, s: all five within 17 ms */
const CAUGHT_SEC = 0.03;
/** strokes of one key further apart than this are two to both listenings, s */
const APART_SEC = 0.15;

/** Keys of an attempt that are not written, and how sure it is that they were struck. */
export class Strays {
  readonly #asker: Asker;
  readonly #answers = new Map<PlayedNote, Answer>();
  /** to be added to the log odds of each: how many such keys were struck in this attempt, for each invented one */
  readonly #priorLogOdds: number;

  /** `notes`: what the first listening reported. Going back is many notes, and believed by itself. */
  constructor(asker: Asker, notes: readonly PlayedNote[], { extras, matched }: Alignment) {
    this.#asker = asker;
    const asked = extras.filter(({ kind }) => kind !== 'restart');
    const wrong = matched.flatMap((one) => (one.verdict === 'wrong' ? [one] : []));
    this.#priorLogOdds = priorLogOdds(
      [...asked, ...wrong].map(({ played }) => this.answer(notes[played]!).logOdds),
    );
  }

  answer(note: PlayedNote): Answer {
    const known = this.#answers.get(note);
    if (known !== undefined) return known;
    const answer = this.#asker.askStray(note);
    this.#answers.set(note, answer);
    return answer;
  }

  /** As sure as the less sure of both listenings, or as both together where it was caught with a right key, 0..1; `believed`: by the first. */
  sureOf(note: PlayedNote, kind: ExtraKind, believed = note.confidence): number {
    const isCaught = kind === 'slip' && this.#stepsAbout(note, CAUGHT_SEC).length > 0;
    const looked = probabilityOf(this.answer(note).logOdds + this.#priorLogOdds + (isCaught ? CAUGHT : 0));
    const isEnough = isCaught && this.#priorLogOdds > NONE_DENIED && !this.#mayBeWritten(note);
    const together = probabilityOf(this.answer(note).logOdds + logOddsOf(believed) + BESIDE_RIGHT);
    return Math.min(isEnough ? Math.max(believed, together) : believed, looked);
  }

  #stepsAbout(note: PlayedNote, withinSec: number): readonly StepHeard[] {
    return this.#asker.steps.filter(
      ({ timeSec }) => timeSec !== null && Math.abs(timeSec - note.timeSec) <= withinSec,
    );
  }

  /** In fast playing a neighbour may be the step's before or after, which is written. */
  #mayBeWritten(note: PlayedNote): boolean {
    return this.#stepsAbout(note, APART_SEC).some(({ written }) => written.includes(note.midi));
  }

  /** 0..1, of one that the alignment had explained: such are struck no more often than not, and beside a voice still less. */
  sureOfExplained(note: PlayedNote): number {
    return probabilityOf(this.answer(note).logOdds + Math.min(this.#priorLogOdds, EVEN));
  }
}

/**
 * Where the closer look denies several, somebody talks, and the others are doubted with them: the odds by which all are explained
 * best (expectation and maximisation; Dempster, Laird and Rubin 1977, from memory).
 */
function priorLogOdds(logOdds: readonly number[]): number {
  let prior = Math.log(BEFORE.struck / BEFORE.invented / TRAINED_ODDS);
  for (let round = 0; round < ROUNDS; round++) {
    const struck = logOdds.reduce((sum, one) => sum + probabilityOf(one + prior), 0);
    const odds = (BEFORE.struck + struck) / (BEFORE.invented + logOdds.length - struck);
    prior = Math.log(odds / TRAINED_ODDS);
  }
  return prior;
}
