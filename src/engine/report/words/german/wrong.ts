import type { Wording } from '../english/index.ts';
import type { FaultFacts } from '../types.ts';
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
  some,
  stretch,
  theChord,
  where,
} from './places.ts';

type Rows =
  'sameAgain' | 'leadingNote' | 'signature' | 'landedOff' | 'innerNote' | 'faults' | 'slips' | 'repeats';

/** Words with a blank between, those left out that are empty. */
const joined = (...words: readonly string[]): string => words.filter((word) => word !== '').join(' ');

const notes = (number: number): string => (number === 1 ? 'ein Ton' : `${count(number)} Töne`);

export const WRONG: Pick<Wording, Rows> = {
  sameAgain: (one, task) => ({
    sentence: `Wieder an derselben Stelle: ${placed(one)}`,
    emphasis: placed(one),
    nextStep: `nur ${stretch(task.stretch)}, im halben Tempo, ${task.tempoBpm}, bis es fünfmal hintereinander richtig ist.`,
  }),

  leadingNote: (one, how, task) => {
    const what = joined(fault(one), how === null ? '' : often(how));
    return {
      sentence: `${what}: Der Leitton ist${task === null ? ' im V7' : ''} erhöht`,
      emphasis: what,
      nextStep:
        task === null
          ? `Spiel nur i–V7–i, und sag beim Anschlag „${one.wanted}“.`
          : `nur ${stretch(task.stretch)}, und sag beim Anschlag „${one.wanted}“.`,
    };
  },

  signature: (one, how, { kind, names }) => {
    const what = joined(fault(one), often(how));
    const sign = kind === 'flats' ? 'Be' : names.length === 1 ? 'Kreuz' : 'Kreuze';
    const signs = kind === 'none' ? 'keine Vorzeichen' : `${count(names.length)} ${sign}`;
    return {
      sentence: `${what}: Die Tonart hat ${signs}`,
      half: joined(fault(one), where(one.place)),
      emphasis: what,
      nextStep: `Sag die Vorzeichen (${kind === 'none' ? 'keine' : list(names)}), spiel die Tonleiter einmal langsam, dann dies noch einmal.`,
    };
  },

  landedOff: (ones, number, position, tempoBpm) => ({
    sentence: `${capital(notes(number))} falsch, die Hand ist eine Taste daneben gelandet: ${fault(ones[0]!)} und ${placed(ones[1]!)}`,
    half: counted(number, 0),
    emphasis: 'eine Taste daneben',
    nextStep: `Schlag ${position.join('–')} als Akkord an, heb ab, schlag noch einmal an; dann Ton für Ton, bei ${tempoBpm}.`,
  }),

  innerNote: (note, by, place) => {
    const what = `${note} (${fingerOf(by, 'Daumen')})`;
    const sentence = `${joined(what, 'klingt', where(place))} nicht`;
    return {
      sentence,
      half: sentence,
      emphasis: what,
      nextStep: 'Drück den Griff erst stumm, alle Tasten berührt; dann schlag sie zusammen an.',
    };
  },

  faults: (faults, task) => {
    const missing = faults.filter(({ struck }) => struck === null).length;
    const wrong = faults.length - missing;
    const kind =
      missing === 0 ? 'falsch' : wrong > 0 ? 'nicht richtig' : faults.length === 1 ? 'fehlt' : 'fehlen';
    const head = `${capital(notes(faults.length))} ${kind}`;
    const short = (one: FaultFacts): string =>
      wrong === 0 ? joined(one.wanted, faultPlace(one)) : placed(one);
    const first = faults[0]!;
    const what = faults.length <= 2 ? list(faults.map(short)) : short(first);
    const until = first.struck === null ? `${first.wanted} jedes Mal klingt` : 'es richtig ist';
    return {
      sentence: faults.length <= 2 ? `${head}: ${what}` : `${head}, zuerst ${what}`,
      half: faults.length === 1 ? placed(first) : counted(wrong, missing),
      emphasis: what,
      nextStep: `${hands(task.hands)}, nur ${stretch(task.stretch)}, bei ${task.tempoBpm}, bis ${until}; dann das Ganze.`,
    };
  },

  slips: ({ struck, caughtWith, place }, extras, task) => {
    const what =
      caughtWith === null
        ? joined('ein', struck, where(place), 'zu viel')
        : joined(struck, where(place), 'mit', caughtWith, 'mitgenommen');
    const many = `${count(extras)} Tasten zu viel`;
    return {
      sentence: extras === 1 ? capital(what) : `${capital(many)}, zuerst ${what}`,
      half: extras === 1 ? what : many,
      emphasis: extras === 1 ? capital(what) : what,
      nextStep: `${hands(task.hands)}, nur ${stretch(task.stretch)}, bei ${task.tempoBpm}, ${
        caughtWith === null ? 'diese Tasten und keine anderen' : 'jeder Finger mitten auf seiner Taste'
      }.`,
    };
  },

  repeats: (note, place, places, task) => {
    const what =
      place.kind === 'chord'
        ? `${theChord(place.chord)} ist zweimal angeschlagen`
        : joined(note, 'ist', where(place), 'zweimal angeschlagen');
    return {
      sentence: capital(what) + (places > 1 ? `, und noch ${some(places - 1)}` : ''),
      half: what,
      emphasis: capital(what),
      nextStep: `nur ${stretch(task.stretch)}, bei ${task.tempoBpm}; was auch geschieht, geh weiter zum nächsten Ton.`,
    };
  },
};

/** "zwei Töne sind falsch", "ein Ton fehlt", "zwei Töne sind falsch und einer fehlt" */
function counted(wrong: number, missing: number): string {
  const lack = missing === 1 ? 'fehlt' : 'fehlen';
  if (wrong === 0) return `${notes(missing)} ${lack}`;
  const off = `${notes(wrong)} ${wrong === 1 ? 'ist' : 'sind'} falsch`;
  return missing === 0 ? off : `${off} und ${some(missing)} ${lack}`;
}
