#!/bin/sh
# The manual against the program: every key, command, option, column and status is in
# it, and its examples run as they stand.
. tests/e2e/lib.sh
. tests/e2e/farm

man1=$PWD/man/mothtally.1 man5=$PWD/man/mothtally.5

# section FILE MACRO NAME: the lines under that heading, up to the next of its kind
section() {
	awk -v head="$2 $3" -v kind="$2 " '
		index($0, kind) == 1 || /^\.Sh / { inside = 0 }
		$0 == head { inside = 1; next }
		inside' "$1"
}

# The words that mdoc sets as keys, options or values, one a line.
set_words() {
	awk '/^\.(It|Ic|Cm|Pq|Fl)/ {
		gsub(/\\&/, "")
		gsub(/Fl Fl /, "--")
		gsub(/Fl /, "-")
		for (i = 2; i <= NF; i++) print $i
	}'
}

# has FILE WORD: the file has that line
has() {
	grep -qxF -e "$2" "$1"
}

# The keys of the page that is shown, as its ? tells them, one a line. A key stands at
# the left; what goes on below has blanks there.
keys_told() {
	screen | awk 'NR > 2 && /^ [^ ]/ && length($0) > 12 {
		n = split(substr($0, 2, 12), word, " ")
		for (i = 1; i <= n; i++) if (word[i] != "or") print word[i]
	} NR > 2 && (/^ *$/ || /^[^ ]/) { exit }'
}

# keys_of PAGE: asks for the keys of the page shown and looks each up
keys_of() {
	keys '?'
	wait_for 10 shows "^ Keys  $1"
	wait_for 10 settled
	keys_told >"$work/told"
	{
		section "$man1" .Ss "$1"
		section "$man1" .Ss Everywhere
	} | set_words >"$work/words"
	check "the $1 page tells its keys" [ "$(wc -l <"$work/told")" -gt 5 ]
	while read -r key; do
		check "$1: the key $key is in the manual" has "$work/words" "$key"
	done <"$work/told"
	keys Escape
	wait_for 10 lacks '^ Keys'
}

# It succeeds and complains of nothing; what it prints is kept.
quietly() {
	"$@" >"$work/out" 2>"$work/err" && [ ! -s "$work/err" ] && return
	cat "$work/err"
	return 1
}

for file in "$man1" "$man5"; do
	check "mandoc accepts ${file##*/}" quietly mandoc -T lint -W warning "$file"
	check "and has nothing to say about it" [ ! -s "$work/out" ]
done

start 90x70 "$prog demo"
wait_for 20 shows '^ mothtally  '
keys_of Today
keys Enter
wait_for 10 shows '^ Run'
keys_of Run
keys y
wait_for 10 lacks '^ Run'
keys_of Why
keys d
wait_for 10 shows 'season 2026'
keys_of Diary
keys Escape
wait_for 10 shows 'Before you act\|trap '
keys Escape w
wait_for 10 shows '^ Week'
keys_of Week
keys l
wait_for 10 shows '^ Flight'
keys_of Flight
keys m
wait_for 10 shows '^ Weather'
keys_of Weather
keys Escape
wait_for 10 shows '^ Flight'
keys h
wait_for 10 shows '^ Hot spots'
keys_of 'Hot spots'

keys Escape Escape Escape Escape b
wait_for 10 shows '^ Book'
keys_of Book
keys Escape s
wait_for 10 shows '^ Service'
keys_of Service
keys Escape b
wait_for 10 shows '^ Book'
while lacks '> thresholds'; do
	keys Down
	wait_for 10 settled
done
keys Enter
wait_for 10 shows '^ Thresholds'
keys_of Thresholds
keys Escape
wait_for 10 shows '^ Book'
keys Home
keys Down Down Enter
wait_for 10 shows '^ Traps'
keys_of List
keys c
wait_for 10 shows '^ Changes'
keys_of Text
keys Escape Enter
wait_for 10 shows '^ Form'
keys_of Form
keys Escape Escape End Enter
wait_for 10 shows '^ Merging'
keys_of Merging
keys Escape
wait_for 10 shows '^ Book'
keys End Up Enter
wait_for 10 shows '^ Backups'
keys_of Backups
start 90x70 "$prog --book $work/none.db"
wait_for 20 shows 'first farm'
keys_of Start

# Commands and their options, as --help tells them.
$prog --help >"$work/help"
awk '/^A command/ { exit } /^  [a-z]+( |$)/ { print $1 }' "$work/help" >"$work/commands"
check "--help names the commands" [ "$(wc -l <"$work/commands")" -ge 9 ]
while read -r command; do
	awk -v head=".It Ic $command" '
		/^\.It Ic / { inside = $0 == head || index($0, head " ") == 1 }
		/^\.(El|Ss|Sh)/ { inside = 0 }
		inside' "$man1" | sed -e ':more' -e '/\\$/{N;s/\\\n//;b more' -e '}' \
		>"$work/part"
	check "$command is in the manual" [ -s "$work/part" ]
	set_words <"$work/part" >"$work/words"
	$prog "$command" --help >"$work/told"
	for option in $(grep -oE -e '(^|[^a-z-])--?[a-z]+' "$work/told" |
		grep -oE -e '--?[a-z]+' | sort -u); do
		case $option in
		--help) continue ;;
		esac
		check "$command: $option is in the manual" has "$work/words" "$option"
	done
done <"$work/commands"
for option in --book --today --help --version; do
	section "$man1" .Ss Options | set_words | grep -qxF -e "$option"
	check "$option is in the manual" [ $? -eq 0 ]
done
for status in 0 2 3 4 5; do
	section "$man1" .Sh 'EXIT STATUS' | grep -qx ".It $status"
	check "the status $status is in the manual" [ $? -eq 0 ]
done

# The columns of every file that is written.
cd "$work"
make_farm book.db
# columns HEADING COMMAND ...
columns() {
	section "$man5" .Ss "$1" | set_words >words
	shift
	$prog --book book.db --today $day "$@" | sed 1q | tr -d '\r' | tr , '\n' >told
	check "$* names its columns" [ "$(wc -l <told)" -gt 2 ]
	while read -r column; do
		check "$*: the column $column is in the manual" has words "$column"
	done <told
}
for kind in traps visits thresholds; do
	columns $kind export $kind
done
for kind in pests lures cards; do
	columns 'pests, lures, cards' export $kind
done
for report in week due; do
	columns 'What the reports write with --csv' $report --csv
done
columns 'What the reports write with --csv' hotspots --pest CM --csv
columns places export places

# The words of a visit, as a complaint lists them.
printf 'farm,trap,date,outcome\nQuill End,1,2026-07-20,x\n' >bad.csv
$prog --book book.db --today $day import visits bad.csv 2>&1 |
	sed -n 's/.*one of: //p' | tr -d ' ' | tr , '\n' >told
section "$man5" .Ss Outcomes | set_words >words
check "the outcomes are listed" [ "$(wc -l <told)" -eq 7 ]
while read -r word; do
	check "the outcome $word is in the manual" has words "$word"
done <told

# examples FILE: what stands in its literal displays under EXAMPLES
examples() {
	section "$1" .Sh EXAMPLES | awk '
		/^\.Ed/ { inside = 0; print "" }
		inside
		/^\.Bd -literal/ { inside = 1 }' |
		sed -e 's/\\&//g' -e 's/\\-/-/g' -e 's/\\e/\\/g'
}

# As they stand in the manual, typed one after the other.
mkdir bin one five
ln -s "$prog" bin/mothtally
printf '#!/bin/sh\ncat >/dev/null\n' >bin/lp
chmod +x bin/lp
PATH=$work/bin:$PATH
examples "$man1" >one.sh
check "the manual has examples" [ "$(grep -c '^mothtally' one.sh)" -ge 10 ]
cd one
check "they succeed, without a complaint" quietly sh -e ../one.sh
for file in sheet.txt visits-out.csv owl-copy.db; do
	check "they leave $file" [ -s $file ]
done
check "the week judges the trap of the example" grep -q OVER ../out

# The examples of --help, on the book of those of the manual.
export MOTHTALLY_BOOK=owl.db
for command in $(cat ../commands); do
	example=$(mothtally "$command" --help | sed -n 's/^  *\(mothtally .*\)/\1/p' |
		tail -n 1)
	check "--help's example works: $example" quietly sh -e -c "$example"
done

# The three files of the second manual, in the order in which they are needed.
cd ../five
examples "$man5" | awk '
	BEGIN { file = "traps.csv"; split("visits thresholds", next_one) }
	/^$/ { i++; file = next_one[i] ".csv"; next }
	{ print > file }'
export MOTHTALLY_BOOK=five.db
for kind in traps visits thresholds; do
	check "the example of $kind is taken" \
		quietly mothtally --today 2026-06-02 import $kind $kind.csv
done
unset MOTHTALLY_BOOK

cd "${here%/tests/e2e}"
finish
