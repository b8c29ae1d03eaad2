#!/bin/sh
# Two scouts, two books: merged on the pages and by the command, in both orders; what
# they do not agree on is settled once and is settled in both.
. tests/e2e/lib.sh

prog="$MOTHTALLY"
today=2026-07-21
cat >"$work/traps.csv" <<'END'
farm,block,trap,pest,lure,card,order,hung
Addermoor,Long Row,1,CM,CM standard,delta liner,1,2026-07-07
Addermoor,Long Row,2,CM,CM standard,delta liner,2,2026-07-07
END
printf 'pest,measure,span,comparator,value\nCM,trap-week,1,>=,10\n' >"$work/rules.csv"
printf 'farm,trap,date,outcome,count,scout\nAddermoor,1,2026-07-14,counted,4,JR\n' \
	>"$work/jr.csv"
cat >"$work/mb.csv" <<'END'
farm,trap,date,outcome,count,scout
Addermoor,1,2026-07-14,counted,14,MB
Addermoor,2,2026-07-14,counted,2,MB
END

# of NAME ARGUMENTS...: the program on that scout's book
of() {
	book=$1
	shift
	"$prog" --today $today --book "$work/$book.db" "$@"
}

for scout in mb jr; do # jr later, so that the lower count stands in the diary
	of $scout import traps "$work/traps.csv" >/dev/null
	of $scout import thresholds "$work/rules.csv" >/dev/null
	of $scout import visits "$work/$scout.csv" >/dev/null
done
of jr export visits >"$work/before.csv"

check "--look says what would come" sh -c \
	"'$prog' --book '$work/jr.db' merge '$work/mb.db' --look | grep -q 'visits: 1 new'"
of jr export visits >"$work/looked.csv"
check "and changes nothing" cmp -s "$work/before.csv" "$work/looked.csv"

# On the pages.
start 80x24 "$prog --today $today --book $work/jr.db; echo ended with \$?"
wait_for 20 shows 'Addermoor'
keys b
wait_for 10 shows '^ Book'
keys End Enter
check "the Merging page says what it is for" wait_for 10 shows 'Two scouts, two books'
keys f
text "$work/none.db"
keys Enter
check "a book that is not there is said" wait_for 10 shows 'there is no book at'
keys f
for i in 1 2 3 4 5 6 7; do keys BSpace; done
text "mb.db"
keys Enter
check "what would come is shown first" wait_for 10 shows 'Nothing is changed yet'
check "kind by kind" shows 'visits: 1 new'
keys Enter
check "Enter merges, and says what is left" wait_for 10 shows '1 matter is left to settle'
check "the trap that was counted twice is listed" shows '> trap 1 of Addermoor'
of jr week >"$work/week"
check "the count that is over keeps it from being under" \
	grep -q '1  *CM .*unknown' "$work/week"
check "and the week says so in words" grep -q 'counted twice' "$work/week"

# The other way round the same comes out.
of mb merge "$work/jr.db" >/dev/null
of jr export visits >"$work/a.csv"
of mb export visits >"$work/b.csv"
check "both books hold the same" cmp "$work/a.csv" "$work/b.csv"

keys Enter
check "the matter has numbered answers" wait_for 10 shows '2  14 by MB'
keys 2
check "a number settles it" wait_for 10 shows 'Settled: 14 by MB'
check "nothing is left" wait_for 10 shows 'There is nothing to'
keys Escape Escape q
wait_for 10 shows 'ended with 0'
stop

of mb merge "$work/jr.db" >/dev/null
check "it is settled in the other book as well" sh -c \
	"'$prog' --book '$work/mb.db' merge --open | grep -q 'nothing to settle'"
of jr week >"$work/week"
check "and judged" grep -q '1  *CM .*OVER' "$work/week"
check "merged again there is nothing new" sh -c \
	"'$prog' --book '$work/mb.db' merge '$work/jr.db' | grep -q 'has all that'"

# Taking a merge back.
of jr import visits "$work/jr.csv" >/dev/null 2>&1
printf 'farm,trap,date,outcome,count\nAddermoor,2,2026-07-21,counted,3\n' >"$work/c.csv"
of mb import visits "$work/c.csv" >/dev/null
of jr export visits >"$work/before.csv"
of jr merge "$work/mb.db" >/dev/null
check "--undo goes back" sh -c "'$prog' --book '$work/jr.db' merge --undo | grep -q 'as it was'"
of jr export visits >"$work/after.csv"
check "to the same book" cmp "$work/before.csv" "$work/after.csv"
check "a book is not merged into itself" sh -c \
	"! '$prog' --book '$work/jr.db' merge '$work/jr.db' 2>/dev/null"
for scout in jr mb; do
	check "$scout's book is sound" sh -c "'$prog' --today $today --book '$work/$scout.db' check >/dev/null"
done
finish
