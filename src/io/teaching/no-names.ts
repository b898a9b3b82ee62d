/** Words in the names of files and folders that are nobody's name, small letters, English and German (common practice, no source). */

/** What messengers, telephones, recorders and people call a recording or a folder of recordings. */
export const NOISE: ReadonlySet<string> = new Set(
  `a an am an and at attempt audio audios aud aufgabe aufgaben aufnahme aufnahmen backup best beste bpm by check class clip copy
  das der die download downloads edit edited ein eine end endlich entry fast fertig file files datei dateien final finale finished
  folder for from für good gut hausaufgabe hausaufgaben hi hello hallo homework hausübung im img in inbox ist it klasse klasse kopie
  kurs langsam last letzte lesson lessons long mein meine memo message mov movie ms my nachricht name neu neue neuer neues new nr no
  nummer number of old oder original ordner part path ptt practice practise piano klavier klavierstunde schnell sent senden shared
  signal slow sound sounds speech sprachmemo sprachnachricht sprachnotiz standard stück stunde student students schüler schülerin
  schülerinnen take takes teil telegram test the time track tracks try und unbenannt unknown unbekannt untitled unterricht upload
  uploads version versuch vid video videos vocaroo voice vom von wa week weeks weekly whatsapp woche wochen your zip zoom rec record
  recording recordings recorded recorder audiorecording voicememo export exports temp tmp data misc sonstiges diverse alle all
  everyone monday tuesday wednesday thursday friday saturday sunday montag dienstag mittwoch donnerstag freitag samstag sonntag
  morning evening afternoon today heute gestern yesterday again nochmal noch mal once wieder first second third erste zweite dritte
  left right both hand hands hs ht rh lh links rechts beide hände beidhändig zusammen together separately einzeln mp mp3 wav m4a flac opus ogg vorbis aac stereo mono lossless re fwd fw aw wg pxl dsc dscn mvi
  gopr screen screenrecording bildschirmaufnahme violin violine cello flute flöte guitar gitarre duet duett`
    .split(/\s+/)
    .filter((word) => word !== ''),
);

export const MONTHS: ReadonlySet<string> = new Set(
  `january february march april may june july august september october november december januar februar märz mai juni juli oktober
  dezember jan feb mar apr jun jul aug sep sept oct okt nov dec dez`.split(/\s+/),
);

/** Words of the music: exercises, keys in English and German, tempo. */
export const MUSIC =
  /^(scales?|arpeggios?|arpeggi|arpeggien|arp|triads?|broken|chords?|cadences?|kadenz(en)?|progressions?|exercises?|etudes?|etüden?|übung(en)?|tonleitern?|dreikl(a|ä)nge?|akkorde?|inversions?|umkehrung(en)?|octaves?|oktaven?|key|keys|tonart(en)?|dur|moll|major|minor|maj|min|sharp|flat|natural|harmonic|melodic|harmonisch|melodisch|legato|staccato|tempo|up|down|auf|ab|[a-h](is|es|s|#|b|♯|♭)?(dur|moll|major|minor|maj|min|m)?|es|as|ais|eis|his|ces|fes)$/i;
