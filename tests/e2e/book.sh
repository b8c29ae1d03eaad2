#!/bin/sh
# A book made and kept on the pages alone: from an empty home to the first judged run, a
# file taken in, records changed, put away and taken back, two programs on one book, a
# backup gone back to.
. tests/e2e/lib.sh
. tests/e2e/farm

book="$HOME/.local/share/mothtally/book.db"
hung=2026-05-04

# pages [DATE]: the pages on the usual book
pages() {
	start 80x24 "$prog --today ${1:-$hung}; echo ended with \$?"
}

# The columns farm, block, trap, pest and lure of the traps.
traps_are() {
	cat >"$work/expected"
	$prog export traps | tr -d '\r' | sed 1d | cut -d , -f 1-5 >"$work/got"
	diff "$work/expected" "$work/got"
}

no_book() {
	[ ! -e "$book" ]
}

sound() {
	$prog --today 2026-08-01 check >/dev/null
}

# picks TEXT: the hand is on a row with it
picks() {
	screen | grep -q "^ *\*\{0,1\} *>.*$1"
}

# to_row TEXT: moves down to it
to_row() {
	keys Home
	wait_for 2 settled # what was picked before is still on the screen
	for i in 1 2 3 4 5 6 7 8 9 10 11 12 13 14 15 16; do
		picks "$1" && return 0
		keys Down
		wait_for 2 settled
	done
	picks "$1"
}

# The first start.
pages
check "an empty home offers three ways" wait_for 20 shows '1  Type in your first farm'
check "and says where the book will be" shows 'The book will be'
keys Escape
check "Esc stays there" wait_for 10 shows 'There is no book yet'
keys 2
text "$work/none.csv"
keys Enter
check "a file that is not there is said" wait_for 10 shows 'cannot be read'
printf 'farm,block,trap,pest\nHather Bend,Sand Pit,1,XX\nHather Bend,,2,CM\n' \
	>"$work/bad.csv"
keys 2
wait_for 10 shows 'file of traps'
for i in 1 2 3 4 5 6 7 8; do keys BSpace; done
text "bad.csv"
keys Enter
check "a bad file is told" wait_for 10 shows '^ Not taken in'
check "with every complaint" shows 'line 3'
keys Enter
wait_for 10 shows '3  Look around'
check "and no book was made" no_book
keys 3
check "the demo opens" wait_for 20 shows 'demo: invented data'
keys q
check "q in it comes back" wait_for 10 shows 'That was the demo'
keys q
check "q ends it" wait_for 10 shows 'ended with 0'
check "and still no book was made" no_book

# Ten traps of two blocks, a few keys each.
pages
wait_for 20 shows '1  Type in'
keys 1
wait_for 10 shows '^ Form  new farm'
text Addermoor
keys Escape Enter
check "the farm leads to its block" wait_for 10 shows 'Now its first block'
check "now there is a book" test -s "$book"
text "Old Kiln"
keys Enter
text apple
keys Escape Enter
check "the block leads to its traps" wait_for 10 shows 'What the first trap is'
keys Enter
check "Enter shows the pests" wait_for 10 shows 'codling moth'
text cm
wait_for 10 lacks 'apple maggot'
keys Enter Right
check "a lure is turned to" wait_for 10 shows '> lure *< CM'
keys Enter Right Escape Enter
for n in 1 2 3 4; do
	check "trap $n is saved, the next one offered" \
		wait_for 10 shows "Saved: trap $n of Addermoor. Enter saves $((n + 1)) too"
	wait_for 10 settled
	keys Enter
done
wait_for 10 shows 'Saved: trap 5'
keys "*"
wait_for 10 shows '^ Form  new block'
text "Weir Side"
keys Escape Enter
for n in 5 6 7 8 9; do
	check "trap $((n + 1)) is offered with one key" \
		wait_for 10 shows "Enter saves $((n + 1)) too"
	wait_for 10 settled
	keys Enter
done
wait_for 10 shows 'Saved: trap 10'
wait_for 10 settled
keys Enter Enter
check "an Enter that bounces hangs no trap" wait_for 10 shows '12 is not saved: that Enter'
check "only the one that was meant" \
	[ "$($prog export traps | grep -c '^Addermoor,')" = 11 ]
keys Escape
wait_for 10 shows 'Addermoor *11 traps'
keys b
wait_for 10 shows '^ Book'
keys u
check "what was made on another page is named first" \
	wait_for 10 shows 'u again takes out trap 11'
wait_for 10 settled
keys u
wait_for 10 shows 'Taken back: trap 11'
keys Escape
check "Esc ends on Today" wait_for 10 shows 'Addermoor *10 traps'
traps_are <<'END'
Addermoor,Old Kiln,1,CM,CM 1 mg
Addermoor,Old Kiln,2,CM,CM 1 mg
Addermoor,Old Kiln,3,CM,CM 1 mg
Addermoor,Old Kiln,4,CM,CM 1 mg
Addermoor,Old Kiln,5,CM,CM 1 mg
Addermoor,Weir Side,6,CM,CM 1 mg
Addermoor,Weir Side,7,CM,CM 1 mg
Addermoor,Weir Side,8,CM,CM 1 mg
Addermoor,Weir Side,9,CM,CM 1 mg
Addermoor,Weir Side,10,CM,CM 1 mg
END
check "ten traps are in the book" [ $? -eq 0 ]
check "which is sound" sound
keys q
wait_for 10 shows 'ended with 0'

# A threshold, and the first judged run.
pages 2026-05-11
wait_for 20 shows 'b book'
keys b
wait_for 10 shows '^ Book'
to_row thresholds
keys Enter
wait_for 10 shows '^ Thresholds'
keys n
wait_for 10 shows '^ Form  new threshold'
text cm
keys Enter Escape Enter
check "what lacks is gone to" wait_for 10 shows '> value *\['
keys 5 Escape Enter
check "the threshold is saved" wait_for 10 shows '^ Saved'
keys Escape Escape
wait_for 10 shows 'b book'
keys Enter
wait_for 10 shows 'of 10 done'
keys 7 Enter
check "the first count is judged" wait_for 10 shows 'OVER'
keys 1 Enter
check "and the second" wait_for 10 shows 'under'
keys Escape q
wait_for 10 shows 'ended with 0'

# Changed, put away, taken back.
pages 2026-05-11
wait_for 20 shows 'b book'
keys b
wait_for 10 shows '^ Book'
to_row traps
keys Enter
wait_for 10 shows '^ Traps'
keys +
check "a trap goes one turn down" wait_for 10 shows 'Later on the run'
check "and the hand with it" wait_for 10 picks 'Old Kiln *1 '
check "below the second" [ "$($prog export traps | sed 1d | sed 1q | cut -d , -f 3)" = 2 ]
keys u
check "and back" wait_for 10 shows 'Taken back'
check "above it again" [ "$($prog export traps | sed 1d | sed 1q | cut -d , -f 3)" = 1 ]
keys /
text "weir"
check "typing narrows the list" wait_for 10 shows '5 of 10'
keys Down Enter
check "Enter opens what is picked" wait_for 10 shows '^ Form  trap 7'
keys Down Down
text 7B
keys Escape Enter
check "it is renamed" wait_for 10 shows 'Saved: trap 7B'
keys Escape
check "Esc shows all again" wait_for 10 lacks 'only with'
keys c
check "c tells what changed" wait_for 10 shows '7B'
keys Escape o
check "o asks first" wait_for 10 shows 'Enter takes it down today'
keys Enter
check "o takes it down" wait_for 10 shows 'Taken down today: trap 7B'
keys u
check "u brings it back" wait_for 10 shows 'Taken back'
keys r
wait_for 10 shows 'The new trap is for'
text of
keys Enter
check "r replaces it" wait_for 10 shows 'Replaced by trap 7Bb today, with lure OFM'
check "by a trap of another pest" sh -c "$prog export traps | grep -q 'Weir Side,7Bb,OFM'"
keys u
wait_for 10 shows 'Taken back'
keys Delete
check "Delete says what refers to it" wait_for 10 shows 'in use, by .*visit'
check "and what to do instead" shows 'o takes it down'
keys Escape
wait_for 10 shows '^ Book'
to_row blocks
keys Enter
wait_for 10 shows '^ Blocks'
keys x
check "a block in which traps hang is not put away" wait_for 10 shows 'hang'
keys Escape q
check "sound after all that" sound

# Two programs on one book.
pages 2026-05-11
wait_for 20 shows 'b book'
keys b
wait_for 10 shows '^ Book'
to_row blocks
keys Enter
wait_for 10 shows '^ Blocks'
keys Enter
wait_for 10 shows '^ Form  block'
printf 'farm,block,trap,pest,variety\nAddermoor,Old Kiln,1,CM,Quince Red\n' \
	>"$work/again.csv"
LOGNAME=MV $prog --today 2026-05-11 import traps "$work/again.csv" >"$work/import.out" 2>&1
check "with nothing typed a change from elsewhere is shown" \
	wait_for 10 shows 'variety *Quince Red'
check "and said" shows 'Changed meanwhile by MV'
keys Down
text "New Kiln"
printf 'farm,block,trap,pest,crop\nAddermoor,Old Kiln,1,CM,pear\n' >"$work/again.csv"
LOGNAME=JR $prog --today 2026-05-11 import traps "$work/again.csv" >"$work/import.out" 2>&1
check "another program changes the block" \
	sh -c "$prog export traps | grep -q 'Old Kiln,1,.*pear'"
keys Escape Enter
check "the form says who changed it" wait_for 10 shows 'JR'
keys Escape
check "Esc shows theirs" wait_for 10 shows 'crop *pear'
keys Down
text "New Kiln"
keys Escape Enter
check "now it is saved" wait_for 10 shows 'Saved: block New Kiln'
check "with both changes" sh -c "$prog export traps | grep -q 'New Kiln,1,.*pear'"
keys Escape
wait_for 10 shows '^ Book'

# The number pad alone: a list, a form turned through, a new trap.
keys KP7 KP2 KP2 KPEnter
wait_for 10 shows '^ Traps'
keys KP2 KP2 KPEnter
check "the number pad opens a form" wait_for 10 shows '^ Form  trap 3'
keys KPEnter KPEnter KPEnter
wait_for 10 shows '> pest'
keys KPEnter KP+
check "and turns a choice" wait_for 10 shows '> lure *< CM'
keys Escape Escape
wait_for 10 shows '^ Traps'
keys KP1 KP0
check "and begins a new one" wait_for 10 shows '^ Form  new trap'
keys KP1 KP2
for i in 1 2 3 4 5 6 7 8 9 10; do keys KPEnter; done
check "and saves it" wait_for 10 shows 'Saved: trap 12'
keys Escape Escape
wait_for 10 shows '^ Book'

# A backup gone back to.
to_row backups
keys Enter
wait_for 10 shows '^ Backups'
keys Enter
check "what is in it is shown first" wait_for 10 shows 'The backup holds'
check "and in the present book" shows 'The present book holds'
keys Enter r
check "a second Enter does nothing, r asks" wait_for 10 shows 'r once more puts it'
keys r
check "then it is in place of the book" wait_for 10 shows 'The book is that of'
keys b
wait_for 10 shows '^ Book'
to_row backups
keys Enter
check "the book before is listed first" wait_for 10 shows '^ > .* replaced '
keys Escape
wait_for 10 shows '^ Book'
check "the book before is kept" \
	sh -c "ls '$HOME/.local/share/mothtally' | grep -q book-replaced"
keys q
wait_for 10 shows 'ended with 0'
check "the older name is back" sh -c "$prog export traps | grep -q 'Old Kiln,1,'"
kept=$(ls "$HOME/.local/share/mothtally"/book-replaced* | sed 1q)
check "restore lists what there is" sh -c "$prog restore | grep -q 'book-.*10 traps'"
check "and the book that was replaced" sh -c "$prog restore | grep -q 'replaced: '"
check "restore shows before it replaces" \
	sh -c "$prog restore '$kept' | grep -q 'nothing is changed'"
check "restore --yes goes back" sh -c "$prog restore '$kept' --yes | grep -q 'is kept as'"
check "to what it named" sh -c "$prog export traps | grep -q 'New Kiln,1,'"
check "sound at the end" sound
finish
