import { describe, expect, it } from 'vitest';
import type { Review } from '../../../src/io/review/index.ts';
import { speaking } from '../../../src/ui/language/index.ts';
import { reviewPage } from '../../../src/ui/review/page/in-node.ts';
import { madeUp, withExample } from '../../io/review/made-up.ts';

/** The same review with every text in it replaced. */
function sayingOnly(text: string): Review {
  const base = madeUp();
  return {
    ...base,
    student: text,
    teacher: text,
    words: text,
    attempts: base.attempts.map((attempt) => ({
      ...attempt,
      name: text,
      report: {
        ...attempt.report,
        words: { ...attempt.report.words, verdict: text, emphasis: '', nextStep: text },
        audio: { ...attempt.report.audio, findings: [{ kind: 'noise' as const, detail: text }] },
      },
      remarks: attempt.remarks.map((remark) => ({ ...remark, text })),
      corrections: attempt.corrections.map((correction) => ({ ...correction, why: text })),
    })),
    assignment: base.assignment.map((asked) => ({ ...asked, note: text })),
  };
}

describe('a review as one page', () => {
  const html = reviewPage(madeUp(), 'en');

  it.each([
    ['who', /<h1>A review for Student Seven<\/h1>/],
    ['the words', /Take the arpeggio slower than you think\./],
    ['the verdict', /class="verdict">\s*Every note right\. /],
    ['the teacher’s own beside it', /Your teacher says: that is mistaken\. The first C was in time/],
    [
      'a remark, with its number and its place',
      /class="number">1<\/span>\s*note 5, C5[\s\S]*thumb under sooner/,
    ],
    ['a stretch', /class="number">2<\/span>\s*from A♭5 to A♭4, notes 7 to 10/],
    ['what the tool heard where it is corrected', /Evenfall heard: E struck instead of F/],
    ['the exercise that it was taken for', /took it for: F major/],
    ['what to practise', /♩ = 60, three times in a row, variation 8.% at most/],
    ['marks on the string', /class="pin-strip"/],
    ['the care', /With pain or numbness stop and rest/],
  ])('holds %s', (_, part) => {
    expect(html).toMatch(part);
  });

  it('shows and plays what the teacher played as an example, once and without a verdict', () => {
    const page = reviewPage(withExample(), 'en');
    expect(page.match(/<article/g)).toHaveLength(2);
    expect(page.match(/<h3>How your teacher plays it<\/h3>/g)).toHaveLength(1);
    expect(page.match(/<audio [^>]*src="data:audio/g)).toHaveLength(4);
    expect(page.match(/class="verdict"/g)).toHaveLength(2);
    expect(html).not.toMatch(/How your teacher plays it/);
  });

  it('needs nothing else: no script, no address, its sounds in it', () => {
    expect(html).not.toMatch(/<script|\son\w+=|javascript:|https?:|<link|<iframe|<object|url\(|@import/i);
    expect(html).toMatch(
      /http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; img-src data:; media-src data:/,
    );
    expect(html.match(/<audio [^>]*src="data:audio\/(webm|wav);base64,[A-Za-z0-9+/]+=*"/g)).toHaveLength(3);
    expect(html).not.toMatch(/data-sound|<!--/);
    expect(html).toMatch(/\.pearl-row \.string/);
  });

  it('puts its sounds in whole', () => {
    const voice = madeUp().attempts[0]!.remarks[2]!.voice!;
    expect(html).toContain(`data:audio/wav;base64,${Buffer.from(voice.bytes).toString('base64')}`);
  });

  it('speaks German, and leaves the language of the page as it was', () => {
    const before = speaking.language;
    const german = reviewPage(madeUp(), 'de');
    expect(german).toMatch(/<html lang="de">[\s\S]*Eine Rückmeldung für Student Seven[\s\S]*Ton 5, C5/);
    expect(speaking.language).toBe(before);
  });

  it.each([
    '<script>window.harmed=1</script>',
    '<img src=x onerror="window.harmed=1">',
    '"><svg onload=window.harmed=1>',
    '</style></title></textarea><script>window.harmed=1</script>',
    '<!--><script>window.harmed=1</script>-->',
    '<audio data-sound="0" onplay="window.harmed=1">',
    "{@html '<b>'}&lt;script&gt;",
    '<a href="javascript:window.harmed=1">here</a>',
    '$& $1 $` </main>',
  ])('shows %s as text, wherever it stands', (text) => {
    const hostile = reviewPage(sayingOnly(text), 'en');
    const written = (letters: string): number => hostile.split(letters).length - 1;
    const tame = reviewPage(sayingOnly('text'), 'en');
    // Not one tag more than without it.
    for (const tag of ['<script', '<img', '<svg', '<audio', '<a ', '</style', '</main', '<!--', '</title'])
      expect([tag, written(tag)]).toEqual([tag, tame.split(tag).length - 1]);
    expect(written(text.replaceAll('&', '&amp;').replaceAll('<', '&lt;'))).toBeGreaterThan(8);
  });
});
