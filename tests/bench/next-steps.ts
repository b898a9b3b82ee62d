import { allChoices } from '../../src/engine/exercise/index.ts';
import { tellWords } from '../../src/engine/report/words/index.ts';
import { everyNextStep } from '../engine/report/words/every-step.ts';

/*
 * Every next step that the program gives, to be read aloud: each cause in every form, hand, key and number of octaves, in both
 * languages; of steps alike in cause, form and hand the first. `npm run bench:next-steps -- scale` takes one form.
 */

const [form] = process.argv.slice(2);
const seen = new Set<string>();
for (const { choice, cause, report } of everyNextStep(
  allChoices().filter((one) => form === undefined || one.form === form),
  [80],
)) {
  const { statements, advice } = report.words.said!;
  const kind = [statements[0]!.situation, advice.step, choice.form, choice.hands].join(' ');
  if (seen.has(kind)) continue;
  seen.add(kind);
  console.log(`\n${kind} (${choice.key}: ${cause})`);
  for (const locale of [
    { language: 'en', naming: 'letters' },
    { language: 'de', naming: 'german' },
  ] as const) {
    const { verdict, nextStep } = tellWords(report.words, locale);
    console.log(`  ${verdict}\n    ${nextStep}`);
  }
}
