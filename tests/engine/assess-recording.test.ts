import { describe, expect, it } from 'vitest';
import { assessRecording, settledTuning } from '../../src/engine/assess-recording.ts';
import { assessHeard } from '../../src/engine/assess.ts';
import type { FoundAttempt } from '../../src/engine/assess-recording.ts';
import type { ExerciseChoice } from '../../src/engine/exercise/index.ts';
import { listenAndKeep } from '../../src/engine/listen/index.ts';
import type { AudioFinding } from '../../src/engine/listen/index.ts';
import { heardIn } from '../../src/engine/sorting/index.ts';
import { render } from '../support/render.ts';
import { asWritten, line, sitting } from './sorting/sittings.ts';

const SCALE: ExerciseChoice = { key: 'D major', form: 'scale', hands: 'right', octaves: 2 };
const TRIADS: ExerciseChoice = { key: 'F minor', form: 'triads', hands: 'left', octaves: 1 };
const PROGRESSION: ExerciseChoice = { key: 'D major', form: 'progression', hands: 'right', octaves: 1 };
const TUNE = [67, 67, 69, 67, 72, 71, 67, 67, 69, 67, 74, 72];

function kindOf({ assessment }: FoundAttempt) {
  return assessment.kind === 'report' ? assessment.report.exercise : assessment.kind;
}

describe('a recording of several attempts', () => {
  const { heard, spans } = sitting([
    { afterSec: 2, notes: asWritten(SCALE) },
    { afterSec: 1.5, notes: line(TUNE) },
    { afterSec: 1.5, notes: asWritten(TRIADS) },
  ]);

  it('gives a report on each, and none on other playing', () => {
    const found = assessRecording(heard, null);
    expect(found.map(kindOf)).toMatchObject([SCALE, 'not-recognised', TRIADS]);
  });

  it('gives each a clock of its own', () => {
    const [, , last] = assessRecording(heard, null);
    const { assessment, startSec } = last!;
    if (assessment.kind !== 'report') throw new Error(`expected a report, not ${assessment.kind}`);
    expect(assessment.report.notes[0]!.timeSec + startSec).toBeCloseTo(spans[2]!.firstSec, 6);
    expect(assessment.report.missed).toEqual([]);
  });

  it('tells of each what is wrong with the sound, not that somebody talks between', () => {
    const findings: readonly AudioFinding[] = [
      { kind: 'speech', detail: 'Somebody speaks for most of it.' },
      { kind: 'noise', detail: 'There is a steady noise.' },
    ];
    const [first] = assessRecording({ ...heard, findings }, null);
    expect(first!.assessment.kind).toBe('report');
    expect(first!.assessment.heard.findings.map(({ kind }) => kind)).toEqual(['noise']);
  });

  it('takes the key from the tuning of the piano where it is known', () => {
    const sharp = { ...heard, tuning: { ...heard.tuning, cents: 28 } };
    const keys = (pianoCents: number): unknown[] =>
      assessRecording(sharp, null, { pianoCents }).map(({ recognition }) => recognition.choice?.key);
    expect(keys(28)).toEqual(['D major', undefined, 'F minor']);
    expect(keys(-72)).toEqual(['Eb major', undefined, 'F# minor']);
    const piano = { version: 1, tuningCents: { value: 28, plusMinus: 1, count: 9 }, keys: {} } as const;
    const ofPiano = assessRecording(sharp, null, { piano: { ...piano, settledCents: -72 } });
    expect(ofPiano[0]!.recognition.choice?.key).toBe('Eb major');
  });

  it('has its piano settled by what somebody said it was, and by nothing that was not played', () => {
    const sharp = { ...heard, tuning: { ...heard.tuning, cents: 28 } };
    const of = (span: { readonly firstSec: number; readonly lastSec: number }, key: string) => {
      const alone = heardIn(sharp, { startSec: span.firstSec - 0.5, endSec: span.lastSec + 0.5 });
      const told = assessHeard(alone, { ...SCALE, key }, { asChosen: true });
      return told.kind === 'report' ? settledTuning(told.report) : 'no report';
    };
    expect(of(spans[0]!, 'D major')).toBe(28);
    expect(of(spans[0]!, 'Eb major')).toBe(-72);
    expect(of(spans[0]!, 'F major')).toBeNull();
  });

  it('gives each its second listening on its own part of the sound', async () => {
    const student = { bpm: 90 };
    const first = await render({ seed: 3, piano: 'dev', exercise: TRIADS, student });
    const second = await render({ seed: 4, piano: 'dev', exercise: PROGRESSION, student });
    const channel = Float32Array.from([...first.channels[0]!, ...second.channels[0]!]);
    const { heard: both, sound } = listenAndKeep({ channels: [channel], sampleRateHz: first.sampleRateHz });
    const found = assessRecording(both, sound);
    expect(found.map(kindOf)).toMatchObject([TRIADS, PROGRESSION]);
    // what is looked for says the same of it as where the attempt is alone in its recording
    const { heard: only, sound: itsSound } = listenAndKeep(second);
    const [, joined] = found;
    const [alone] = assessRecording(only, itsSound);
    const answers = ({ assessment }: FoundAttempt): readonly number[] =>
      assessment.kind === 'report' ? assessment.rechecks.map(({ logOdds }) => logOdds) : [];
    expect(answers(joined!)).toHaveLength(15);
    answers(joined!).forEach((logOdds, at) => {
      expect(Math.abs(logOdds - answers(alone!)[at]!)).toBeLessThan(1);
    });
  });
});
