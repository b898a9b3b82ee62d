import type { FaultFacts, FingerOf, HowOften, StepPlace, Said, SignatureFacts, Task } from '../types.ts';
import {
  capital,
  count,
  fault,
  faultPlace,
  fingerOf,
  hands,
  list,
  often,
  placed,
  stretch,
  where,
} from './places.ts';

export const WRONG = {
  sameAgain: (one: FaultFacts, task: Task): Said => ({
    sentence: `Again at the same place: ${placed(one)}`,
    emphasis: placed(one),
    nextStep: `only ${stretch(task.stretch)}, at half the tempo, ${task.tempoBpm}, until it is right five times in a row.`,
  }),

  /** `often` null: not said; `stretch` null: in a progression */
  leadingNote: (one: FaultFacts, how: HowOften | null, task: Task | null): Said => {
    const what = fault(one) + (how === null ? '' : ` ${often(how)}`);
    return {
      sentence: `${what}: the leading note is raised${task === null ? ' in the V7' : ''}`,
      emphasis: what,
      nextStep:
        task === null
          ? `play i–V7–i alone, saying "${one.wanted}" as you strike it.`
          : `only ${stretch(task.stretch)}, saying "${one.wanted}" as you strike it.`,
    };
  },

  signature: (one: FaultFacts, how: HowOften, { kind, names }: SignatureFacts): Said => {
    const what = `${fault(one)} ${often(how)}`.trim();
    const signs =
      kind === 'none'
        ? 'no sharps or flats'
        : `${count(names.length)} ${kind === 'flats' ? 'flat' : 'sharp'}${names.length === 1 ? '' : 's'}`;
    return {
      sentence: `${what}: the key has ${signs}`,
      half: `${fault(one)} ${where(one.place)}`.trim(),
      emphasis: what,
      nextStep: `say the signature (${kind === 'none' ? signs : list(names)}), play the scale once slowly, then this again.`,
    };
  },

  /** `ones`: the first two of `notes` neighbours */
  landedOff: (
    ones: readonly FaultFacts[],
    notes: number,
    position: readonly string[],
    tempoBpm: number,
  ): Said => {
    const what = `${capital(count(notes))} notes wrong`;
    return {
      sentence: `${what}, the hand landed one key off: ${fault(ones[0]!)} and ${placed(ones[1]!)}`,
      half: counted(notes, 0),
      emphasis: 'one key off',
      nextStep: `strike ${position.join('–')} as one chord, lift, strike it again; then note by note, at ${tempoBpm}.`,
    };
  },

  innerNote: (note: string, by: FingerOf, place: StepPlace): Said => {
    const what = `${note} (${fingerOf(by)})`;
    return {
      sentence: `${what} does not sound ${where(place)}`,
      half: `${what} does not sound ${where(place)}`,
      emphasis: what,
      nextStep: 'press the shape silently first, all keys touched; then strike them together.',
    };
  },

  /** Faults in general: how many, which and where. */
  faults: (faults: readonly FaultFacts[], task: Task): Said => {
    const missing = faults.filter(({ struck }) => struck === null).length;
    const wrong = faults.length - missing;
    const kind = missing === 0 ? 'wrong' : wrong === 0 ? 'missing' : 'not right';
    const head = `${capital(count(faults.length))} note${faults.length === 1 ? '' : 's'} ${kind}`;
    const short = (one: FaultFacts): string =>
      wrong === 0 ? `${one.wanted} ${faultPlace(one)}`.trim() : placed(one);
    const first = faults[0]!;
    const what = faults.length <= 2 ? list(faults.map(short)) : short(first);
    const until = first.struck === null ? `${first.wanted} sounds every time` : 'it is right';
    return {
      sentence: faults.length <= 2 ? `${head}: ${what}` : `${head}, the first ${what}`,
      half: faults.length === 1 ? placedMissing(first) : counted(wrong, missing),
      emphasis: what,
      nextStep: `${hands(task.hands)}, only ${stretch(task.stretch)}, at ${task.tempoBpm}, until ${until}; then the whole.`,
    };
  },

  /** Keys too many; `caught`: with a right one. */
  slips: (
    given: { readonly struck: string; readonly caughtWith: string | null; readonly place: StepPlace },
    extras: number,
    task: Task,
  ): Said => {
    const { struck, caughtWith, place } = given;
    const what =
      caughtWith === null
        ? `an extra ${struck} ${where(place)}`.trim()
        : `${struck} caught with ${caughtWith} ${where(place)}`.trim();
    const head = extras === 1 ? capital(what) : `${capital(count(extras))} keys too many, the first ${what}`;
    return {
      sentence: head,
      half: extras === 1 ? what : `${count(extras)} keys too many`,
      emphasis: extras === 1 ? capital(what) : what,
      nextStep: `${hands(task.hands)}, only ${stretch(task.stretch)}, at ${task.tempoBpm}, ${caughtWith !== null ? 'each finger over the middle of its key' : 'these keys and no other'}.`,
    };
  },

  /** `places`: at how many places */
  repeats: (note: string, place: StepPlace, places: number, task: Task): Said => {
    const name = place.kind === 'chord' ? where(place).replace('in the', 'the') : note;
    const what = `${name} is struck twice${place.kind === 'chord' ? '' : ` ${where(place)}`}`;
    const more = places > 1 ? `, and ${places === 2 ? 'one more' : `${count(places - 1)} more`}` : '';
    return {
      sentence: capital(what) + more,
      half: what,
      emphasis: capital(what),
      nextStep: `only ${stretch(task.stretch)}, at ${task.tempoBpm}; whatever happens, go on to the next note.`,
    };
  },
};

/** "two notes are wrong", "one note is missing", "two notes are wrong and one is missing" */
function counted(wrong: number, missing: number): string {
  const be = (number: number): string => (number === 1 ? 'is' : 'are');
  const notes = (number: number): string => `${count(number)} note${number === 1 ? '' : 's'} ${be(number)}`;
  if (missing === 0) return `${notes(wrong)} wrong`;
  if (wrong === 0) return `${notes(missing)} missing`;
  return `${notes(wrong)} wrong and ${count(missing)} ${be(missing)} missing`;
}

function placedMissing(one: FaultFacts): string {
  return one.struck === null ? `${one.wanted} is missing ${faultPlace(one)}`.trim() : placed(one);
}
