import { median } from '../base/statistics.ts';
import type { Hand } from '../exercise/index.ts';
import { isSamePlace } from '../listen/piano/index.ts';
import type { Candidate, HandsAlone, Heard, KeptSound, PlayedNote } from '../listen/index.ts';
import { stretchCents } from '../listen/transcribe/stretch.ts';
import type { Alignment } from '../match/index.ts';
import { KnownAlone } from './alone.ts';
import { RECHECK_BOUNDS } from './bounds.ts';
import { createLook } from './look/index.ts';
import type { BlindBelief, Glance, HandsApart, Look } from './look/index.ts';
import { likelyMoments } from './moments.ts';
import { momentIn, stepsHeard, UsualHands } from './steps.ts';
import type { Moment, StepHeard } from './steps.ts';
import { twinPlaces } from './twins.ts';
import { isVoice } from './voices.ts';

/** What glides is no string, whatever the closer look says: log odds that no other evidence outweighs. */
const VOICE = -20;

/** A look, and what the blind ear had said of the same key there. */
export interface Answer extends Look {
  readonly candidate: Candidate | null;
}

/** What was seen by itself, and what the blind ear had said. */
interface Asked {
  readonly glance: Glance;
  readonly candidate: Candidate | null;
}

/** Puts questions about keys at steps to the closer look, with all that the first listening knows. */
export class Asker {
  readonly steps: readonly StepHeard[];
  readonly #heard: Heard;
  readonly #sound: KeptSound;
  readonly #look: ReturnType<typeof createLook>;
  readonly #usual: UsualHands;
  readonly #alignment: Alignment;
  readonly #twins: ReturnType<typeof twinPlaces>;
  /** glances at written notes, by their place among the matched ones */
  readonly #glances = new Map<number, Asked | null>();

  readonly #known: KnownAlone | null;

  /** `alone`: what hands alone sounded like; left out of account where it was not surely here (another piano, a moved device) */
  constructor(heard: Heard, sound: KeptSound, alignment: Alignment, alone: HandsAlone | null = null) {
    this.steps = stepsHeard(heard, alignment);
    this.#heard = heard;
    this.#sound = sound;
    this.#look = createLook(sound.samples);
    this.#usual = new UsualHands(heard, alignment);
    this.#alignment = alignment;
    this.#twins = twinPlaces(alignment.matched);
    this.steps = this.steps.map((one) => (one.timeSec === null ? this.#foundAgain(one) : one));
    this.#known = alone === null ? null : this.#knownHere(new KnownAlone(alone));
  }

  /** What a step usually lasts, s; null where no two in a row were heard. */
  get usualStepSec(): number | null {
    const lasting = this.steps.flatMap(({ timeSec }, step) => {
      const next = this.steps[step + 1]?.timeSec ?? null;
      return timeSec === null || next === null || next <= timeSec ? [] : [next - timeSec];
    });
    return median(lasting) ?? null;
  }

  /** A step none of whose keys was heard right → the same with the moment at which one of them sounds struck, if there is one. */
  #foundAgain(step: StepHeard): StepHeard {
    const { matched, exercise } = this.#alignment;
    const places = matched.flatMap((note, place) => (note.step === step.step ? [place] : []));
    const answered = places.flatMap((place) => {
      const note = matched[place]!;
      return 'played' in note && note.played !== undefined ? this.#heard.notes[note.played]!.timeSec : [];
    });
    const beats = exercise.steps.map(({ beat }) => beat);
    const likely = likelyMoments(this.steps, beats, step.step, this.#heard.candidates ?? []);
    const surest = [...answered, ...likely]
      .flatMap((timeSec) => places.map((place) => this.askAt(place, timeSec)))
      .reduce<Answer | null>((best, one) => (best === null || one.logOdds > best.logOdds ? one : best), null);
    return surest !== null && surest.logOdds > RECHECK_BOUNDS.struck
      ? { ...step, timeSec: surest.timeSec }
      : step;
  }

  /** Was a written note struck? `place`: its place among the matched notes. Null at a step of which nothing was heard. */
  askWritten(place: number): Answer | null {
    const own = this.#written(place);
    if (own === null) return null;
    const twins = this.#twins[place]!.flatMap((other) => this.#written(other)?.glance ?? []);
    return { ...this.#look.beside(own.glance, twins, this.#apart(place)), candidate: own.candidate };
  }

  /** Was a key struck that is not written? `midi` as the listener numbers keys; `hand`: of the note that it stands beside. */
  askUnwritten(step: number, midi: number, hand: Hand): Answer | null {
    const asked = this.#ask(step, midi, hand, null, null);
    return asked && { ...asked.glance, candidate: asked.candidate };
  }

  /** Was a key struck at a moment of its own, whatever step lies nearest? `midi` as the listener numbers keys. */
  askStray(note: PlayedNote): Answer {
    const { midi, timeSec } = note;
    const apart = this.steps.map((one) => Math.abs((one.timeSec ?? Infinity) - timeSec));
    const step = apart.indexOf(Math.min(...apart));
    const { written, notes } = this.steps[step]!;
    const { glance, candidate } = this.#askIn({ timeSec, written }, step, midi, notes[0]!.hand, null);
    const logOdds = isVoice(this.#heard, this.#sound, note) ? VOICE : glance.logOdds;
    return { ...glance, logOdds, candidate };
  }

  /** Was a written note struck at a moment, where nothing was heard of its step? */
  askAt(place: number, timeSec: number): Answer {
    const { step, expected } = this.#alignment.matched[place]!;
    const moment = { timeSec, written: this.steps[step]!.written };
    const { glance, candidate } = this.#askIn(moment, step, this.#midiOf(place), expected.hand, place);
    return { ...glance, candidate };
  }

  /** Keys of a note's own hand at its step, and of the other. */
  #handsAt(place: number): { readonly own: readonly number[]; readonly other: readonly number[] } {
    const { step, expected } = this.#alignment.matched[place]!;
    const { notes } = this.steps[step]!;
    const keys = (own: boolean): readonly number[] =>
      notes.flatMap(({ hand, midi }) => ((hand === expected.hand) === own ? [midi] : []));
    return { own: keys(true), other: keys(false) };
  }

  #apart(place: number): HandsApart {
    if (this.#known === null) return { other: null, own: null };
    const { own, other } = this.#handsAt(place);
    const midi = this.#midiOf(place);
    return { other: this.#known.at(other, midi), own: this.#known.at(own, midi) };
  }

  /**
   * Keys of the lower hand are compared as they are now and were alone, where the upper hand covers nothing of them. What cannot
   * be compared may be of any piano and is let go too.
   */
  #knownHere(known: KnownAlone): KnownAlone | null {
    const keys = this.#alignment.matched.flatMap(({ expected, verdict }, place) => {
      if (expected.hand !== 'left' || verdict !== 'correct') return [];
      const { own, other } = this.#handsAt(place);
      const midi = this.#midiOf(place);
      const before = known.at(own, midi);
      const now = before === null ? null : this.#written(place);
      return before === null || now === null
        ? []
        : [{ midi, others: other, now: now.glance.glimpse.levels, before }];
    });
    return isSamePlace(keys) === true ? known : null;
  }

  #midiOf(place: number): number {
    return this.#alignment.matched[place]!.expected.midi - this.#alignment.semitoneShift;
  }

  #written(place: number): Asked | null {
    const known = this.#glances.get(place);
    if (known !== undefined) return known;
    const note = this.#alignment.matched[place]!;
    const heardSec = note.verdict === 'correct' ? this.#heard.notes[note.played]!.timeSec : null;
    const midi = this.#midiOf(place);
    const asked = this.#ask(note.step, midi, note.expected.hand, place, heardSec);
    this.#glances.set(place, asked);
    return asked;
  }

  #ask(step: number, midi: number, hand: Hand, place: number | null, heardSec: number | null): Asked | null {
    const moment = momentIn(this.steps[step]!, hand, heardSec);
    return moment === null ? null : this.#askIn(moment, step, midi, hand, place);
  }

  #askIn({ timeSec, written }: Moment, step: number, midi: number, hand: Hand, place: number | null): Asked {
    const near = (this.#heard.candidates ?? []).filter(
      (one) => Math.abs(one.timeSec - timeSec) < RECHECK_BOUNDS.nearSec,
    );
    const bestOf = (key: number): Candidate | null =>
      near.reduce<Candidate | null>(
        (best, one) => (one.midi === key && (best?.probability ?? 0) < one.probability ? one : best),
        null,
      );
    const told = (semitones: number): BlindBelief | null => {
      const one = bestOf(midi + semitones);
      return one === null ? null : { ...one, apartSec: one.timeSec - timeSec };
    };
    const before = this.#neighbour(step, -1, timeSec);
    const after = this.#neighbour(step, 1, timeSec);
    const glance = this.#look.once({
      timeSec,
      midi,
      cents: this.#heard.tuning.cents + stretchCents(midi),
      gain: this.#sound.gainAt(timeSec),
      written,
      before: before && { midis: before.midis, sinceSec: timeSec - before.timeSec },
      after: after && { midis: after.midis, untilSec: after.timeSec - timeSec },
      told,
      ownHand: this.#usual.of(hand, place),
      otherHand: this.#usual.of(hand === 'left' ? 'right' : 'left', null),
    });
    return { glance, candidate: bestOf(midi) };
  }

  /** The step beside one, and when it came: where nothing of it was heard, spread evenly to the next that was. */
  #neighbour(
    step: number,
    way: -1 | 1,
    here: number,
  ): { readonly midis: readonly number[]; readonly timeSec: number } | null {
    const beside = this.steps[step + way];
    if (beside === undefined) return null;
    for (let away = 1; this.steps[step + way * away] !== undefined; away++) {
      const { timeSec } = this.steps[step + way * away]!;
      // A step played again or out of order tells no time.
      if (timeSec !== null && (timeSec - here) * way > 0)
        return { midis: beside.written, timeSec: here + (timeSec - here) / away };
    }
    return null;
  }
}
