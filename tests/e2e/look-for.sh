#!/bin/sh
# Lists that show only what is looked for: the same key and the same words on every page,
# Esc first shows all, then goes back; changes taken back from Today and Thresholds; and
# what a threshold would have called in a book of many traps.
. tests/e2e/lib.sh

book="$work/book.db"
it() {
	"$prog" --book "$book" --today 2026-07-21 "$@"
}

# to_row TEXT: the hand goes down to it
to_row() {
	for i in 1 2 3 4 5 6 7 8 9 10 11 12 13 14 15 16; do
		screen | grep -q "^ *>.*$1" && return 0
		keys Down
		wait_for 2 settled
	done
	return 1
}

start 80x24 "$prog demo; echo ended with \$?"
wait_for 20 shows '? keys'
keys /
check "Today looks for something" wait_for 10 shows 'look for: '
text weir
check "and says how many have it" wait_for 10 shows '^ mothtally · [0-9]* of [0-9]*'
check "others are gone" lacks 'Drumsorrel  '
check "but for what bars entry" shows 'no entry: Low Pears until'
check "the hand is on one that has it" wait_for 10 shows '> .*Weir Side'
keys Enter
check "Enter opens it" wait_for 10 shows '^ Weir Side · trap'
keys Escape
check "the list is as it was" wait_for 10 shows 'only with "weir"'
keys Escape
check "Esc shows all" wait_for 10 shows '^ > *Drumsorrel\|^   Drumsorrel'
keys Escape
check "and stays on Today" wait_for 10 shows 'This is the first page'

for page in 'w Week' 's Service' 'a Alerts' 'k Picks' 'h Hot'; do
	name=${page#* }
	keys "${page% *}"
	wait_for 10 shows "^ $name"
	keys /
	text zzz
	check "$name says that nothing has it" \
		wait_for 10 shows 'Nothing contains it\|None contains it'
	check "$name counts in its title" shows "^ $name.* · 0 of [1-9]"
	keys Enter
	check "Enter goes nowhere from there" wait_for 10 shows "^ $name.* · 0 of"
	keys Escape
	check "Esc on $name shows all" wait_for 10 lacks ' · 0 of'
	keys Escape
	check "Esc once more leaves $name" wait_for 10 shows '^ mothtally'
done

# A change that was made on Thresholds.
keys b
wait_for 10 shows '^ Book'
to_row thresholds
keys Enter
wait_for 10 shows '^ Thresholds'
keys /
text diablo-zz
check "a list with nothing says so" wait_for 10 shows 'Nothing contains it'
keys Escape
wait_for 10 shows 'Published'
keys Tab End
wait_for 10 settled
keys t
check "a published one is taken" wait_for 10 shows 'Taken[:,] '
keys u
check "and taken back here" wait_for 10 shows 'Taken back: '
keys End t
wait_for 10 shows 'Taken[:,] '
keys Escape
wait_for 10 shows '^ Book'
keys Escape
wait_for 10 shows '^ mothtally'
keys u
check "on Today it is named first" wait_for 10 shows 'u again takes out '
wait_for 10 settled
keys u
check "then taken back" wait_for 10 shows 'Taken back: '

# A diary among its visits; beside an open one all are read.
keys s
wait_for 10 shows '^ Service'
keys Enter
wait_for 10 shows 'season 2026'
keys /
text jun
check "a diary finds its visits" wait_for 10 shows 'look for: jun'
check "and hides the others" lacks ' Jul  *[0-9]'
keys Enter
check "Enter opens the picked one" wait_for 10 shows '\[ '
check "beside all" shows ' Jul  *[0-9]'
keys Escape
check "then it is as narrow as before" wait_for 10 lacks ' Jul  *[0-9]'
keys Escape
check "Esc shows all again" wait_for 10 shows ' Jul  *[0-9]'
keys Escape
wait_for 10 shows '^ Service'
keys Escape
wait_for 10 shows '^ mothtally'
keys u
check "until nothing is left" wait_for 10 shows 'Nothing that was changed here is left'
keys q
check "it ends well" wait_for 10 shows 'ended with 0'

# Of many traps what a rule would have called is told when no key comes.
{
	echo farm,block,trap,pest,hung
	for i in $(seq 201); do
		echo "Hather Bend,Sand Pit,$i,CM,2026-06-01"
	done
} >"$work/traps.csv"
printf 'pest,measure,span,comparator,value\nCM,trap-week,1,>=,5\nCM,block-week,1,>=,9\n' \
	>"$work/thresholds.csv"
printf 'farm,trap,date,count\nHather Bend,7,2026-07-14,60\n' >"$work/visits.csv"
for kind in traps thresholds visits; do
	it import $kind "$work/$kind.csv" >"$work/out"
done
start 80x24 "$prog --book $book --today 2026-07-21; echo ended with \$?"
wait_for 20 shows '? keys'
keys b
wait_for 10 shows '^ Book'
to_row thresholds
keys Enter
wait_for 10 shows '^ Thresholds'
check "it is there when the page opens" wait_for 10 shows 'OVER in 1 of [0-9]* trap-weeks'
keys Down
check "and again for the next one" wait_for 10 shows 'OVER in [0-9]* of [0-9]* block-weeks'
check "not only for later" lacks 'told when no key is pressed'
keys Escape Escape
wait_for 10 shows '^ mothtally'
keys q
check "it ends well" wait_for 10 shows 'ended with 0'

# A farm's row has no verdict of its own: Enter shows that farm alone.
start 80x24 "$prog demo"
wait_for 20 shows '^ mothtally  '
keys w Enter
check "Enter on a farm of the week shows it alone" wait_for 10 shows '^ Week  Addermoor, '
check "with its blocks" shows '^     Old Kiln'
keys Enter
check "and again all of them" wait_for 10 shows '^ Week  all farms, '

finish
