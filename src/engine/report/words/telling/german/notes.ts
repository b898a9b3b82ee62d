import { capital } from '../../../../base/text.ts';
import type { MinorScale, NoteNaming } from '../../../../exercise/index.ts';
import { keyName, theForm } from '../../../../exercise/index.ts';
import type { Difference, FaultFacts, NamedStep } from '../../said/index.ts';
import type { ABOUT_NOTES } from '../../rules/notes.ts';
import type { Clause, Clauses, Parts } from '../types.ts';
import { joined, plain } from '../types.ts';
import { count, figure, list, often, some, theChord, where } from './places.ts';
import type { Notes } from './places.ts';

const MINOR_SCALES: Readonly<Record<MinorScale, string>> = {
  natural: 'die natürliche',
  harmonic: 'die harmonische',
  melodic: 'die melodische',
};

const notes = (number: number): string => (number === 1 ? 'ein Ton' : `${count(number)} Töne`);
/** Sound, notes and the course of the attempt. */
export function aboutNotes(say: Notes, naming: NoteNaming): Pick<Clauses, keyof typeof ABOUT_NOTES> {
  const { name, fault, placed, beside, spotAfter } = say;
  const key = (one: string): string => keyName(one, { language: 'de', naming });

  function differ(one: Difference): { readonly like: string; readonly not: string } {
    switch (one.kind) {
      case 'form':
        return {
          like: `${theForm(one.like, 'de')}${one.ofKey === null ? '' : ` in ${key(one.ofKey)}`}`,
          not: theForm(one.not, 'de'),
        };
      case 'key':
        return { like: key(one.like), not: key(one.not) };
      case 'both-hands': {
        const hand = { left: 'die linke Hand', right: 'die rechte Hand' } as const;
        return {
          like: 'beide Hände',
          not: `${one.notHand === null ? 'eine Hand' : hand[one.notHand]} allein`,
        };
      }
      case 'one-hand':
        return { like: 'eine Hand allein', not: 'beide zusammen' };
      case 'octaves':
        return {
          like: one.like === 1 ? 'eine Oktave' : `${count(one.like)} Oktaven`,
          not: one.not === 1 ? 'eine' : count(one.not),
        };
      case 'minor-scale':
        return { like: `${MINOR_SCALES[one.like]} Molltonleiter`, not: MINOR_SCALES[one.not] };
    }
  }

  /** "zwei falsch", "einer fehlt", "zwei nicht richtig", and which */
  function faults(ones: readonly FaultFacts[]): Clause {
    const missing = ones.filter(({ struck }) => struck === null).length;
    const lack = ones.length === 1 ? 'fehlt' : 'fehlen';
    const kind = missing === 0 ? 'falsch' : missing === ones.length ? lack : 'nicht richtig';
    const short = (one: FaultFacts): string =>
      kind === lack ? joined(name(one.wanted), say.faultPlace(one)) : placed(one);
    const what = ones.length <= 2 ? list(ones.map(short)) : short(ones[0]!);
    const be = kind === lack ? lack : `${ones.length === 1 ? 'ist' : 'sind'} ${kind}`;
    return {
      sentence: `${some(ones.length)} ${kind}${ones.length <= 2 ? ': ' : ', zuerst '}${what}`,
      half: ones.length <= 2 ? list(ones.map(placed)) : `${notes(ones.length)} ${be}`,
      emphasis: what,
    };
  }

  return {
    'too-little': ({ right, of, heardMuch }) => {
      const what = `${right} von ${of} Tönen`;
      return plain(
        heardMuch
          ? `Das klingt nicht wie die gewählte Übung: Nur ${what} passen`
          : `Zu wenig war zu hören, um es zu beurteilen: ${what}`,
        what,
      );
    },
    'sound-lost': ({ lostSec }) => ({
      sentence: `${figure(lostSec, 1)} s der Aufnahme fehlen: Über Zeit und fehlende Töne ist nichts zu sagen`,
      half: 'ein Stück der Aufnahme fehlt',
      emphasis: 'der Aufnahme fehlen',
    }),
    'other-exercise': ({ difference, note, measured }) => {
      const { like, not } = differ(difference);
      if (measured) return plain(`Du hast ${like} gespielt, nicht ${not}; das ist hier gemessen`, like);
      const each = { once: '', both: ' beide Male', each: ' jedes Mal' };
      const because =
        note === null
          ? ''
          : `: ${beside(note.struck, note.wanted)} statt ${name(note.wanted)}${each[note.often]}`;
      return plain(`Das klang wie ${like}, nicht wie ${not}${because}`, like);
    },
    'same-place-again': ({ fault: one }) => ({
      sentence: `Wieder an derselben Stelle: ${placed(one)}`,
      half: `wieder ${placed(one)}`,
      emphasis: placed(one),
    }),
    'leading-note': ({ fault: one, often: how, inCadence }) => {
      const place = inCadence ? '' : where(one.place);
      const what = joined(fault(one), how === null ? place : often(how));
      return {
        sentence: `${what}: Der Leitton ist${inCadence ? ' im V7' : ''} erhöht`,
        half: what,
        emphasis: what,
      };
    },
    signature: ({ fault: one, often: how, signature: { kind, names } }) => {
      const what = joined(fault(one), often(how));
      const sign = kind === 'flats' ? 'Be' : names.length === 1 ? 'Kreuz' : 'Kreuze';
      const signs = kind === 'none' ? 'keine Vorzeichen' : `${count(names.length)} ${sign}`;
      return { sentence: `${what}: Die Tonart hat ${signs}`, half: what, emphasis: what };
    },
    'landed-off': ({ notes: ones }) => {
      const [first, second] = ones as [FaultFacts, FaultFacts];
      return {
        sentence: `${some(ones.length)} falsch, die Hand ist eine Taste daneben gelandet: ${fault(first)} und ${placed(second)}`,
        half: `die Hand ist eine Taste daneben gelandet, ${notes(ones.length)}`,
        emphasis: 'eine Taste daneben',
      };
    },
    'inner-note': ({ fault: one }) => {
      const what = joined('die Mittelstimme', name(one.wanted), say.ofHand(one.hand));
      return plain(`${joined(what, 'klingt', where(one.place))} nicht`, what);
    },
    'wrong-notes': ({ notes: ones }) => faults(ones),
    'missed-notes': ({ notes: ones }) => faults(ones),
    slips: ({ keys }) => {
      const what = tooMany(say, keys[0]!);
      const many = `${count(keys.length)} Tasten zu viel`;
      return {
        sentence: keys.length === 1 ? what : `${many}, zuerst ${what}`,
        half: keys.length === 1 ? what : many,
        emphasis: what,
      };
    },
    repeats: ({ spots }) => {
      const what = struckTwice(say, spots[0]!.spot);
      const more = spots.length - 1;
      return {
        sentence: what + (more === 0 ? '' : `, und noch ${some(more)}`),
        half: more === 0 ? what : `${notes(spots.length)} zweimal angeschlagen`,
        emphasis: what,
      };
    },
    stopped: ({ at, gapSec }) => {
      const what = spotAfter('nach', at);
      const sec = figure(gapSec, 1);
      return {
        sentence: `${what} hast du ${sec} s lang angehalten`,
        half: `${what} hast du ${sec} s lang angehalten`,
        emphasis: what,
      };
    },
    restarted: ({ at, back }) => {
      const what = spotAfter('bei', at);
      return plain(
        back === null
          ? `${what} hast du von vorn begonnen`
          : `${what} bist du ${spotAfter('zu', back)} zurückgegangen`,
        what,
      );
    },
    'broken-off': ({ at }) => {
      const what = spotAfter('nach', at);
      return plain(`${what} bricht es ab`, what);
    },
    'started-late': ({ at }) => {
      const what = spotAfter('ab', at);
      return plain(`zu hören ist es erst ${what}`, what);
    },
  };
}

/** "E ist aufwärts zweimal angeschlagen", "die letzte I. Stufe ist zweimal angeschlagen" */
function struckTwice({ name }: Notes, { note, place }: NamedStep): string {
  return place.kind === 'chord'
    ? `${theChord(place.chord)} ist zweimal angeschlagen`
    : joined(name(note), 'ist', where(place), 'zweimal angeschlagen');
}

type Slip = Parameters<Clauses['slips']>[0]['keys'][number];

/** "F aufwärts mit E mitgegriffen", "ein F aufwärts zu viel" */
function tooMany({ name, beside }: Notes, { struck, caughtWith, place }: Slip): string {
  return caughtWith === null
    ? joined('ein', name(struck), where(place), 'zu viel')
    : joined(beside(struck, caughtWith), where(place), 'mit', name(caughtWith), 'mitgegriffen');
}

/** One line for each note. */
export function partsAboutNotes(say: Notes): Parts {
  const each = ({ notes: ones }: { readonly notes: readonly FaultFacts[] }) =>
    ones.map((one) => ({ text: say.placed(one), steps: [one.step] }));
  return {
    'wrong-notes': each,
    'missed-notes': each,
    'landed-off': each,
    slips: ({ keys }) => keys.map((one) => ({ steps: [one.step], text: capital(tooMany(say, one)) })),
    repeats: ({ spots }) =>
      spots.map(({ step, spot }) => ({ steps: [step], text: capital(struckTwice(say, spot)) })),
  };
}
