import { displayName as noteShown, layOut, plainName, tellKept, tellNotice } from '../engine/index.ts';
import type { Heard, Locale } from '../engine/index.ts';
import { listenInPieces } from '../io/analysis/pieces.ts';
import type { AsExercise } from './as-exercise.ts';
import type { Command } from './commands.ts';
import type { Console } from './console.ts';
import { toPlain } from './drawing/index.ts';
import { eachFile } from './each-file.ts';
import { MESSAGES, REPORTS, localeOf } from './language/index.ts';
import type { Messages } from './language/index.ts';
import { checkOutput, writeOutput } from './output.ts';
import { EXIT, Problem } from './problems.ts';
import type { ExitCode } from './problems.ts';
import { createProgress } from './progress.ts';
import { displayName, openSound } from './sound.ts';

type TranscribeCommand = Extract<Command, { kind: 'transcribe' }>;

/** Recordings → what was heard in them, whatever it was: a table, JSON, or a MIDI file. */
export function transcribe(command: TranscribeCommand, console: Console): Promise<ExitCode> {
  const { files, midiFile, asExercise, force, language, json, quiet } = command;
  const locale = localeOf(language);
  const t = MESSAGES[language];
  return eachFile(files, console, json, language, async (file) => {
    const name = displayName(file, t);
    if (midiFile !== null && midiFile !== '-') await checkOutput(midiFile, 'midi', { inputs: files, force });
    if (asExercise !== null && asExercise.file !== '-')
      await checkOutput(asExercise.file, 'passages', { inputs: files, force });
    const progress = createProgress(console, name, quiet);
    const audio = await openSound(file, name);
    if (!quiet)
      for (const remark of audio.remarks) console.say(`evenfall: ${name}: ${tellNotice(remark, locale)}`);
    let heard: Heard;
    try {
      ({ heard } = await listenInPieces(audio, progress.show));
    } finally {
      progress.clear();
    }
    if (heard.notes.length === 0) {
      const [finding] = heard.findings;
      const why = finding === undefined ? '' : tellKept(finding.notice ?? finding.detail, locale);
      throw new Problem(EXIT.noPlaying, ({ problems }) => `${name}: ${problems.noPlaying(why)}`);
    }
    if (midiFile !== null) {
      const { encodeMidi } = await import('../io/exchange/index.ts');
      const bytes = encodeMidi(heard.notes, { title: name });
      if (midiFile === '-') {
        console.put(bytes);
        return [];
      }
      await writeOutput(midiFile, bytes);
    }
    if (asExercise !== null) {
      const text = await writtenAsExercise(heard, asExercise, name);
      if (asExercise.file === '-') return [text.trimEnd()];
      await writeOutput(asExercise.file, text);
    }
    if (json) {
      const notes = notesObject(heard);
      return [JSON.stringify(files.length > 1 ? { file, ...notes } : notes)];
    }
    const { unicode } = console.paper;
    return table(heard, t.transcribe, locale).map((line) => (unicode ? line : toPlain(line)));
  });
}

/** The JSON contract of `transcribe`. */
function notesObject({ notes, tuning, findings, passages, durationSec, sampleRateHz }: Heard) {
  return {
    format: 'evenfall-notes',
    version: 1,
    audio: { durationSec, sampleRateHz, findings },
    tuning: { a4Hz: tuning.a4Hz, cents: tuning.cents, sdCents: tuning.sdCents },
    passages,
    notes: notes.map(({ timeSec, releaseSec, midi, cents, levelDb, confidence }) => ({
      timeSec,
      releaseSec,
      midi,
      cents,
      levelDb,
      confidence,
    })),
  };
}

function table({ notes, tuning, findings }: Heard, t: Messages['transcribe'], locale: Locale): string[] {
  const decimal = (text: string): string => text.replace('.', REPORTS[locale.language].decimalSign);
  return [
    t.head,
    ...notes.map(({ timeSec, releaseSec, midi, levelDb, confidence }) =>
      [
        decimal(timeSec.toFixed(3)).padStart(8),
        `  ${nameOfKey(midi).padEnd(5)}`,
        decimal(levelDb.toFixed(1)).replace('-', '−').padStart(10),
        (releaseSec === null ? '–' : decimal(releaseSec.toFixed(3))).padStart(12),
        (100 * confidence).toFixed(0).padStart(8),
      ].join(''),
    ),
    '',
    t.sum(notes.length, decimal(tuning.a4Hz.toFixed(1)), tuning.sdCents.toFixed(0)),
    ...findings.map(({ detail, notice }) => t.sound(tellKept(notice ?? detail, locale))),
  ];
}

/** What was heard → a file of passages with the one that it is. Throws Problem where there is none in it. */
async function writtenAsExercise(
  { notes }: Heard,
  { layOut: options }: AsExercise,
  name: string,
): Promise<string> {
  const title = options.title === '' ? name.replace(/\.\w{1,5}$/, '') : options.title;
  const laid = layOut(notes, { ...options, title });
  if (laid === null) throw new Problem(EXIT.noPlaying, ({ problems }) => `${name}: ${problems.noPassage}`);
  const { encodePassages } = await import('../io/scores/index.ts');
  return encodePassages([laid.choice]);
}

/** MIDI number → name in scientific pitch notation, black keys as sharps: without a key nobody can know better. */
function nameOfKey(midi: number): string {
  return noteShown(plainName(midi, 'none')) + String(Math.floor(midi / 12) - 1);
}
