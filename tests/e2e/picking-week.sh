#!/bin/sh
# The grower in a picking week with four spot picks and two treatments: each question is
# answered from Today within three keys, at both sizes; the pages as they look then.
. tests/e2e/lib.sh

book="$work/week.db"
today=2026-09-02

make_book() {
	cat >"$work/traps.csv" <<-'END'
	farm,block,trap,pest,lure,card,place,condition,crop,order,hung
	Addermoor,Pond Late,1,CM,CM long-life,delta liner,interior,conventional,apple,1,2026-07-07
	Addermoor,Pond Late,2,CM,CM long-life,delta liner,border,conventional,apple,2,2026-07-07
	Addermoor,Old Kiln,3,CM,CM long-life,delta liner,interior,disrupted,apple,3,2026-07-07
	END
	awk 'BEGIN {
		print "farm,trap,date,outcome,count"
		n = split("07-14 07-21 07-28 08-04 08-11 08-18 08-25 09-01", day, " ")
		for (w = 1; w <= n; w++)
			for (t = 1; t <= 3; t++)
				printf "Addermoor,%d,2026-%s,counted,%d\n", t, day[w],
					t == 1 && w == 6 ? 14 : t == 1 ? 2 : 0
	}' >"$work/visits.csv"
	cat >"$work/thresholds.csv" <<-'END'
	pest,measure,span,comparator,value,source
	CM,trap-week,1,>=,5,invented for the tests
	CM,trap-total,treatment,>=,100,invented for the tests
	END
	cat >"$work/treatments.csv" <<-'END'
	farm,block,pest,date,started_at,ended_at,product,amount,amount_unit,applicator,rei_hours,phi_days
	Addermoor,Pond Late,CM,2026-08-18,18:10,19:40,Brackwater oil,5.5,l,TK,12,14
	Addermoor,Old Kiln,CM,2026-09-02,00:01,00:05,Quern mix,8,l,JR,48,7
	END
	cat >"$work/picks.csv" <<-'END'
	farm,block,date,done,note
	Addermoor,Pond Late,2026-09-01,yes,first colour
	Addermoor,Pond Late,2026-09-04,no,second colour
	Addermoor,Pond Late,2026-09-11,no,strip
	Addermoor,Old Kiln,2026-09-08,no,first colour
	END
	printf 'farm,block,pest,trap,date,decided,decision,note\n%s\n' \
		'Addermoor,Pond Late,CM,1,2026-08-18,2026-08-18,treated,border rows walked' \
		>"$work/answers.csv"
	for kind in traps visits thresholds treatments picks answers; do
		$prog --book "$book" --today $today import $kind "$work/$kind.csv" \
			>/dev/null 2>"$work/err" || { cat "$work/err"; exit 1; }
	done
}

on_today() {
	wait_for 10 shows '^ mothtally  '
}

like() {
	same_screen "screens/$1.txt"
}

# Words of a page stand in one line, however they are wrapped.
says() {
	screen | tr -s ' \n' ' ' | grep -q -- "$1"
}

# ask QUESTION 'ANSWER' KEY ...: within three keys from Today, and Esc leads back
ask() {
	question=$1 answer=$2
	shift 2
	check "$question ($size): three keys or fewer" test $# -le 3
	on_today
	[ $# -eq 0 ] || keys "$@"
	check "$question ($size)" wait_for 10 says "$answer"
	until shows '^ mothtally  '; do
		keys Escape
		wait_for 10 settled
	done
}

make_book
for size in 80x24 40x16; do
	start $size "$prog --book $book --today $today"
	on_today
	check "Today at $size" like "today-barred-$size"
	ask "where may nobody go, and until when?" \
		'no entry: Old Kiln until Fri 4 Sep 00:05'
	ask "which planned pick is too early?" \
		'Tue 8 Sep.*: too early'
	ask "what was sprayed where nobody may go, and who did it?" \
		'treated 2 Sep: Quern mix, by JR' k
	ask "was the pick of Tuesday allowed?" \
		'Tue 1 Sep Pond Late picked not barred from Tue 1 Sep on (14 days after 18 Aug)' k
	ask "may Pond Late be picked on Friday, and after what?" \
		'Fri 4 Sep Pond Late planned not barred from Tue 1 Sep on (14 days after 18 Aug) treated 18 Aug: Brackwater oil, by TK' \
		k Down Down
	ask "when may Old Kiln be picked?" \
		'Old Kiln planned too early: earliest pick Wed 9 Sep' k Down PageDown
	ask "how much of it, and when?" 'treated: Quern mix, 8 l in all' k d
	ask "what did the catch do after?" \
		'before 8.0 a week, after 2.0 a week (14 nights and 14 nights)' a
	ask "which traps does the run pass over?" 'no entry.* Fri .*00:05 ' Home Enter
	keys k
	wait_for 10 shows '^ Picks'
	check "Picks at $size" like "picks-$size"
	keys Escape
	on_today
	keys a
	wait_for 10 shows '^ Alerts'
	check "Alerts at $size" like "alerts-$size"
	keys Escape
	on_today
	keys q
done

# What is planned ahead stands in the season of its block.
start 80x24 "$prog --book $book --today $today"
on_today
keys k d
check "the diary tells planned picks ahead" \
	wait_for 10 says 'Tue 8 Sep pick planned: too early: earliest pick Wed 9 Sep'
keys Escape Escape
on_today
keys k R
check "what was applied, and by whom, is two keys away" \
	wait_for 10 says 'certificate number'
keys Escape Escape q

# A disrupted block's zero says what it does not mean.
start 80x24 "$prog --book $book --today $today"
on_today
keys w End Enter
wait_for 10 shows 'Old Kiln . trap 3'
check "why says what no catch does not mean" says 'does not mean that there are no moths'
keys Escape Escape q

finish
