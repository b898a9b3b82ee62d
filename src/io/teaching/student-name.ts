/** What messengers, telephones and recorders call a file by themselves: no name of anybody. */
const NO_NAME =
  /^(aud|vid|img|ptt|rec|wa|audio|video|voice|record(ing|er)?|aufnahme|sprach(notiz|memo|nachricht)|memo|track|file|datei|new|neue?|signal|telegram|whatsapp|untitled|unbenannt|unknown|sound|attempt|take)\b|^(aud|vid|img|ptt|rec|wa)\d*$/i;
/** Words of the music: what was played, not who played it. */
const MUSIC =
  /^(scales?|arpeggios?|triads?|broken|chords?|cadences?|progression|exercise|left|right|both|hands?|together|tonleitern?|dreiklang|dreiklänge|akkorde?|kadenz|übung|links|rechts|zusammen|dur|moll|major|minor|[a-h](is|es|s|#|b|♯|♭)?([ -](dur|moll|major|minor)( .*)?)?|l|r|lh|rh)$/i;
/** Between a name and the rest of a file's name. */
const PARTED = /\s+[-–—]\s+|_+|\s*[,;]\s*/;

/**
 * Path of a recording, from the folder that was given → its student's name, '' where none is found.
 *
 * A folder below the given one is a student's. In the given folder itself (or without any) the first part of the file's name is
 * one, as in "Mara - D major.m4a"; where that is no name ("AUD-20261101-WA0003", "recording (4)", "scale, right hand"), the given
 * folder is. The same for the page and for the command line; common practice, no source.
 */
export function studentIn(path: string): string {
  const parts = path.split(/[/\\]/).filter((part) => part !== '' && part !== '.');
  const folders = parts.slice(0, -1);
  if (folders.length > 1) return tidy(folders[1]!);
  return nameInFile(parts.at(-1) ?? '') || tidy(folders[0] ?? '');
}

function nameInFile(name: string): string {
  const stem = name.replace(/\.[a-z0-9]{1,5}$/i, '');
  const parts = stem.split(PARTED);
  const first = tidy(parts[0] ?? '');
  return parts.length > 1 && isName(first) ? first : '';
}

function isName(text: string): boolean {
  return /\p{L}{2}/u.test(text) && !/\d{3}/.test(text) && !NO_NAME.test(text) && !MUSIC.test(text);
}

/** No control characters and none that turn the direction of writing; not longer than a name. */
function tidy(text: string): string {
  return text
    .replace(/[\p{Cc}\p{Cf}]/gu, '')
    .replace(/\s+/g, ' ')
    .trim()
    .slice(0, 60);
}
