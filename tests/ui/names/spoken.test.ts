import { expect, it } from 'vitest';
import type { Assessment, Report } from '../../../src/engine/index.ts';
import { spokenVerdict, spokenWhole } from '../../../src/ui/names/spoken.ts';

/** Of no exercise that there is, so that its words stand as they are. */
const NONE = { key: 'H major', form: 'scale', hands: 'right', octaves: 1 };

it('a verdict is spoken with its signs written out', () => {
  const told = {
    kind: 'report',
    report: { exercise: NONE, words: { verdict: 'G♮ for G♯, A♭–C and F𝄪.' } },
  } as Assessment;
  expect(spokenVerdict(told)).toBe('G natural for G sharp, A flat, C and F double sharp.');
});

it('whoever does not see the screen hears the next step, too', () => {
  const words = { verdict: 'Two notes missing.', nextStep: 'only A♭–C, ♩ = 60.' };
  const report = { exercise: NONE, words } as unknown as Report;
  expect(spokenWhole({ kind: 'report', report } as Assessment)).toBe(
    'Two notes missing. Next: only A flat, C, ♩ = 60.',
  );
});

it('where there is no report, the reason is spoken', () => {
  const told = { kind: 'no-playing', reason: { notice: 'no-notes' } } as Assessment;
  expect(spokenVerdict(told)).toBe('No piano notes were heard in it.');
});
