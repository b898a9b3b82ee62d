import { messageOf } from '../io/check/index.ts';
import { parseArgs } from 'node:util';
import {
  ALL_FORMS,
  ALL_HANDS,
  ALL_KEYS,
  ALL_MINOR_SCALES,
  buildExercise,
  normaliseKey,
} from '../engine/index.ts';
import type { ExerciseChoice, Language } from '../engine/index.ts';
import { COMMAND_NAMES } from './commands.ts';
import type { Command, CommandName } from './commands.ts';
import { didYouMean } from './hints.ts';
import { usageProblem } from './problems.ts';

const CHOICE_OPTIONS = {
  key: { type: 'string' },
  form: { type: 'string' },
  hands: { type: 'string' },
  octaves: { type: 'string' },
  'minor-scale': { type: 'string' },
} as const;
const COMMON_OPTIONS = {
  json: { type: 'boolean' },
  quiet: { type: 'boolean', short: 'q' },
  help: { type: 'boolean', short: 'h' },
} as const;
const LANGUAGE_OPTION = { language: { type: 'string' } } as const;
const OPTIONS = {
  analyse: {
    ...COMMON_OPTIONS,
    ...LANGUAGE_OPTION,
    ...CHOICE_OPTIONS,
    'as-chosen': { type: 'boolean' },
    bpm: { type: 'string' },
    piano: { type: 'string' },
  },
  desk: {
    ...COMMON_OPTIONS,
    ...LANGUAGE_OPTION,
    csv: { type: 'string' },
    html: { type: 'string' },
    bpm: { type: 'string' },
    workers: { type: 'string' },
    fresh: { type: 'boolean' },
  },
  transcribe: { ...COMMON_OPTIONS, ...LANGUAGE_OPTION, midi: { type: 'string' } },
  review: { ...COMMON_OPTIONS, ...LANGUAGE_OPTION, html: { type: 'string' } },
  exercises: { ...COMMON_OPTIONS, ...CHOICE_OPTIONS },
} as const;

const LANGUAGES: readonly Language[] = ['en', 'de'];

/** Tempo marks of a metronome reach from about 40 to 208; twice either way is still playing. */
const SLOWEST_BPM = 20;
const FASTEST_BPM = 400;
const MOST_WORKERS = 16;

/** The words after the command's name → what is asked. Throws Problem (wrong usage). */
export function parseCommand(words: readonly string[]): Command {
  const [name, ...rest] = words;
  if (name === undefined) throw usageProblem('Nothing to do. Try: evenfall --help');
  if (name === '--help' || name === '-h' || name === 'help')
    return { kind: 'help', about: commandName(rest[0]) };
  if (name === '--version' || name === '-V') return { kind: 'version' };
  switch (name) {
    case 'analyse':
    case 'analyze': {
      const { values, positionals } = read('analyse', rest);
      if (values.help) return { kind: 'help', about: 'analyse' };
      return {
        kind: 'analyse',
        files: filesOf(positionals, 'analyse'),
        choice: readChoice(values),
        asChosen: values['as-chosen'] ?? false,
        targetBpm: readBpm(values.bpm),
        pianoFile: values.piano ?? null,
        language: readLanguage(values.language),
        json: values.json ?? false,
        quiet: values.quiet ?? false,
      };
    }
    case 'desk': {
      const { values, positionals } = read('desk', rest);
      if (values.help) return { kind: 'help', about: 'desk' };
      if (positionals.length === 0)
        throw usageProblem('desk needs a folder of recordings. Try: evenfall desk --help');
      return {
        kind: 'desk',
        paths: positionals,
        csvFile: values.csv ?? null,
        htmlFolder: values.html ?? null,
        targetBpm: readBpm(values.bpm),
        workers: values.workers === undefined ? null : readNumber('workers', values.workers, 1, MOST_WORKERS),
        fresh: values.fresh ?? false,
        language: readLanguage(values.language),
        json: values.json ?? false,
        quiet: values.quiet ?? false,
      };
    }
    case 'transcribe': {
      const { values, positionals } = read('transcribe', rest);
      if (values.help) return { kind: 'help', about: 'transcribe' };
      const files = filesOf(positionals, 'transcribe');
      if (values.midi !== undefined && files.length > 1) {
        throw usageProblem(
          `--midi ${values.midi} can hold one recording, but ${files.length} files are given. Give one.`,
        );
      }
      return {
        kind: 'transcribe',
        files,
        midiFile: values.midi ?? null,
        language: readLanguage(values.language),
        json: values.json ?? false,
        quiet: values.quiet ?? false,
      };
    }
    case 'review': {
      const { values, positionals } = read('review', rest);
      if (values.help) return { kind: 'help', about: 'review' };
      if (positionals.length === 0)
        throw usageProblem(
          'review needs a review file, or - for standard input. Try: evenfall review --help',
        );
      const files = filesOf(positionals, 'review');
      if (values.html !== undefined && files.length > 1) {
        throw usageProblem(
          `--html ${values.html} can hold one review, but ${files.length} files are given. Give one.`,
        );
      }
      return {
        kind: 'review',
        files,
        htmlFile: values.html ?? null,
        language: readLanguage(values.language),
        json: values.json ?? false,
      };
    }
    case 'exercises': {
      const { values, positionals } = read('exercises', rest);
      if (values.help) return { kind: 'help', about: 'exercises' };
      if (positionals[0] !== undefined) {
        throw usageProblem(
          `"${positionals[0]}" is one word too many: exercises takes options only, e.g. --key "D major".`,
        );
      }
      return { kind: 'exercises', what: readExercises(values), json: values.json ?? false };
    }
    default:
      throw usageProblem(
        `"${name}" is no command; there are ${COMMAND_NAMES.join(', ')}.${didYouMean(name, COMMAND_NAMES)} ` +
          'Try: evenfall --help',
      );
  }
}

function commandName(word: string | undefined): CommandName | null {
  return COMMAND_NAMES.find((name) => name === word) ?? null;
}

function read<Name extends CommandName>(name: Name, args: readonly string[]) {
  try {
    return parseArgs({ args: [...args], options: OPTIONS[name], allowPositionals: true });
  } catch (cause) {
    const message = messageOf(cause);
    const unknown = /Unknown option '(-[^']*)'/.exec(message)?.[1];
    if (unknown !== undefined) {
      const known = Object.keys(OPTIONS[name]).map((option) => `--${option}`);
      throw usageProblem(
        `${name} has no option ${unknown}.${didYouMean(unknown, known)} Try: evenfall ${name} --help`,
      );
    }
    throw usageProblem(`${message.split('. ')[0]!.replace(/\.$/, '')}. Try: evenfall ${name} --help`);
  }
}

function filesOf(positionals: readonly string[], name: CommandName): readonly string[] {
  if (positionals.length === 0) {
    throw usageProblem(
      `${name} needs at least one sound file, or - for standard input. Try: evenfall ${name} --help`,
    );
  }
  if (positionals.filter((file) => file === '-').length > 1) {
    throw usageProblem('Standard input (-) can be read only once. Give it once.');
  }
  return positionals;
}

type ChoiceValues = { readonly [Option in keyof typeof CHOICE_OPTIONS]?: string | undefined };

/** All of key, form and hands, or none of them. */
function readChoice(values: ChoiceValues): ExerciseChoice | null {
  const given = (Object.keys(CHOICE_OPTIONS) as (keyof typeof CHOICE_OPTIONS)[]).filter(
    (option) => values[option] !== undefined,
  );
  if (given.length === 0) return null;
  const needed = (['key', 'form', 'hands'] as const).filter((option) => values[option] === undefined);
  if (needed.length > 0) {
    throw usageProblem(
      `--${given[0]} alone does not say which exercise it is: add ${needed.map((option) => `--${option}`).join(' and ')}, ` +
        'or leave them all out to have it recognised.',
    );
  }
  return settledChoice({ ...values, hands: values.hands });
}

function readExercises(values: ChoiceValues): 'all' | { readonly key: string } | ExerciseChoice {
  const { key, form } = values;
  if (
    key === undefined &&
    Object.values(values).every((value) => value === undefined || typeof value === 'boolean')
  ) {
    return 'all';
  }
  if (key === undefined)
    throw usageProblem('Add --key, e.g. --key "D major", to see an exercise note by note.');
  if (form !== undefined) return settledChoice({ ...values, hands: values.hands ?? 'right' });
  return { key: readKey(key) };
}

function settledChoice(values: ChoiceValues): ExerciseChoice {
  const minorScale = values['minor-scale'];
  const choice: ExerciseChoice = {
    key: readKey(values.key ?? ''),
    form: readWord('form', values.form ?? '', ALL_FORMS),
    hands: readWord('hands', values.hands ?? '', ALL_HANDS),
    octaves: values.octaves === undefined ? 1 : readNumber('octaves', values.octaves, 1, 4),
    ...(minorScale !== undefined && { minorScale: readWord('minor-scale', minorScale, ALL_MINOR_SCALES) }),
  };
  // What does not go together (octaves of triads, say) is known there; its message is for callers of functions.
  try {
    buildExercise(choice);
  } catch (cause) {
    throw usageProblem(messageOf(cause));
  }
  return choice;
}

function readKey(text: string): string {
  try {
    return normaliseKey(text);
  } catch {
    throw usageProblem(
      `--key "${text}" is no key.${didYouMean(text, ALL_KEYS)} Write e.g. "D major", "F# minor" or "Bb major".`,
    );
  }
}

function readWord<Word extends string>(option: string, text: string, accepted: readonly Word[]): Word {
  const found = accepted.find((word) => word === text.toLowerCase());
  if (found !== undefined) return found;
  throw usageProblem(
    `--${option} "${text}" is not one of ${accepted.join(', ')}.${didYouMean(text, accepted)}`,
  );
}

function readLanguage(text = 'en'): Language {
  return readWord('language', text, LANGUAGES);
}

function readBpm(text: string | undefined): number | null {
  return text === undefined ? null : readNumber('bpm', text, SLOWEST_BPM, FASTEST_BPM);
}

const WHOLE: readonly string[] = ['octaves', 'workers'];

function readNumber(option: string, text: string, least: number, most: number): number {
  const value = Number(text);
  const whole = WHOLE.includes(option);
  if (text.trim() !== '' && (!whole || Number.isInteger(value)) && value >= least && value <= most)
    return value;
  throw usageProblem(
    `--${option} ${text} must be a ${whole ? 'whole ' : ''}number from ${least} to ${most}.`,
  );
}
