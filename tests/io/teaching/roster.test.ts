import { describe, expect, it } from 'vitest';
import { likelyName, namesAmong } from '../../../src/io/teaching/among.ts';
import { folded, nameIn } from '../../../src/io/teaching/names.ts';
import { whoIs, whoseIs } from '../../../src/io/teaching/roster.ts';
import type { Known } from '../../../src/io/teaching/roster.ts';
import { EMIL_AND_OTHERS, GRETA_AND_OTHERS, LOTTE_AND_OTHERS, RONJA_AND_OTHERS } from './four-classes.ts';
import { AND_SIXTY, YET_SIXTY } from './more-names.ts';
import { SIXTY, THIRTY } from './sixty-names.ts';

describe('the name of a student in the path of a recording', () => {
  it.each([
    ['a folder below the one that was given', 'Week 12/Mara/d-major.m4a', 'Mara'],
    ['… and not a folder below that', 'Week 12/Mara/November/AUD-1.opus', 'Mara'],
    ['… nor one that is called by what is played', 'Week 12/Scales/Mara - D major.m4a', 'Mara'],
    ['the first part of the name of a file', 'Mara - D major.m4a', 'Mara'],
    ['… in a folder of all', 'Week 12/Ilse - g moll.mp3', 'Ilse'],
    ['… parted by a line below', 'Jo_scale_left.wav', 'Jo'],
    ['… of two words', 'Mara Lind – triads.ogg', 'Mara Lind'],
    ['the folder, where the file is called by a messenger', 'Mara/AUD-20261101-WA0003.opus', 'Mara'],
    ['… by a recorder', 'Mara/recording (4).m4a', 'Mara'],
    ['… by a telephone', 'Ilse/Aufnahme - neu.m4a', 'Ilse'],
    ['… or by what was played', 'Mara/scale - right hand.wav', 'Mara'],
    ['… in German', 'Ilse/Tonleiter_links.wav', 'Ilse'],
    ['… or by its key', 'Jo/D-Dur - rechts.wav', 'Jo'],
    ['nothing where nothing names anybody', 'recording (4).m4a', ''],
    ['… a messenger alone', 'PTT-20261101-WA0003.opus', ''],
    ['… a date', '2026-11-01 - 17.40.m4a', ''],
    ['… one word', 'arpeggio.wav', ''],
    ['nothing of an empty path', '', ''],
    ['somebody called by a month, before a family name', 'Jan Berg - C.m4a', 'Jan Berg'],
    ['… or where nobody else is named', 'Jan - C-Dur.m4a', 'Jan'],
    ['… and beside a number it is the month', 'Jan 12.m4a', ''],
    ['a take is no initial', 'Mara_T3.wav', 'Mara'],
    ['nor a hand', 'Mara L.H. scale.m4a', 'Mara'],
    ['nor what is shortened', 'Mara Tonl. E.m4a', 'Mara'],
    ['a word made of others is no family name', 'Mara Weihnachtsvorspiel.m4a', 'Mara'],
    ['signs that are not seen are left out', 'Week/Ma\u202era\u0000/x.wav', 'Mara'],
  ])('is %s', (_, path, name) => {
    expect(nameIn(path).name).toBe(name);
  });

  it('is never longer than a name', () => {
    expect(nameIn(`week/${'m'.repeat(500)}/x.wav`).name).toHaveLength(60);
  });
});

describe('sixty recordings as people name them', () => {
  const wrong = SIXTY.filter(({ path, whose }) => folded(nameIn(path).name) !== folded(whose));

  it('are proposed right, 95 of a hundred at least', () => {
    expect(SIXTY).toHaveLength(60);
    expect(wrong.length, wrong.map(({ path }) => path).join('; ')).toBeLessThanOrEqual(3);
  });

  it('… and so are thirty others', () => {
    const also = THIRTY.filter(({ path, whose }) => folded(nameIn(path).name) !== folded(whose));
    expect(also.length, also.map(({ path }) => path).join('; ')).toBeLessThanOrEqual(1);
  });

  it.each([
    ['… and so is another class', AND_SIXTY],
    ['… and one more', YET_SIXTY],
    ['… and Emil’s', EMIL_AND_OTHERS],
    ['… and Ronja’s', RONJA_AND_OTHERS],
    ['… and Lotte’s', LOTTE_AND_OTHERS],
    ['… and Greta’s', GRETA_AND_OTHERS],
  ])('%s, 95 of a hundred at least, and nobody is put together with anybody', (_, all) => {
    expect(all).toHaveLength(60);
    const read = all.map(({ path }) => nameIn(path)).filter(({ name }) => name !== '');
    const among = namesAmong(read.map(({ name }) => ({ name, count: 1 })));
    const folders = read.filter(({ from }) => from === 'folder').map(({ name }) => folded(name));
    const likely = (path: string): string => {
      const { name } = nameIn(path);
      return likelyName(name, folders.includes(folded(name)), among);
    };
    const wrong = all.filter(({ path, whose }) => folded(likely(path)) !== folded(whose));
    expect(wrong.length, wrong.map(({ path }) => path).join('; ')).toBeLessThanOrEqual(3);
    const roster = [...new Set(all.map(({ whose }) => whose))]
      .filter((name) => name !== '')
      .map((name) => ({ name, aliases: [] }));
    const mixed = all.filter(({ path, whose }) => {
      const told = whoseIs(path, roster);
      return told.kind === 'known' && folded(told.who.name) !== folded(whose);
    });
    expect(mixed.map(({ path }) => path)).toEqual([]);
  });

  it('are never put together where they are of two, nor given to anybody unasked', () => {
    const owners = new Map<string, Set<string>>();
    for (const { path, whose } of SIXTY) {
      expect(whoseIs(path, []).kind).not.toBe('known');
      const { name } = nameIn(path);
      if (name !== '') owners.set(folded(name), (owners.get(folded(name)) ?? new Set()).add(folded(whose)));
    }
    expect([...owners.values()].filter((all) => all.size > 1)).toEqual([]);
  });

  it('are known the week after, once the teacher has said who is who, and nobody is mixed up', () => {
    const names = [...new Set(SIXTY.map(({ whose }) => folded(whose)))].filter((name) => name !== '');
    const roster = names.map((folding) => ({
      name: SIXTY.find(({ whose }) => folded(whose) === folding)!.whose,
      aliases: [],
    }));
    const told = SIXTY.map(({ path, whose }) => ({ whose, told: whoseIs(path, roster) }));
    const mixed = told.filter(
      (one) => one.told.kind === 'known' && folded(one.told.who.name) !== folded(one.whose),
    );
    expect(mixed).toEqual([]);
    expect(told.filter((one) => one.told.kind === 'known').length).toBeGreaterThanOrEqual(50);
  });
});

describe('a name among others', () => {
  const among = namesAmong([
    { name: 'Lotte', count: 2 },
    { name: 'LOTTE', count: 1 },
    { name: 'Lotte Friedrichs', count: 1 },
    { name: 'Friedrichs Lotte', count: 1 },
    { name: 'Jette', count: 2 },
  ]);

  it.each([
    ['Lotte Urlaub', 'Lotte', 'three are called Lotte alone, and nobody Urlaub'],
    ['Lotte Friedrichs', 'Lotte Friedrichs', 'somebody else bears the second name, in another order'],
    ['Lotte Berg', 'Lotte Berg', 'a folder is called so'],
    ['Lotte B', 'Lotte B', 'one letter is a family name’s'],
    ['Jette Urlaub', 'Jette Urlaub', 'too few are called Jette alone'],
    ['Lotte', 'Lotte', 'it is one word'],
  ])('%s is %s: %s', (name, likely) => {
    expect(likelyName(name, name === 'Lotte Berg', among)).toBe(likely);
  });
});

describe('a roster', () => {
  const lind: Known = { name: 'Mara Lind', aliases: ['ML', 'mara77'] };
  const other: Known = { name: 'Mara Voss', aliases: ['MV'] };
  const jörg: Known = { name: 'Jörg', aliases: [] };
  const roster = [lind, other, jörg];

  it.each([
    { what: 'a name in other letters', path: 'MARA LIND - C.m4a', who: lind },
    { what: 'the family name first', path: 'Lind, Mara - C.m4a', who: null },
    { what: 'umlauts in their other form', path: 'Jörg.m4a'.normalize('NFD'), who: jörg },
    { what: 'an umlaut written out', path: 'Joerg Tonleiter.m4a', who: jörg },
    { what: 'an alias that is no name', path: 'ML 3.m4a', who: lind },
    { what: 'an alias as a folder', path: 'week 47/mara77/scale.m4a', who: lind },
  ])('knows $what', ({ path, who }) => {
    const told = whoseIs(path, roster);
    expect(told).toEqual({ kind: 'known', who: who ?? lind });
  });

  it('asks where a name may be two people’s, or somebody’s who is known otherwise', () => {
    expect(whoIs('Mara', roster)).toEqual({ kind: 'proposed', name: 'Mara', likely: [lind, other] });
    expect(whoIs('Mara L', roster)).toEqual({ kind: 'proposed', name: 'Mara L', likely: [lind] });
    expect(whoIs('Nils', roster)).toEqual({ kind: 'proposed', name: 'Nils', likely: [] });
    expect(whoIs('ML', [lind, { name: 'Mia Lau', aliases: ['ml'] }])).toMatchObject({ kind: 'proposed' });
  });

  it('gives nobody what names nobody', () => {
    expect(whoseIs('recording (4).m4a', roster)).toEqual({ kind: 'nobody' });
    expect(whoseIs('ML and MV.m4a', roster).kind).not.toBe('known');
    // A letter that may be a key or somebody’s family name.
    const two = [
      { name: 'Mara', aliases: [] },
      { name: 'Mara H', aliases: [] },
    ];
    expect(whoseIs('MaraH_arp.m4a', two)).toMatchObject({ kind: 'proposed', likely: two });
  });
});
