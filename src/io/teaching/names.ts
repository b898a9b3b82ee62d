import {
  COMPOUND,
  GIVEN_MONTHS,
  MONTHS,
  MUSIC,
  NOISE,
  PARTICLES,
  SAID_OF_IT,
  SHORT_DAYS,
} from './no-names.ts';

/** What is told of a student's name by where a recording lies and what it is called. */
export interface Named {
  /** '' where nothing names anybody */
  readonly name: string;
  /** from which part of the path */
  readonly from: 'folder' | 'file' | 'nothing';
}

const NOBODY: Named = { name: '', from: 'nothing' };
/** A name is not longer. */
const MOST_LETTERS = 60;

/**
 * Path of a recording, from the folder that was given → the name of its student, as far as one is written there.
 *
 * The first folder below the given one that has a name in it, else the file's own name, else the given folder (a zip stands for a
 * folder). Of each what is no name is left out: dates, weeks, copies, what messengers and recorders write, and words of the music.
 * "Lind, Mara" is Mara Lind. The same for the page and for the command line; common practice, no source.
 */
export function nameIn(path: string): Named {
  const parts = path
    .normalize('NFC')
    .split(/[/\\]/)
    .filter((part) => part !== '' && part !== '.');
  const folders = parts.slice(0, -1);
  for (const folder of folders.slice(1)) {
    const name = nameWithin(folder);
    if (name !== '') return { name, from: 'folder' };
  }
  const name = nameWithin(stemOf(parts.at(-1) ?? ''));
  if (name !== '') return { name, from: 'file' };
  const given = nameWithin(folders[0] ?? '');
  return given === '' ? NOBODY : { name: given, from: 'folder' };
}

/** Whether a file is called by two people: nobody can tell whose it is. */
export function isOfTwo(path: string): boolean {
  const words = wordsOf(cleared(stemOf(path.normalize('NFC').split(/[/\\]/).at(-1) ?? '')));
  return isOneOfTwo(words, firstRun(words));
}

/** Two ways to write one name → the same: letter case, both forms of umlauts, ä as ae, ß as ss, hyphens and points as spaces, no apostrophes. */
export function folded(name: string): string {
  return name
    .normalize('NFC')
    .toLowerCase()
    .replace(/[äöüß]/g, (letter) => ({ ä: 'ae', ö: 'oe', ü: 'ue', ß: 'ss' })[letter]!)
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .replace(/['’]/g, '')
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();
}

/** A file's name without its ending, and those of sound and zips before it. */
export function stemOf(file: string): string {
  return file.replace(
    /(\.(wav|mp3|m4a|mp4|mov|aac|ogg|oga|opus|flac|amr|3gp|aiff?|caf|wma|webm|zip))*\.(?=[a-z0-9]*[a-z])[a-z0-9]{2,5}$/i,
    '',
  );
}

/** Dates and times of day, weeks, copies, numbers in brackets: parted from names before words are looked at. */
const NO_WORDS: readonly RegExp[] = [
  /[\p{Cc}\p{Cf}]/gu,
  // Parted at its capitals it would be two words.
  /whatsapp|voicememo/giu,
  /\bi(phone|pad|pod|mac|cloud)s?\b/giu,
  /\b(copy of|copy \d+ of|kopie von)\b/giu,
  /\s*\(\d+\)/gu,
  /(?<!\d)(19|20)\d\d[-._]?[01]\d[-._]?[0-3]\d([-._ T]+(at\s+|um\s+)?[0-2]?\d[-._:h]?[0-5]\d([-._:]?[0-5]\d)?)?(?!\d)/giu,
  /(?<!\d)[0-3]?\d\.[01]?\d\.((19|20)?\d\d)?(?!\d)/gu,
  /\b(week|wk|woche|kw|cw|w)[\s._-]*\d{1,2}\b/giu,
  /(?<=\p{L})(week|wk|kw)[\s._-]*\d{1,2}\b/giu,
  /\b\d+\s*(bpm|st|nd|rd|th)\b/giu,
  /(?<!\p{L})[rl]\.\s?h\.?(?!\p{L})/giu,
  // A take, a version: T3, v2.
  /(?<![\p{L}\p{N}])[tv]\d{1,3}(?![\p{L}\p{N}])/giu,
  /#/gu,
];

/** "Frau Ley", "Ms Ley": to whom it is sent, where somebody else is named. */
const TITLED = /(?<!\p{L})(frau|herrn?|mrs?|ms|miss|madame|prof|dr)[.\s_]+\p{Lu}\p{L}+/giu;

/** Telephones call a recording by where it was made. */
const STREET = /(?<!\p{L})\p{L}*(street|road|avenue|straße|strasse|allee)(?!\p{L})/iu;

/** "Mara’s", said of what is hers. */
const HERS = /(?<=\p{L}{2})['’]s\b/gu;

interface Word {
  readonly text: string;
  /** it stands in one piece with the word before: "Anna-Lena" */
  readonly hyphened: boolean;
  /** a new part of the name begins: " - ", "_", "," */
  readonly parted: boolean;
  /** it ends with a point and a space: "Tonl. " */
  readonly isShort: boolean;
}

function nameWithin(text: string): string {
  if (STREET.test(text)) return '';
  const others = nameAmong(text.replace(TITLED, ' - '));
  return others === '' ? nameAmong(text) : others;
}

/** A name with all taken out that is no word of it. */
function cleared(text: string): string {
  return NO_WORDS.reduce(
    (left, pattern) => left.replace(pattern, pattern.source === '[\\p{Cc}\\p{Cf}]' ? '' : ' - '),
    text,
  )
    .replace(HERS, '')
    .replace(/\s*[&+]\s*/g, ' and ');
}

function nameAmong(text: string): string {
  const left = cleared(text);
  const family = /^\s*((?:\p{Ll}+ )*)(\p{Lu}[\p{L}'’-]+),\s*(.+)$/u.exec(left);
  const [, particles = '', of = '', after = ''] = family ?? [];
  if (
    of.split('-').every(isName) &&
    of !== '' &&
    particles.split(' ').every((one) => one === '' || PARTICLES.has(one))
  ) {
    const rest = wordsOf(after);
    const initial = /^\p{Lu}(?=\.$)/u.exec(rest[0]?.text ?? '')?.[0];
    if (initial !== undefined) return tidy(`${initial} ${particles}${asName(of)}`);
    const first = firstRun(rest);
    if (isOneOfTwo(rest, first)) return '';
    if (rest[0] !== undefined && isName(rest[0].text)) return tidy(`${first} ${particles}${asName(of)}`);
  }
  const words = wordsOf(left);
  const name = firstRun(words);
  // Of two people’s recordings nobody can tell whose they are.
  return isOneOfTwo(words, name) ? '' : tidy(name);
}

/** A name all in capitals or all in small letters is written as names are. */
function asName(text: string): string {
  if (text !== text.toUpperCase() && text !== text.toLowerCase()) return text;
  return text
    .toLowerCase()
    .replace(/(^|[\s'’-])(\p{L})/gu, (_, before: string, letter: string) => before + letter.toUpperCase());
}

/** A name with spaces where a small letter meets a capital: "AmiraH" */
export function atCapitals(text: string): string {
  return text.normalize('NFC').replace(/(?<=\p{Ll})(?=\p{Lu})/gu, ' ');
}

/** Words in order: parted by spaces, lines below, points, and where a small letter meets a capital or a digit. */
function wordsOf(text: string): readonly Word[] {
  const spaced = atCapitals(text).replace(/(?<=\p{L})(?=\d)|(?<=\d)(?=\p{L})/gu, ' ');
  const words: Word[] = [];
  for (const found of spaced.matchAll(/([^\p{L}\p{N}'’♯♭]*)([\p{L}\p{N}'’♯♭]+\.?)/gu)) {
    const { index, 0: whole, 1: before, 2: word } = found;
    words.push({
      text: word!,
      hyphened: before === '-',
      parted: words.length > 0 && before !== '-' && /[^\s._]/.test(before!),
      isShort: /^\p{L}{3,}\.$/u.test(word!) && /^\s/.test(spaced.slice(index + whole.length)),
    });
  }
  return words;
}

/** The first words in a row that may be a name. */
function firstRun(words: readonly Word[]): string {
  let name = '';
  let length = 0;
  /** a name that is written as names are goes on with capitals only */
  let isWritten = false;
  for (const [at, word] of words.entries()) {
    const isMore = length > 0;
    if (isMore && word.parted && !word.hyphened) break;
    const taken = isMore
      ? (isName(word.text) &&
          !word.isShort &&
          !(isWritten && isSmall(word)) &&
          !SHORT_DAYS.has(word.text.toLowerCase())) ||
        isInitial(words, at, length) ||
        isParticle(words, at)
      : (isName(word.text) && !PARTICLES.has(word.text)) ||
        isFirstInitial(words, at) ||
        isMonthsName(words, at);
    if (!taken) {
      if (isMore) break;
      continue;
    }
    // A point ends an initial, and parts words elsewhere.
    const plain = word.text.length > 2 ? word.text.replace(/\.$/, '') : word.text;
    const written = isParticle(words, at) ? plain : asName(plain);
    name += isMore ? (word.hyphened ? '-' : ' ') + written : written;
    length += 1;
    isWritten ||= /^\p{Lu}.*\p{Ll}/u.test(word.text);
  }
  return name.replace(/\.$/, '');
}

const isSmall = ({ text, hyphened }: Word): boolean => !hyphened && /^\p{Ll}/u.test(text);

/** "D. Okafor" */
function isFirstInitial(words: readonly Word[], at: number): boolean {
  const next = words[at + 1];
  return (
    /^\p{Lu}\.$/u.test(words[at]!.text) &&
    next !== undefined &&
    !next.parted &&
    isName(next.text) &&
    !isSmall(next)
  );
}

/** Jan and May, before a family name, or at the very beginning where nothing else follows that may be one; beside a number they are months. */
function isMonthsName(words: readonly Word[], at: number): boolean {
  const [before, { text }, next] = [words[at - 1], words[at]!, words[at + 1]];
  if (!GIVEN_MONTHS.has(text.toLowerCase()) || !/^\p{Lu}/u.test(text)) return false;
  if ([before, next].some((beside) => beside !== undefined && /^\d/.test(beside.text))) return false;
  if (next !== undefined && !next.parted && isName(next.text) && !isSmall(next)) return true;
  return at === 0 && !words.some((word) => isName(word.text));
}

/** A small "van", "von der", behind a name and before one that has a capital. */
function isParticle(words: readonly Word[], at: number): boolean {
  const next = words.findIndex((word, index) => index >= at && !PARTICLES.has(word.text));
  const name = words[next];
  if (name === undefined || next === at || words.slice(at, next + 1).some(({ parted }) => parted))
    return false;
  return isName(name.text) && /^\p{Lu}/u.test(name.text);
}

/** Whether "and" stands behind a name, and a name behind that. */
function isOneOfTwo(words: readonly Word[], name: string): boolean {
  const at = words.findIndex(({ text }) => /^(und|and|mit|with|y|et)$/i.test(text));
  const [before, behind] = [words[at - 1], words[at + 1]];
  return (
    name !== '' &&
    before !== undefined &&
    behind !== undefined &&
    (isName(before.text) || before.text.length <= 2) &&
    isName(behind.text)
  );
}

/**
 * One letter behind a name of so many words: of a family name, where the music is told elsewhere or the letter is of no key. Behind a
 * family name it is a key.
 */
function isInitial(words: readonly Word[], at: number, length: number): boolean {
  const { text } = words[at]!;
  if (!/^\p{L}\.?$/u.test(text) || words[at]!.hyphened) return false;
  const next = words[at + 1];
  // V7 is a chord, I–IV are two, I V more.
  const isDegree = next !== undefined && (/^(\d.*|[ivx]+)$/i.test(next.text) || next.hyphened);
  if (/^[ivx]$/i.test(text) && isDegree) return false;
  return (
    /^\p{Lu}\.$/u.test(text) ||
    /[^a-hA-H.]/.test(text) ||
    (length === 1 && (next === undefined || next.parted))
  );
}

/** A degree of the scale, or a class; two capitals or more. */
const ROMAN = /^(II|III|IV|VI|VII|VIII|IX)$/;

function isName(word: string): boolean {
  const plain = word.replace(/\.$/, '').toLowerCase();
  if (!/^\p{L}[\p{L}'’]+$/u.test(plain)) return false;
  if (SAID_OF_IT.test(plain) || COMPOUND.test(plain) || ROMAN.test(word)) return false;
  // "unbenannte": as a word of the list, in its endings.
  const stem = plain.replace(/(?<=\p{L}{5})e[nrsm]?$/u, '');
  return !NOISE.has(plain) && !NOISE.has(stem) && !MONTHS.has(plain) && !MUSIC.test(plain);
}

function tidy(text: string): string {
  return text.replace(/\s+/g, ' ').trim().slice(0, MOST_LETTERS);
}
