import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { sourcesIn } from '../../house/imports.ts';

const SRC = resolve(import.meta.dirname, '../../../src');
const read = (file: string): string => readFileSync(resolve(SRC, file), 'utf8');
const rooms = (language: string): readonly string[] =>
  sourcesIn(SRC).filter((file) => new RegExp(`(^|/)${language}(\\.ts$|/)`).test(file));

/** One word for one thing, as musicians say it (common practice, no source): what is not said, and what is said in its place. */
const GERMAN: readonly (readonly [forbidden: RegExp, instead: string])[] = [
  [/\bEs eilt\b/, 'Du wirst schneller'],
  [/\bVertraulich\b/, 'Datenschutz'],
  [/\bQuellen\b/, 'Nachweise'],
  [/\bUmkehr\b/, 'Wendepunkt'],
  [/\bÜbergang\b|\bÜbergänge\b|Unter-\/Über/, 'Unter- oder Übersatz'],
  [/\bAnschlag\b/, 'Artikulation'],
  [/\bInnere[nr]? Töne?\b/i, 'Mittelstimmen'],
  [/\bGleichmaß\b/, 'Gleichmäßigkeit'],
  [/gleichmäßig auf \$?\{?\w/, 'Schwankung 8 %'],
  [/Gleichmäßigkeit der (Zeit|Lautstärke)/, 'Schwankung der Zeit'],
  [/schlägt durch/, 'ist zu laut'],
  [/\bmitgenommen\b/, 'mitgegriffen'],
  [/\bMitnehmen\b/, 'Exportieren'],
  [/im Akkord [ivIV]/, 'in der IV. Stufe'],
  [/(Arpeggio|Dreiklang) der Tonika/, 'Tonika-Arpeggio'],
  [/\bSetz \$?\{?\d/, 'Setz den 4. Finger über'],
  [/\bWähle\b/, 'Wähl'],
  [/\bFassung\b/, 'Version'],
  [/\bPerlenkette/, 'Perlenschnur'],
  [/\bÜbungsreihe\b/, 'Sammlung'],
  [/\bist bereit, wenn\b|\bbeherrscht\b/, 'sitzt'],
  [/Daumenuntersatz/, 'Untersatz'],
  [/\bbeinahe\b/, 'fast'],
  [/\b[Ss]peichern\b/, 'Sichern'],
  [/\bNoten daneben\b|'Zur Note'|diese[rn]? Note\b/, 'Ton'],
  [/\bTipp eine\b/, 'Berühr'],
  [/\bdu eilst\b/, 'du wirst schneller'],
  [/\bLehrer\b/, 'Lehrkraft'],
  [/Acht Prozent/, 'hängt vom Tempo ab'],
];

const ENGLISH: readonly (readonly [forbidden: RegExp, instead: string])[] = [
  [/\bevenness \$\{|\bevenness \d/i, 'variation 8 %'],
  [/'Evenness of (time|loudness)/, 'Variation of time'],
  [/[Ee]ight per cent/, 'depends on the tempo'],
  [/\$\{name\([^)]*\)\} for \$\{name/, 'F instead of E'],
];

describe.each([
  ['German', [...rooms('german'), 'engine/exercise/titles.ts'], GERMAN],
  ['English', rooms('english'), ENGLISH],
] as const)('the words in %s', (_, files, glossary) => {
  it('stand in the rooms of its language', () => {
    expect(files.length).toBeGreaterThan(20);
  });

  it.each(glossary.map(([forbidden, instead]) => [instead, forbidden] as const))(
    'say “%s” and nothing else for it',
    (_instead, forbidden) => {
      expect(files.filter((file) => forbidden.test(read(file)))).toEqual([]);
    },
  );
});
