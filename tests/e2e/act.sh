#!/bin/sh
# A picking week on the pages: an alert answered, a treatment of two blocks, the run in
# barred blocks, picks that are allowed and picks that are not, the treatment corrected.
. tests/e2e/lib.sh

book="$work/act.db"

make_book() {
	cat >"$work/traps.csv" <<-'END'
	farm,block,trap,pest,lure,card,place,condition,crop,order,hung
	Addermoor,Pond Late,1,CM,CM long-life,delta liner,interior,conventional,apple,1,2026-06-30
	Addermoor,Pond Late,2,CM,CM long-life,delta liner,border,conventional,apple,2,2026-06-30
	Addermoor,Old Kiln,3,CM,CM long-life,delta liner,interior,conventional,apple,3,2026-06-30
	END
	awk 'BEGIN {
		print "farm,trap,date,outcome,count"
		split("07-07 07-14 07-21 07-28 08-04 08-11 08-18 08-25", day, " ")
		for (w = 1; w <= 8; w++)
			for (t = 1; t <= 3; t++)
				printf "Addermoor,%d,2026-%s,counted,%d\n", t, day[w],
					t == 1 && w == 8 ? 14 : 2
	}' >"$work/visits.csv"
	printf 'pest,measure,span,comparator,value,source\n%s\n' \
		'CM,trap-week,1,>=,5,invented for the tests' >"$work/thresholds.csv"
	for kind in traps visits thresholds; do
		$prog --book "$book" --today 2026-08-25 import $kind "$work/$kind.csv" \
			>/dev/null || exit 1
	done
}

pages() {
	start 80x24 "$prog --book $book --today $1; echo ended with \$?"
	wait_for 20 shows 'k picks'
}

# down N: so many fields or rows
down() {
	for i in $(seq "$1"); do keys Down; done
}

# save PATTERN: saves the form from any field
save() {
	keys Escape
	wait_for 10 shows 'Esc again drops it'
	keys Enter
}

# pick DAY: a pick of the block that is picked on the Picks page, up to its saving
pick() {
	keys n
	wait_for 10 shows '> date'
	text "$1"
	save
}

exported() {
	$prog --book "$book" --today 2026-09-01 export "$1" | tr -d '\r'
}

make_book
pages 2026-09-01
keys a
check "the catch that is over is an open alert" wait_for 10 shows 'trap 1  OPEN'
keys a
wait_for 10 shows '1 looked, 2 treated, 3 left'
keys -
check "it may have been decided the day before" wait_for 10 shows 'on Mon 31 Aug'
keys +
wait_for 10 shows 'on Tue 1 Sep'
keys 2
wait_for 10 shows 'treated (Enter saves)'
text "walked the row"
keys Enter
check "treated leads to the treatment" wait_for 10 shows 'Now what was applied'
check "block and pest are filled in" shows 'block  *Pond Late'
keys Up Up
keys End
text ", Old Kiln"
down 3
text "00:01"
keys Down
text "00:05"
down 2
text "Brackwater oil"
down 7
text 24
keys Down
text 7
save
check "it is saved for both blocks" wait_for 10 shows 'Saved: treatment of Pond Late, Old'
check "the answer stays listed" shows 'treated Tue 1 Sep: walked the row'
check "two records, one job" test \
	"$(exported treatments | grep -c '2026-09-01 a')" = 2

keys Escape
check "Today says until when nobody goes in" \
	wait_for 10 shows 'no entry: Old Kiln until Wed 2 Sep 00:05'
keys k
check "one key shows when each block may be picked" \
	wait_for 10 shows 'earliest pick Tue 8 Sep (7 days after 1 Sep)'
keys n
check "the form of a pick says the earliest day before one is typed" \
	wait_for 10 shows 'Old Kiln: earliest pick Tue 8 Sep (7 days after 1 Sep)'
text 2026-09-07
check "and as it is typed that it is too early" \
	wait_for 10 shows 'Mon 7 Sep: too early: earliest pick Tue 8 Sep'
keys Escape Escape
wait_for 10 shows '^ Picks'
pick 2026-09-07
check "the last barred day is asked about" wait_for 10 shows 'too early: earliest pick'
check "and nothing is saved yet" test "$(exported picks | wc -l)" = 1
keys Enter
check "Enter again saves it" wait_for 10 shows 'Saved: pick of Old Kiln'
pick 2026-09-08
check "the first free day is not" wait_for 10 shows 'Saved: pick of Old Kiln, Tue 8 Sep'
pick 2026-09-10
wait_for 10 shows 'Saved: pick of Old Kiln, Thu 10 Sep'
pick 2026-09-12
wait_for 10 shows 'Saved: pick of Old Kiln, Sat 12 Sep'
check "four picks are in the book" test "$(exported picks | wc -l)" = 5

# A second treatment that would bar three of them.
keys t
wait_for 10 shows '^ Treatments of'
keys n
wait_for 10 shows '^ Form  new treatment'
down 1
text "00:01"
keys Down
text "00:05"
down 9
text 12
keys Down
text 11
check "it says what it would bar while it is typed" \
	wait_for 10 shows 'Mon 7 Sep: too early: earliest pick Sat 12 Sep'
save
check "it says which picks it would bar" wait_for 10 shows 'more picks'
check "and is not in the book" test "$(exported treatments | wc -l)" = 3
keys Enter
check "until Enter is pressed again" wait_for 10 shows '^ Saved: treatment'
check "then it is" test "$(exported treatments | wc -l)" = 4
keys u
check "u takes it back" wait_for 10 shows 'Taken back'
keys c
check "c shows what was changed in one" wait_for 10 shows 'put in'
keys Escape
wait_for 10 shows '^ Treatments of'
keys Escape Escape

# The run in barred blocks.
wait_for 10 shows '> Addermoor'
keys Enter
wait_for 10 shows '^ Run'
check "the run says that its traps are barred" shows 'no entry till Wed 00:05'
keys 3 .
wait_for 10 shows '^ note:'
note=$(printf 'wet %.0s' $(seq 48))look
text "$note"
keys Enter
wait_for 10 lacks '^ note:'
keys Enter
check "a count there is asked about" wait_for 10 shows 'Enter once more keeps'
keys Enter
check "a note too long for what is added to it is not cut" \
	wait_for 10 shows 'shorten yours by 1 character'
check "nor is the count saved" test "$(exported visits | grep -c '1,2026-09-01')" = 0
keys .
wait_for 10 shows '^ note:'
keys BSpace Enter
wait_for 10 lacks '^ note:'
keys Enter
check "and kept when that is pressed" wait_for 10 shows 'Trap 1 kept: 3'
check "with a note that says so" sh -c "$prog --book $book export visits |
	grep -q 'entered before re-entry ended, asked [0-9][0-9]:[0-9][0-9]'"
keys e
check "e passes over the rest of the block" wait_for 10 shows '1 trap of Pond Late skipped'
check "as skipped for re-entry" sh -c "$prog --book $book export visits |
	grep -q '2,2026-09-01,skipped,re-entry'"
# The same in a diary, for a trap that is still open.
keys d
wait_for 10 shows 'trap 3 '
keys n
wait_for 10 shows 'day of the visit:'
text 09-01
keys Enter
wait_for 10 shows 'New visit'
keys 2 Enter
check "the diary asks about a visit of today there" \
	wait_for 10 shows 'Enter again if it was read all the same'
check "and does not keep it before" test "$(exported visits | grep -c '3,2026-09-01')" = 0
keys Enter
check "then it does" wait_for 10 shows 'Kept: Tue 1 Sep, 2'
check "with a note that says so" sh -c "$prog --book $book export visits |
	grep '3,2026-09-01' | grep -q 'asked [0-9][0-9]:[0-9][0-9]'"
keys Escape
wait_for 10 shows '^ Run'
keys Escape q
wait_for 10 shows 'ended with 0'

# A total since a treatment, as the treatment is corrected, taken out and brought back.
make_total() {
	book="$work/total.db"
	printf 'pest,measure,span,comparator,value,source\n%s\n' \
		'CM,trap-total,treatment,>=,100,invented for the tests' \
		>"$work/thresholds.csv"
	printf 'farm,block,date\nAddermoor,Old Kiln,2026-08-18\n' >"$work/treatments.csv"
	for kind in traps visits thresholds treatments; do
		$prog --book "$book" --today 2026-08-25 import $kind "$work/$kind.csv" \
			>/dev/null || exit 1
	done
}

# total N: trap 3 has caught N since the treatment of its block
total() {
	$prog --book "$book" --today 2026-08-25 week | tail -n 7 | grep -q "^      $1 in all"
}

make_total
check "only what came after the treatment is in the total" total 2.0
pages 2026-08-25
keys k
wait_for 10 shows '^ Picks'
keys t
wait_for 10 shows '^ Treatments of'
keys Enter
wait_for 10 shows '^ Form'
down 3
text "2026-08-04"
save
check "its day is corrected" wait_for 10 shows 'Saved: treatment'
check "and the total starts there" total 6.0
keys c
check "c shows what it was" wait_for 10 shows 'date was 2026-08-18, is 2026-08-04'
keys Escape
wait_for 10 shows '^ Treatments of'
keys Delete
check "before it is taken out it says what that changes" \
	wait_for 10 shows 'Totals since a treatment go on without it'
keys Delete
check "the treatment is taken out" wait_for 10 shows 'Taken out'
check "and the total runs since the trap was hung" total 16.0
keys u
check "u brings it back" wait_for 10 shows 'Taken back'
check "and its total" total 6.0
keys Escape Escape Escape q
wait_for 10 shows 'ended with 0'
finish
