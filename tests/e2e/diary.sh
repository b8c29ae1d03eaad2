#!/bin/sh
# Back in the season: a slip of three weeks ago and a lure of another kind corrected in a trap's diary, visits added
# and taken out, a lure and a card changed between two runs, a published threshold taken,
# days written the other way round.
. tests/e2e/lib.sh

day=2026-07-21
base="$work/base.db"

cat >"$work/traps.csv" <<'END'
farm,block,trap,pest,lure,card,condition,crop,order,hung
Addermoor,Old Kiln,1,CM,CM long-life,delta liner,conventional,apple,1,2026-06-16
Addermoor,Old Kiln,2,CM,CM 1 mg,delta liner,conventional,apple,2,2026-06-16
END
# Over 50 in four weeks is invented: 41 for 14 makes the difference.
cat >"$work/thresholds.csv" <<'END'
pest,measure,span,comparator,value,source
CM,trap-total,28,>=,50,invented for the tests
END
cat >"$work/visits.csv" <<'END'
farm,trap,date,outcome,count,scout
Addermoor,1,2026-06-23,counted,3,TV
Addermoor,1,2026-06-30,counted,41,TV
Addermoor,1,2026-07-07,counted,4,TV
Addermoor,1,2026-07-14,counted,5,TV
Addermoor,1,2026-07-21,counted,6,TV
Addermoor,2,2026-06-23,counted,1,TV
Addermoor,2,2026-06-30,counted,0,TV
Addermoor,2,2026-07-07,counted,2,TV
Addermoor,2,2026-07-14,counted,1,TV
END
for kind in traps visits thresholds; do
	$prog --book "$base" --today $day import $kind "$work/$kind.csv" \
		>>"$work/import.out" || {
		cat "$work/import.out"
		exit 1
	}
done

it() {
	$prog --book "$book" --today $day "$@"
}

# fresh NAME: a book of its own, and its pages.
fresh() {
	book="$work/$1.db"
	cp "$base" "$book"
	start 80x24 "LOGNAME=JR $prog --book $book --today $day; echo ended with \$?"
	wait_for 20 shows 'q quit'
}

# visit TRAP DATE: outcome, count, card, lure of the book's visit.
visit() {
	it export visits | tr -d '\r' | awk -F , -v trap="$1" -v day="$2" '
		NR == 1 { for (i = 1; i <= NF; i++) at[$i] = i }
		$at["trap"] == trap && $at["date"] == day {
			print $at["outcome"], $at["reason"], $at["count"], \
				$at["card"], $at["lure"] }' | sed 's/  */ /g; s/ $//'
}

visit_is() {
	[ "$(visit "$1" "$2")" = "$3" ]
}

week_of() {
	it week --csv | tr -d '\r' | awk -F , -v trap="$1" '
		NR == 1 { for (i = 1; i <= NF; i++) at[$i] = i }
		$at["trap"] == trap { print $at["verdict"] }'
}

week_is() {
	[ "$(week_of "$1")" = "$2" ]
}

# A trap's diary out of the Week page.
open_diary() {
	keys w
	wait_for 10 shows '^ Week'
	n=$1
	while [ "$n" -gt 0 ]; do
		keys Down
		n=$((n - 1))
	done
	keys d
	wait_for 10 shows "trap $2 "
}

fresh correct
check "a slip makes the trap over" week_is 1 over
open_diary 2 1
check "the diary has its visits" shows 'Tue 30 Jun  *41 '
keys Down Down Down Enter
check "the slip of three weeks ago is open" wait_for 10 shows 'Tue 30 Jun  *\[ 41 \]'
keys 1 4
check "what is typed stands beside what was" wait_for 10 shows '\[ 14 \] was 41'
keys Enter
check "it is kept" wait_for 10 shows 'Kept: Tue 30 Jun, 14, 14.0 a week'
check "and marked" shows 'Tue 30 Jun  *14 .*corrected'
check "it is in the book" visit_is 1 2026-06-30 'counted 14'
check "the verdict follows" week_is 1 under
keys Escape
check "on the page too" wait_for 10 lacks 'OVER .*>=50'
keys d
wait_for 10 shows 'trap 1 '
keys c
check "the old value is readable, with when and by whom" \
	wait_for 10 shows '^ Tue 30 Jun  was 41 from TV, changed .* by JR'
keys Escape
wait_for 10 shows 'a week'
keys u
check "undo brings it back" \
	wait_for 10 shows 'Taken back: Tue 30 Jun has its older entry again (it had 14)'
check "in the book as well" visit_is 1 2026-06-30 'counted 41'
check "and the verdict" week_is 1 over
keys u
check "nobody else's entries are taken back" wait_for 10 shows 'Nothing that JR changed'
it check >"$work/out" 2>&1
check "the book is sound" grep -q 'sound' "$work/out"

fresh kind
open_diary 3 2
keys End k
check "k asks which lure was hung" wait_for 10 shows 'The new lure of Tue 16 Jun was:'
check "and shows those of the trap's pest" shows 'CM long-life  *[0-9]* days'
check "none of another's" lacks 'OFM standard'
text long
wait_for 10 lacks 'CM 1 mg *21'
keys Enter
check "then which card" wait_for 10 shows 'The new card of Tue 16 Jun was:'
keys Enter
check "what it is and was is said" \
	wait_for 10 shows 'Kept: Tue 16 Jun, hung; lure CM long-life, was CM 1 mg'
check "and on the disk" visit_is 2 2026-06-16 'hung delta liner CM long-life'
it due --csv >"$work/out"
check "the lure is due as that kind is" \
	sh -c "! grep -q 'Addermoor,2,lure' '$work/out'"
keys c
check "what it was stays readable" \
	wait_for 10 shows 'was hung, changed .* by JR; lure CM long-life, was'
keys c u
check "undo names it too" wait_for 10 shows 'it had hung; lure CM 1 mg,'
check "and takes it back" visit_is 2 2026-06-16 'hung delta liner CM 1 mg'

fresh full
open_diary 2 1
keys Down Down Down Enter
wait_for 10 shows '\[ 41 \]'
keys 6 0 Enter
check "more than the card holds is asked about" wait_for 10 shows '60 moths?\|card that is full at'
check "and not kept before" visit_is 1 2026-06-30 'counted 41'
keys Enter
check "Enter again keeps it" wait_for 10 shows 'Kept: Tue 30 Jun, 60'
resize 40x16
keys Enter 7 /
check "at 40 columns a spoiled one stands whole" wait_for 10 shows '\[ spoiled 7+ \]'
check "and says why" shows 'Spoiled (down)'
keys Enter
check "in its row too" wait_for 10 shows 'spoiled, down 7+'

fresh add
open_diary 2 1
keys n
check "a new visit asks for its day" wait_for 10 shows 'day of the visit:'
keys 0 7 - 1 0 Enter
check "it stands in its place" wait_for 10 shows '> Fri 10 Jul  *\['
keys 3 0 0 Enter
check "an odd count is asked about" wait_for 10 shows '300 moths?'
check "and not kept before" visit_is 1 2026-07-10 ''
keys BSpace Enter
check "the right one is kept" wait_for 10 shows 'Kept: Fri 10 Jul, 30'
check "on the disk" visit_is 1 2026-07-10 'counted 30'
keys DC
check "taking out is asked about" wait_for 10 shows 'Take out the visit of Fri 10 Jul (30)'
check "and not done before" visit_is 1 2026-07-10 'counted 30'
keys DC
check "then it is out" wait_for 10 shows 'Taken out: Fri 10 Jul (30)'
check "of the book too" visit_is 1 2026-07-10 ''
keys u
check "and brought back" wait_for 10 shows 'the visit of Fri 10 Jul is there again'
check "as it was" visit_is 1 2026-07-10 'counted 30'
resize 40x16
check "the diary fits a small window" wait_for 10 shows '> Fri 10 Jul  *30'
keys Enter + . x y Enter Enter
check "flags and notes as in a run" wait_for 10 shows 'Kept: Fri 10 Jul, 30 c'
check "all of it is kept" visit_is 1 2026-07-10 'counted 30 delta liner'

fresh two
open_diary 2 1
keys n
wait_for 10 shows 'day of the visit:'
keys 0 7 - 1 0 Enter
wait_for 10 shows '> Fri 10 Jul  *\['
keys 5
printf 'farm,trap,date,outcome,count\nAddermoor,1,2026-07-10,counted,8\n' \
	>"$work/other.csv"
it import visits "$work/other.csv" >"$work/out" 2>&1
check "what another program enters meanwhile is said" wait_for 10 shows 'meanwhile'
check "beside what is typed" shows '\[ 5  *\] was 8'
check "and not lost" visit_is 1 2026-07-10 'counted 8'
keys Enter
check "until Enter says so" wait_for 10 shows 'Kept: Fri 10 Jul, 5'
keys c
check "and even then it is readable" wait_for 10 shows '^ Fri 10 Jul  was 8, changed'

fresh service
keys s
check "the Service page opens" wait_for 10 shows '^ Service  all farms'
check "with what is due" shows ' 2  *Old Kiln  *lure  *CM 1 mg'
before=$(week_of 2)
while lacks '^ > .* 2  *Old Kiln .*lure'; do
	keys Down
	wait_for 10 settled
done
keys '*'
check "a lure changed between two runs" \
	wait_for 10 shows 'Saved: new lure today, .*trap 2'
check "leaves the count open" visit_is 2 $day 'skipped CM 1 mg'
check "and what was read before" [ "$(week_of 2)" = "$before" ]
check "it is due no more" lacks ' 2  *Old Kiln  *lure'
keys u
check "and is taken back" wait_for 10 shows 'Taken back'
check "as if nothing had been" visit_is 2 $day ''
keys Home
check "the first one is the full card of trap 1" \
	wait_for 10 shows '^ > .* 1  *Old Kiln  *card'
keys +
check "a card of a trap that was counted today asks first" \
	wait_for 10 shows 'Trap 1 has a visit today (6)'
keys +
check "and goes into that visit" wait_for 10 shows 'Saved: new card today, .*trap 1'
check "whose count stays" visit_is 1 $day 'counted 6 delta liner'

fresh thresholds
keys b
wait_for 10 shows 'thresholds'
while lacks '> thresholds'; do
	keys Down
	wait_for 10 settled
done
keys Enter
check "the Thresholds page opens" wait_for 10 shows '^ Thresholds  '
check "what the own one would have called is said" \
	wait_for 10 shows 'OVER in [0-9]* of [0-9]* trap-weeks'
keys Tab
check "a published one is tried as well" wait_for 10 shows 'source: '
keys t
check "taking it makes it one's own" wait_for 10 shows 'Taken: it is yours now'
it export thresholds >"$work/out"
check "with its source" grep -q 'CM1: ' "$work/out"

book="$work/style.db"
cp "$base" "$book"
MOTHTALLY_SETTINGS='date_style=month-day;week_start=sunday' it due >"$work/out"
check "the environment turns the dates" grep -q 'Tue July 21, 2026' "$work/out"
check "of every line" [ "$(grep -c '[0-9] Ju[ln]' "$work/out")" = 0 ]
it due >"$work/out"
check "and stores nothing" grep -q 'Tue 21 July 2026' "$work/out"
MOTHTALLY_SETTINGS='date_style=month-day' it due --csv >"$work/month"
it due --csv >"$work/day"
check "files stay as they are" cmp "$work/month" "$work/day"
MOTHTALLY_SETTINGS='date_style=iso' it due >"$work/out" 2>&1
check "what no file brings in is refused" [ $? = 2 ]
check "with what would be right" grep -q 'day-month, month-day' "$work/out"

finish
