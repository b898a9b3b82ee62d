import { messageOf } from '../io/check/index.ts';
import { writeFile } from 'node:fs/promises';
import type { Heard } from '../engine/index.ts';
import { listenInPieces } from '../io/analysis/pieces.ts';
import type { Command } from './commands.ts';
import type { Console } from './console.ts';
import { toPlain } from './drawing/index.ts';
import { eachFile } from './each-file.ts';
import { nameOfKey } from './note-names.ts';
import { EXIT, Problem } from './problems.ts';
import type { ExitCode } from './problems.ts';
import { createProgress } from './progress.ts';
import { displayName, openSound } from './sound.ts';

type TranscribeCommand = Extract<Command, { kind: 'transcribe' }>;

/** Recordings → what was heard in them, whatever it was: a table, JSON, or a MIDI file. */
export function transcribe(command: TranscribeCommand, console: Console): Promise<ExitCode> {
  const { files, midiFile, json, quiet } = command;
  return eachFile(files, console, json, async (file) => {
    const name = displayName(file);
    const progress = createProgress(console, name, quiet);
    const audio = await openSound(file);
    if (!quiet) for (const remark of audio.remarks) console.say(`evenfall: ${name}: ${remark}`);
    let heard: Heard;
    try {
      ({ heard } = await listenInPieces(audio, progress.show));
    } finally {
      progress.clear();
    }
    if (heard.notes.length === 0) {
      const why = heard.findings[0]?.detail ?? '';
      throw new Problem(EXIT.noPlaying, `${name}: No playing was found in it. ${why}`.trim());
    }
    if (midiFile !== null) await saveMidi(midiFile, name, heard);
    if (json) {
      const notes = notesObject(heard);
      return [JSON.stringify(files.length > 1 ? { file, ...notes } : notes)];
    }
    const { unicode } = console.paper;
    return table(heard).map((line) => (unicode ? line : toPlain(line)));
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

function table({ notes, tuning, findings }: Heard): string[] {
  return [
    '  time/s  key    level/dB  released/s  sure/%',
    ...notes.map(({ timeSec, releaseSec, midi, levelDb, confidence }) =>
      [
        timeSec.toFixed(3).padStart(8),
        `  ${nameOfKey(midi).padEnd(5)}`,
        levelDb.toFixed(1).replace('-', '−').padStart(10),
        (releaseSec?.toFixed(3) ?? '–').padStart(12),
        (100 * confidence).toFixed(0).padStart(8),
      ].join(''),
    ),
    '',
    `${notes.length} notes; A4 = ${tuning.a4Hz.toFixed(1)} Hz ± ${tuning.sdCents.toFixed(0)} cents`,
    ...findings.map(({ detail }) => `Sound: ${detail}`),
  ];
}

async function saveMidi(midiFile: string, title: string, { notes }: Heard): Promise<void> {
  const { encodeMidi } = await import('../io/exchange/index.ts');
  try {
    await writeFile(midiFile, encodeMidi(notes, { title }));
  } catch (cause) {
    const reason = messageOf(cause);
    throw new Problem(
      EXIT.wrongUsage,
      `${midiFile}: It could not be written (${reason}). Choose another place.`,
    );
  }
}
