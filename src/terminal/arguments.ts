import { parseArgs } from 'node:util';
import { READY_LIMITS } from '../engine/index.ts';
import type { ExerciseChoice, Language } from '../engine/index.ts';
import { ARCHIVE_OPTIONS, readArchive } from './archive.ts';
import { AS_EXERCISE_OPTIONS, readAsExercise } from './as-exercise.ts';
import { CHOICE_OPTIONS, PASSAGE_OPTIONS, readChoice, readExercises } from './choice.ts';
import { COMMAND_NAMES } from './commands.ts';
import type { Command, CommandName } from './commands.ts';
import { INTENTION_OPTIONS, readIntention } from './intention.ts';
import { usageProblem } from './problems.ts';
import { hint, readNumber, readWord } from './values.ts';

const COMMON_OPTIONS = {
  json: { type: 'boolean' },
  quiet: { type: 'boolean', short: 'q' },
  help: { type: 'boolean', short: 'h' },
} as const;
/** of commands that write files */
const FORCE_OPTION = { force: { type: 'boolean' } } as const;
const LANGUAGE_OPTION = { language: { type: 'string' } } as const;
const OPTIONS = {
  analyse: {
    ...COMMON_OPTIONS,
    ...LANGUAGE_OPTION,
    ...CHOICE_OPTIONS,
    ...PASSAGE_OPTIONS,
    ...INTENTION_OPTIONS,
    'as-chosen': { type: 'boolean' },
    among: { type: 'string' },
    bpm: { type: 'string' },
    even: { type: 'string' },
    piano: { type: 'string' },
    levels: { type: 'string' },
    ...ARCHIVE_OPTIONS,
    ...FORCE_OPTION,
  },
  desk: {
    ...COMMON_OPTIONS,
    ...LANGUAGE_OPTION,
    ...FORCE_OPTION,
    csv: { type: 'string' },
    html: { type: 'string' },
    students: { type: 'string' },
    among: { type: 'string' },
    ...ARCHIVE_OPTIONS,
    bpm: { type: 'string' },
    even: { type: 'string' },
    workers: { type: 'string' },
    fresh: { type: 'boolean' },
  },
  transcribe: {
    ...COMMON_OPTIONS,
    ...LANGUAGE_OPTION,
    ...FORCE_OPTION,
    ...AS_EXERCISE_OPTIONS,
    midi: { type: 'string' },
  },
  review: { ...COMMON_OPTIONS, ...LANGUAGE_OPTION, ...FORCE_OPTION, html: { type: 'string' } },
  exercises: { ...COMMON_OPTIONS, ...LANGUAGE_OPTION, ...CHOICE_OPTIONS, ...PASSAGE_OPTIONS },
} as const;

const LANGUAGES: readonly Language[] = ['en', 'de'];

/** Tempo marks of a metronome reach from about 40 to 208; twice either way is still playing. */
const SLOWEST_BPM = 20;
const FASTEST_BPM = 400;
const MOST_WORKERS = 16;

/**
 * The words after the command's name → what is asked; `passage`: what the file of `--exercise` holds, where there is one. Throws Problem
 * (wrong usage).
 */
export function parseCommand(words: readonly string[], passage: ExerciseChoice | null = null): Command {
  const [name, ...rest] = words;
  if (name === undefined) throw usageProblem((t) => t.nothingToDo);
  if (name === '--help' || name === '-h' || name === 'help')
    return { kind: 'help', about: commandName(rest[0]), language: languageIn(rest) };
  if (name === '--version' || name === '-V') return { kind: 'version' };
  switch (name) {
    case 'analyse':
    case 'analyze': {
      const { values, positionals } = read('analyse', rest);
      if (values.help) return { kind: 'help', about: 'analyse', language: readLanguage(values.language) };
      if (values.lines !== undefined && values.json) throw usageProblem((t) => t.linesAlone);
      const choice = readChoice(values, passage);
      return {
        kind: 'analyse',
        files: values.list === undefined ? filesOf(positionals, 'analyse') : positionals,
        choice,
        intention: readIntention(values, choice),
        asChosen: values['as-chosen'] ?? false,
        amongFile: values.among ?? null,
        targetBpm: readBpm(values.bpm),
        evennessPercent: readEven(values.even),
        pianoFile: values.piano ?? null,
        levelsFile: values.levels ?? null,
        archive: readArchive(values),
        force: values.force ?? false,
        language: readLanguage(values.language),
        json: values.json ?? false,
        quiet: values.quiet ?? false,
      };
    }
    case 'desk': {
      const { values, positionals } = read('desk', rest);
      if (values.help) return { kind: 'help', about: 'desk', language: readLanguage(values.language) };
      if (positionals.length === 0 && values.list === undefined) throw usageProblem((t) => t.needsFolder);
      if (
        values.lines !== undefined &&
        (values.json || values.csv !== undefined || values.html !== undefined)
      )
        throw usageProblem((t) => t.linesAlone);
      if (values.html === '-') throw usageProblem((t) => t.foldersNeedNames);
      if (values.csv === '-' && values.json) throw usageProblem((t) => t.oneToStdout);
      return {
        kind: 'desk',
        paths: positionals,
        csvFile: values.csv ?? null,
        htmlFolder: values.html ?? null,
        studentsFile: values.students ?? null,
        amongFile: values.among ?? null,
        archive: readArchive(values),
        force: values.force ?? false,
        targetBpm: readBpm(values.bpm),
        evennessPercent: readEven(values.even),
        workers: values.workers === undefined ? null : readNumber('workers', values.workers, 1, MOST_WORKERS),
        fresh: values.fresh ?? false,
        language: readLanguage(values.language),
        json: values.json ?? false,
        quiet: values.quiet ?? false,
      };
    }
    case 'transcribe': {
      const { values, positionals } = read('transcribe', rest);
      if (values.help) return { kind: 'help', about: 'transcribe', language: readLanguage(values.language) };
      const files = filesOf(positionals, 'transcribe');
      const { midi } = values;
      if (midi !== undefined && files.length > 1) {
        throw usageProblem((t) => t.oneForOne('--midi', midi, 'recording', files.length));
      }
      const asExercise = readAsExercise(values);
      const own = asExercise?.file;
      if (own !== undefined && files.length > 1)
        throw usageProblem((t) => t.oneForOne('--as-exercise', own, 'recording', files.length));
      const toStdout = [midi === '-', own === '-', values.json === true];
      if (toStdout.filter((one) => one).length > 1) throw usageProblem((t) => t.oneToStdout);
      return {
        kind: 'transcribe',
        files,
        midiFile: midi ?? null,
        asExercise,
        force: values.force ?? false,
        language: readLanguage(values.language),
        json: values.json ?? false,
        quiet: values.quiet ?? false,
      };
    }
    case 'review': {
      const { values, positionals } = read('review', rest);
      if (values.help) return { kind: 'help', about: 'review', language: readLanguage(values.language) };
      if (positionals.length === 0) throw usageProblem((t) => t.needsReview);
      const files = filesOf(positionals, 'review');
      const { html } = values;
      if (html !== undefined && files.length > 1) {
        throw usageProblem((t) => t.oneForOne('--html', html, 'review', files.length));
      }
      if (html === '-' && values.json) throw usageProblem((t) => t.oneToStdout);
      return {
        kind: 'review',
        files,
        htmlFile: html ?? null,
        force: values.force ?? false,
        language: readLanguage(values.language),
        json: values.json ?? false,
      };
    }
    case 'exercises': {
      const { values, positionals } = read('exercises', rest);
      if (values.help) return { kind: 'help', about: 'exercises', language: readLanguage(values.language) };
      const [word] = positionals;
      if (word !== undefined) throw usageProblem((t) => t.oneWordMore(word));
      const { language, ...choice } = values;
      return {
        kind: 'exercises',
        what: readExercises(choice, passage),
        language: readLanguage(language),
        json: values.json ?? false,
      };
    }
    default:
      throw usageProblem((t, all) => t.noCommand(name, COMMAND_NAMES, hint(all, name, COMMAND_NAMES)));
  }
}

function commandName(word: string | undefined): CommandName | null {
  return COMMAND_NAMES.find((name) => name === word) ?? null;
}

function read<Name extends CommandName>(name: Name, args: readonly string[]) {
  try {
    return parseArgs({ args: [...args], options: OPTIONS[name], allowPositionals: true });
  } catch (cause) {
    // Node says by its code what is wrong, and only in its message with which option.
    const { code, message } = cause as NodeJS.ErrnoException;
    const option = /'([^' ]*)/.exec(message)?.[1] ?? '';
    if (code === 'ERR_PARSE_ARGS_UNKNOWN_OPTION') {
      const known = Object.keys(OPTIONS[name]).map((one) => `--${one}`);
      throw usageProblem((t, all) => t.noOption(name, option, hint(all, option, known)));
    }
    if (code !== 'ERR_PARSE_ARGS_INVALID_OPTION_VALUE') throw cause;
    const takesNone = /does not take/.test(message);
    throw usageProblem((t) => (takesNone ? t.optionWith : t.optionWithout)(name, option.replace(/,$/, '')));
  }
}

function filesOf(positionals: readonly string[], name: CommandName): readonly string[] {
  if (positionals.length === 0) {
    throw usageProblem((t) => t.needsFile(name));
  }
  if (positionals.filter((file) => file === '-').length > 1) {
    throw usageProblem((t) => t.inputTwice);
  }
  return positionals;
}

/** The language that a command line asks for, whatever else is wrong with it. */
export function languageIn(words: readonly string[]): Language {
  const at = words.indexOf('--language');
  const text = at === -1 ? words.find((word) => word.startsWith('--language='))?.slice(11) : words[at + 1];
  return LANGUAGES.find((language) => language === text) ?? 'en';
}

function readLanguage(text = 'en'): Language {
  return readWord('language', text, LANGUAGES);
}

function readBpm(text: string | undefined): number | null {
  return text === undefined ? null : readNumber('bpm', text, SLOWEST_BPM, FASTEST_BPM);
}

function readEven(text: string | undefined): number | null {
  const { least, most } = READY_LIMITS.evennessPercent;
  return text === undefined ? null : readNumber('even', text, least, most);
}
