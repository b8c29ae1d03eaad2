#!/bin/sh
# The pages in Spanish, at a desk's size and a phone's: whole screens, compared with the
# files in tests/e2e/screens-es. UPDATE=1 writes them anew. And what is not Spanish in
# Spanish: files.
. tests/e2e/lib.sh

spanish=es_ES.UTF-8
if ! localedef -i es_ES -f UTF-8 "$work/$spanish" 2>/dev/null; then
	echo "left out: no locale es_ES can be made here (Debian: locales, gettext)"
	finish
fi
if [ ! -e "${BUILD:-build}/locale/es/LC_MESSAGES/mothtally.mo" ]; then
	echo "left out: this build has no Spanish"
	finish
fi
folder=$(cd "${BUILD:-build}/locale" && pwd)
in_spanish="LOCPATH=$work LC_ALL=$spanish MOTHTALLY_LOCALE=$folder"

shown_now() {
	screen | sed -e 's/guardado [0-9][0-9]:[0-9][0-9]:[0-9][0-9]/guardado 07:42:11/' \
		-e 's|/tmp/mothtally-demo-[A-Za-z0-9]*|/tmp/mothtally-demo-abcdef|'
}

is_like() {
	shown_now | cmp -s - "$here/screens-es/$1.txt"
}

like() {
	if [ "${UPDATE:-}" ]; then
		wait_for 10 settled && shown_now >"$here/screens-es/$1.txt"
		return
	fi
	wait_for 10 is_like "$1" && return
	shown_now | diff "$here/screens-es/$1.txt" -
	return 1
}

# page NAME TITLE KEYS ...: from Today by those keys to the page that has this title.
page() {
	name=$1-$size title=$2
	shift 2
	start "$size" "$in_spanish $prog demo"
	wait_for 20 shows '^ mothtally  '
	[ $# -eq 0 ] || keys "$@"
	check "$name: its title" wait_for 10 shows "^ $title"
	check "$name" like "$name"
}

pages() {
	page today 'mothtally  '
	page today-keys 'Teclas  Hoy' '?'
	page week 'Semana' w
	page week-keys 'Teclas  Semana' w '?'
	page why '.*trampa 1' w Down Down Enter
	page run 'Recorrido' Enter
	page run-keys 'Teclas  Recorrido' Enter '?'
	page run-entered 'Recorrido' Enter 4 Enter + 1 2 Enter 5 8 + Enter Enter 0 '*' \
		Enter - - Enter / Enter 3 . h o l a Enter Enter 7
	page run-odd 'Recorrido' Enter 9 9 Enter
	page alerts 'Alertas' a
	page answer 'Alertas' a a
	page block-diary 'Hather Bend' a d
	page picks 'Cosecha' k
	page pick-form 'Ficha' k n
	page treatments 'Tratamientos' k t
	page treatment-form 'Ficha' k t Enter
	page checks 'Revisiones' k r
	page record 'Registro' k R
	page service 'Servicio' s
	page flight 'Vuelo' f
	page flight-events 'Vuelo' f PgDn PgDn
	page biofix 'Vuelo' f b
	page hotspots 'Focos' h
	page hotspots-map 'Focos' h m
	page hotspots-numbers 'Focos' h Enter
	page hotspots-sources 'Focos' h f f s
	page diary '.*trampa 1 ' w Down Down d
	page book 'Libro' b
	page traps 'Trampas' b Down Down Enter
	page form 'Ficha' b Down Down Enter Enter
	page choosing 'Trampas' b Down Down Enter r
	page pests 'Plagas' b Down Down Down Enter
	page pest-form 'Ficha' b Down Down Down Enter Enter
	page lures 'Cápsulas' b Down Down Down Down Enter
	page cards 'Láminas' b Down Down Down Down Down Enter
	page thresholds 'Umbrales' b Down Down Down Down Down Down Enter
	page published 'Umbrales' b Down Down Down Down Down Down Enter Tab
	page thresholds-keys 'Teclas' b Down Down Down Down Down Down Enter '?' PgDn
	page weather 'Tiempo' m
	page settings 'Ajustes' b Down Down Down Down Down Down Down Down Down Down \
		Down Down Down Enter
	page merging 'Unir' b End Enter
}

mkdir -p "$here/screens-es"
for size in 80x24 40x16; do
	pages
done

# Without curses: what is printed, and what is a file.
run() {
	env LOCPATH="$work" LC_ALL=$spanish MOTHTALLY_LOCALE="$folder" \
		MOTHTALLY_BOOK="$work/book.db" "$prog" "$@"
}

tell() {
	printf '%s\n' "$@"
}

tell 'farm,block,trap,pest,lure,condition,crop,hung' \
	'Loma Alta,Norte,1,CM,CM standard,conventional,apple,2026-06-01' >"$work/traps.csv"
tell 'farm,trap,date,outcome,count' 'Loma Alta,1,2026-07-14,counted,3' \
	'Loma Alta,1,2026-07-24,counted,5' >"$work/visits.csv"
tell 'pest,measure,comparator,value' 'CM,trap-week,>=,2.5' >"$work/thresholds.csv"
check "files are taken in" eval 'run import traps "$work/traps.csv" >"$work/out" &&
	run import visits "$work/visits.csv" >>"$work/out" &&
	run import thresholds "$work/thresholds.csv" >>"$work/out"'

says() {
	run --today 2026-07-24 "$@" >"$work/out" 2>&1
	grep -q -- "$pattern" "$work/out" || { cat "$work/out"; return 1; }
}

pattern='vie 24 julio 2026 · semana 30'
check "a date is that of the language" says week
pattern='3,5'
check "a catch has a decimal comma on paper" says week
pattern='>=2,5'
check "so has a threshold" says week
pattern=',>=,2\.5000,'
check "a file has a point" says export thresholds
pattern='^Loma Alta,Norte,1,CM,3\.5000,'
check "so has a report as CSV" says week --csv
pattern='trap-week'
check "and words of files are those of the manual" says week --csv
pattern='trap-week 2 >= 2,7 nights: 1 2,under,under,yes'
check "in what is proved too" says proof --csv
pattern='7 noches: 1 2 bajo'
check "on paper they are Spanish" says proof
# What is typed may have either mark.
start 80x24 "$in_spanish MOTHTALLY_BOOK='$work/book.db' $prog --today 2026-07-24"
wait_for 20 shows '^ mothtally  '
keys b Down Down Down Down Down Down Enter
wait_for 10 shows '^ Umbrales'
keys Enter
check "a form shows the comma" wait_for 10 shows ' 2,5'
keys Up Up Up
text 4,25
keys Escape
wait_for 10 shows 'Sin guardar'
keys Enter
check "a comma that is typed is taken" wait_for 10 shows 'Guardado'
pattern=',>=,4\.2500,'
check "and stands as a point in the file" says export thresholds
keys Enter
wait_for 10 shows ' 4,25'
keys Up Up Up
text 4.5
keys Escape
wait_for 10 shows 'Sin guardar'
keys Enter
wait_for 10 shows '>=4,5'
pattern=',>=,4\.5000,'
check "so is a point" says export thresholds

# What is chosen and typed is Spanish on the page, and the word of the table in the book.
start 80x24 "$in_spanish MOTHTALLY_BOOK='$work/book.db' $prog --today 2026-07-24"
wait_for 20 shows '^ mothtally  '
keys b Down Enter
wait_for 10 shows '^ Bloques'
check "a crop of the tables is shown in Spanish" wait_for 10 shows 'manzano'
keys Enter Down Down
wait_for 10 shows '> cultivo'
text Peral
keys Escape
wait_for 10 shows 'Sin guardar'
keys Enter
check "one is typed in Spanish" wait_for 10 shows 'Guardado'
pattern='^Loma Alta,Norte,pear,'
check "and is that of the tables" says export blocks
keys Escape
wait_for 10 shows '^ Libro'
keys Down Enter
wait_for 10 shows '^ Trampas'
keys Enter Down Down Down Down
wait_for 10 shows '> cápsula .*CM estándar'
keys Left
wait_for 10 shows '> cápsula .*CM larga'
keys Escape
wait_for 10 shows 'Sin guardar'
keys Enter
check "a lure is picked in Spanish" wait_for 10 shows 'Guardado'
pattern='^Loma Alta,Norte,1,CM,CM long-life,'
check "and is that of the table" says export traps
pattern='día-mes'
keys Escape
wait_for 10 shows '^ Libro'
keys End Up Up Up Enter
wait_for 10 shows '^ Ajustes'
keys Down Down Down Down Enter
wait_for 10 shows 'día-mes'
keys Right
wait_for 10 shows 'mes-día'
keys Escape
wait_for 10 shows 'Sin guardar'
keys Enter
check "so is a setting" wait_for 10 shows 'Guardado'
pattern='^date_style,month-day'
check "which files have in their words" says export settings
printf 'farm,block,crop\nAddermoor,New Field,Peral\n' >"$work/crop.csv"
says import blocks "$work/crop.csv" >/dev/null
pattern='^Addermoor,New Field,pear,'
check "a crop in a file is the one that thresholds ask for" says export blocks

pattern='hay week, due'
check "a complaint is Spanish, its commands are not" says nothing
check "the locale without a catalogue is English" eval \
	'LOCPATH="$work" LC_ALL=$spanish MOTHTALLY_LOCALE="$work" "$prog" --help |
		grep -q "^A log of pheromone-trap counts"'
check "and its numbers have a point" eval \
	'LOCPATH="$work" LC_ALL=$spanish MOTHTALLY_LOCALE="$work" \
		MOTHTALLY_BOOK="$work/book.db" "$prog" --today 2026-07-24 week |
		grep -q ">=4\.5"'
if localedef -i es_MX -f UTF-8 "$work/es_MX.UTF-8" 2>/dev/null; then
	spanish=es_MX.UTF-8 pattern='3\.5'
	check "where Spanish has a decimal point, so have the numbers" says week
fi

finish
