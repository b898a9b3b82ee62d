/** Words in the names of files and folders that are nobody's name, small letters, English and German (common practice, no source). */

/** What messengers, telephones, recorders and people call a recording or a folder of recordings. */
export const NOISE: ReadonlySet<string> = new Set(
  `a an am and at attempt audio audios aud aufgabe aufgaben aufnahme aufnahmen backup best beste bpm by check class clip copy das der
  die download downloads edit edited ein eine end endlich entry fast fertig file files datei dateien final finale finished folder
  for from für good gut hausaufgabe hausaufgaben hi hello hallo homework hausübung im img in inbox ist it klasse kopie kurs
  langsam last letzte lesson lessons long mein meine memo message mov movie ms my nachricht name neu neue neuer neues new nr no
  nummer number of old oder original ordner part path ptt practice practise piano klavier klavierstunde schnell sent senden shared
  signal slow sound sounds speech sprachmemo sprachnachricht sprachnotiz standard stück stunde student students schüler schülerin
  schülerinnen take takes teil telegram test the time track tracks try und unbenannt unknown unbekannt untitled unterricht upload
  uploads version versuch vid video videos vocaroo voice vom von wa week weeks weekly whatsapp woche wochen your zip zoom rec
  record recording recordings recorded recorder audiorecording voicememo export exports temp tmp data misc sonstiges diverse alle
  all everyone monday tuesday wednesday thursday friday saturday sunday montag dienstag mittwoch donnerstag freitag samstag
  sonntag morning evening afternoon today heute gestern yesterday again nochmal noch mal once wieder first second third erste
  zweite dritte left right both hand hands hs ht rh lh links rechts beide hände beidhändig zusammen together separately einzeln mp
  mp3 wav m4a flac opus ogg vorbis aac stereo mono lossless re fwd fw aw wg pxl dsc dscn mvi gopr screen screenrecording
  bildschirmaufnahme violin violine cello flute flöte guitar gitarre duet duett mit ohne with without sehr very zu too so ganz
  etwas little bit more mehr this that here hier there now jetzt only is metronom metronome pedal mic micro mikro mikrofon phone
  handy tablet laptop flügel epiano digitalpiano home zuhause daheim school schule musikschule room raum zimmer kitchen wohnzimmer
  garage upstairs please bitte thanks thank danke sorry krank ill liebe lieber grüße gruß lg vg dear hey play plays played playing
  spiel spielt spielen gespielt vorspiel üben übt practises practices practicing practising aufgenommen one two three four six
  seven eight zwei drei vier sechs sieben acht next nächste nächster before after vorher nachher group gruppe level grade stufe
  band book buch heft page seite bar bars takt takte zeile stücke piece pieces warmup aufwärmen uhr pm oclock min sec sek minute
  minutes minuten day days tag daily täglich month monat year jahr term semester mama papa mum mom mutter vater dad eltern parents
  teacher lehrer lehrerin correct corrected richtig falsch wrong clean sauber better besser worse perfect perfekt ok okay great
  super nice grabación grabacion gravação gravacao registrazione nagranie opname optagelse inspelning opptak kayıt kaydı practica
  práctica pratique kl fullsizerender render aufzeichnung aufzeichnungen vn size full prüfung exam exams prep vorbereitung konzert
  concert recital tarea deberes devoirs advent weihnachten christmas ferien holiday holidays compressed komprimiert converted
  konvertiert trimmed geschnitten cut louder lauter tonspur spur clips bass treble clef schlüssel violinschlüssel bassschlüssel
  main gauche droite mains enregistrement majeur mineur maggiore minore mano izquierda derecha mayor menor prove really wirklich
  actually eigentlich hopefully hoffentlich zurück finally ready bereit done complete ganze whole root position positions
  grundstellung stellung higher lower höher tiefer octaved quick quickly slowly softly loudly mistake mistakes fehler retry redo
  slower faster langsamer schneller loud soft laut leise even uneven about against als also andere auch auf aus außer because bei
  beim bis but could dann dass dem den denn des did do does doch durch each einem einen einer erst es everything gegen hat haben
  had has have hinter how ich if ihr ihre ins into ja jede jeder kann kein keine könnte like man möchte must muss nach neben nein
  nicht nichts off on onto or other our out over own schon sein seine should sich sie sind some über um uns unser unsere unter
  until us was we weil wenn what when which while who why wie wir wird would yes yet zwischen fifth sixth seventh eighth ninth
  tenth fünfte sechste siebte achte neunte zehnte nine ten neun zehn elf zwölf eleven twelve weekday weekend wochenende morgens
  abends mittags nachmittag nachmittags vormittag vormittags noon night nacht midday vorgestern easter ostern silvester
  herbstferien spring oma opa omas opas mamas papas grandma grandpa granny sister brother schwester bruder tante onkel aunt uncle
  cousin friend friends freund freundin family familie kids kind kinder daughter tochter sohn pupil pupils eleve élève living
  bedroom küche keller kirche saal aula studio haus upright grand phones android device gerät camera kamera screencast capture
  dictation diktat diktiergerät song songs project projekt session trim mix bounce master document dokument attachment attachments
  anhang anhänge mail email messages chat chats post groups downloaded uploaded received empfangen gesendet forwarded
  weitergeleitet reply antwort drive cloud takeout sprache stimme stimmen voz voix voce nouvel nouveau nouvelle nota nueva nuevo
  nuova nuovo nieuwe nye nowe nagrania nahrávka nahravka snimka snimak запись 录音 録音 녹음 mouvement movimento satz assignment
  assignments task tasks exercise progress review feedback question frage submission abgabe solution lösung bad terrible hard
  schwer schwierig difficult easy leicht einfach funny clear deutlich unclear quiet noisy blurry newest neuste neueste tired müde
  rushed broken stopped interrupted abgebrochen unterbrochen incomplete partial half halb quarter tryout trial trying tries
  versuchen probe proben rehearsal warm cool down setup soundcheck improvement improved verbessert verbesserung learned learning
  gelernt learnt andante allegro adagio largo moderato presto lento vivace cantabile forte mezzo crescendo decrescendo diminuendo
  ritardando rubato rhythm rhythmus rhythmisch dotted punktiert swing triplet triole triolen tonic tonika inversion interval
  intervals intervall intervalle thirds terzen sixths sexten dezime circle fifths quintenzirkel quinten accent accents akzent
  akzente fingering fingersatz gliss glissando trill triller sustain touch anschlag evenness sight blattspiel theory theorie
  example sample demo beispiel muster gebrochen technique technik technical technisch course unit module kapitel chapter`
    .split(/\s+/)
    .filter((word) => word !== ''),
);

/** What is said of an attempt, in all its German endings. */
export const SAID_OF_IT =
  /^((letzt|erst|zweit|dritt|viert|neu|alt|best|gut|schön|ganz|link|recht|langsam|schnell|kurz|lang|halb|richtig|falsch|weiter|schlecht|schwierig|leicht|laut|leise|sauber|sicher|klein|groß)(e[nrsm]?)|(un)?gleichmäßig\p{L}*)$/iu;

/**
 * Words made of others, as German makes them ("Klavierheft", "Weihnachtsvorspiel"), by their first part and by their last; and the
 * endings of what is done, said or felt, in German, English and Romance languages. Shorter first parts begin family names.
 */
export const COMPOUND =
  /^((klavier|tonleiter|dreikl[aä]ng|akkord|arpegg|kadenz|oktav|quinten|septim|finger|daumen|weihnacht|geburtstag|montag|dienstag|mittwoch|donnerstag|freitag|samstag|sonntag|unterricht|vorspiel|aufwärm|einspiel|metronom|bildschirm|sprach|übungs)\p{L}{3,}|\p{L}{2,}(aufnahmen?|versuche?|übung(en)?|hälfte|recordings?|stunden?|wochen?|ferien|konzerte?|vorspiele?|prüfung(en)?|aufgaben?|nachricht(en)?|notiz(en)?|memos?|dateien?|videos?|klavier|flügel|zimmer|unterricht|leitern?|klänge?n?|akkorde?|kadenz(en)?|folgen?|zirkel|griffe?n?|läufen?|stücke?|spiel|probe|tempo|feiertag|burtstag)|\p{L}{4,}(lied(er)?|heit|keit|tion(en|s)?|ción|ção|zione|schaft)|\p{L}{5,}ments?|\p{L}{6,}ungen?|\p{L}{6,}ung)$/iu;

/** Within a name, before one that is written with a capital: van der Berg. */
export const PARTICLES: ReadonlySet<string> = new Set(
  'von vom van der den de del della di da dos la le du ter ten zu zum zur bin al el'.split(' '),
);

export const MONTHS: ReadonlySet<string> = new Set(
  `january february march april may june july august september october november december januar februar märz mai juni juli oktober
  dezember jan feb mar apr jun jul aug sep sept oct okt nov dec dez`.split(/\s+/),
);

/** Months that somebody may be called by. */
export const GIVEN_MONTHS: ReadonlySet<string> = new Set('jan april may june august'.split(' '));

/** Words of the music: exercises, keys in English and German, tempo. */
export const MUSIC =
  /^(scales?|arpeggios?|arpeggi|arpeggien|arp|triads?|broken|chords?|cadences?|kadenz(en)?|progressions?|exercises?|etudes?|etüden?|übung(en)?|tonleitern?|dreikl(a|ä)nge?|akkorde?|inversions?|umkehrung(en)?|chromat(ic|ique|isch)e?r?|dominant\p{L}*|sevenths?|\p{L}*sept(im|imen)?akkorde?|diminished|verm(indert\p{L}*)?|augmented|dim|aug|five|fünf(ton|finger)?\p{L}*|fingers?|finger(ing|satz|übung)(en)?|patterns?|contrary|parallel|similar|motion|gegenbewegung|parallelbewegung|thumbs?|daumen|crossings?|übersatz|untersatz|repetition(en|s)?|[a-h]-?(sharp|flat)|ré|gam(a|me|mes|y)|escalas?|scala|scale?s|arp[eèé]g(e|es|io|ios)|acc?ordes?|uebung(en)?|ubung(en)?|octaves?|oktaven?|key|keys|tonart(en)?|dur|moll|major|minor|maj|min|sharp|flat|natural|harmonic|melodic|harmonisch|melodisch|legato|staccato|tempo|up|down|auf|ab|[a-h](is|es|s|#|b|♯|♭)?(dur|moll|major|minor|maj|min|m)?|es|as|ais|eis|his|ces|fes)$/iu;

/** Days of the week, short: behind a name they are days, alone they may be a name. */
export const SHORT_DAYS: ReadonlySet<string> = new Set(
  'mo di mi do fr sa so mon tue tues wed weds thu thur thurs fri sat sun'.split(' '),
);
