#!/bin/sh
# Bad files, bad words and bad books: a sentence that says where and what would be
# right, the exit status that stands in the manual, and the book as it was, byte for
# byte.
. tests/e2e/lib.sh

cd "$work"
book=owl.db
header=farm,trap,date,outcome,count,note

# ends STATUS COMMAND ...: it ends so; what it says is kept, and free of control bytes
ends() {
	wanted=$1
	shift
	"$@" >out 2>err
	status=$?
	[ $status -eq "$wanted" ] || {
		echo "ended with $status, not $wanted:"
		cat err
		return 1
	}
	! tr -d '\n' <err | LC_ALL=C grep -q '[[:cntrl:]]'
}

# says 'PATTERN': and that is the complaint
says() {
	grep -q -- "$1" err && return
	cat err
	return 1
}

it() {
	$prog --book $book --today 2026-07-21 "$@"
}

unchanged() {
	cmp $book before.db && [ ! -e $book-journal ]
}

cat >traps.csv <<'END'
farm,block,trap,pest,lure,card,hung
Owl Rise,Long Bank,1,CM,CM 1 mg,delta liner,2026-07-07
Owl Rise,Long Bank,2,CM,CM 1 mg,delta liner,2026-07-07
END
check "a good file is taken" ends 0 it import traps traps.csv
cp $book before.db

# Reads lines of: what is wrong | rows, as printf writes them | the complaint
while IFS='|' read -r what rows complaint; do
	printf "$header\n$rows\n" >visits.csv
	check "$what: status 3" ends 3 it import visits visits.csv
	check "$what: where, and what would be right" says "$complaint"
	check "$what: nothing else is printed" [ ! -s out ]
	check "$what: the book is as it was" unchanged
done <<'END'
no day|Owl Rise,1,2026-02-30,,3,|^visits.csv, line 2, column date: "2026-02-30" .* such as 2026-07-21
another way of writing days|Owl Rise,1,14/7/2026,,3,|line 2, column date: "14/7/2026" .* year-month-day
a day ahead|Owl Rise,1,2026-07-22,,3,|line 2, column date: "2026-07-22" lies after today, 2026-07-21
less than none|Owl Rise,1,2026-07-14,,-1,|line 2, column count: "-1" .* from 0 to 9999
too many|Owl Rise,1,2026-07-14,,10000,|line 2, column count: "10000" .* from 0 to 9999
far too many|Owl Rise,1,2026-07-14,,99999999999999999999,|line 2, column count: .* from 0 to 9999
half a moth|Owl Rise,1,2026-07-14,,3.5,|line 2, column count: "3.5" .* whole number
a blank for a count|Owl Rise,1,2026-07-14,counted,,|line 2, column count: an empty count is not 0
a count that cannot be|Owl Rise,1,2026-07-14,skipped,3,|line 2, column count: .*skipped
a word for an outcome|Owl Rise,1,2026-07-14,cuonted,3,|line 2, column outcome: "cuonted" .* counted, floor
a trap that is not there|Owl Rise,9,2026-07-14,,3,|line 2, column trap: "9" .* Owl Rise, which has: 1, 2
a farm that is not there|Owl Fall,1,2026-07-14,,3,|line 2, column farm: "Owl Fall" .* it has: Owl Rise
the same visit twice|Owl Rise,1,2026-07-14,,3,\nOwl Rise,1,2026-07-14,,4,|line 3, column date: .* line 2 too; a trap has one visit a day
one bad row after a good one|Owl Rise,1,2026-07-14,,3,\nOwl Rise,2,2026-07-14,,x,|line 3, column count: "x"
a value too few|Owl Rise,1,2026-07-14,,3|line 2: the row has 5 values and the header row 6
a quote left open|Owl Rise,1,2026-07-14,,3,"open|line 2, column 6: the quote .* is not closed
a NUL byte|Owl Rise,1,2026-07-14,,3,a\000b|line 2, column 6: a NUL byte
a control byte|Owl Rise,1,2026-07-14,,3,a\033[31mb|line 2, column 6: .* holds the control character 27
torn UTF-8|Owl Rise,1,2026-07-14,,3,a\303|line 2, column 6: .* UTF-8
UTF-8 of too many bytes|Owl Rise,1,2026-07-14,,3,\300\257|line 2, column 6: .* UTF-8
END

printf "$header\nOwl Rise,1,2026-02-30,,x,\nOwl Rise,9,2026-07-14,,3,\n" >visits.csv
check "several at once: status 3" ends 3 it import visits visits.csv
check "the first is named" says 'line 2, column date'
check "the second too" says 'line 3, column trap'
check "and how many there are" says 'things are wrong, so nothing was taken in'
awk -v header=$header 'BEGIN {
	print header
	for (i = 0; i < 80; i++) print "Owl Rise,9,2026-07-14,,3,"
}' >visits.csv
check "eighty of them: status 3" ends 3 it import visits visits.csv
check "fifty are named" [ "$(grep -c '^visits.csv, line' err)" -eq 50 ]
check "and the rest is counted" says '^and 30 more$'
check "the book is as it was" unchanged

printf "$header,weather\nOwl Rise,1,2026-07-14,,3,,dry\n" >visits.csv
check "a column of another file" ends 3 it import visits visits.csv
check "is refused by name" says 'line 1, column 7: "weather" is no column of visits.*note'
printf 'farm,trap,count\nOwl Rise,1,3\n' >visits.csv
check "a column that is missing" ends 3 it import visits visits.csv
check "is named" says 'line 1: the column date is missing'
printf 'farm,trap,date,date,count\n' >visits.csv
check "a column twice" ends 3 it import visits visits.csv
check "is named, too" says 'line 1: the columns 3 and 4 are both "date"'
: >visits.csv
check "an empty file" ends 3 it import visits visits.csv
check "is told what its first row should be" says 'is empty; its first row names'
printf "$header\n" >visits.csv
check "a header row alone is no fault" ends 0 it import visits visits.csv
check "and brings nothing" grep -q '0 new' out
check "the book is as it was" unchanged

cp $book binary.csv
check "another program's file" ends 3 it import visits binary.csv
check "is named with its place" says '^mothtally: binary.csv, line 1'
memory='ulimit -S -v 262144;'
! grep -q __asan_init "$prog" || memory= # the sanitizer takes far more for itself
for how in '' "$header\n" "$header\nOwl Rise,1,2026-07-14,,3,a"; do
	printf "$how" >huge.csv
	truncate -s 1G huge.csv
	check "a file of 1 GB" ends 3 sh -c "$memory
		exec $prog --book $book import visits huge.csv"
	check "is given up at its first NUL byte" says 'huge.csv, line .*a NUL byte'
	rm huge.csv
done
head -c 3000000 /dev/zero | tr '\0' 'a' >long.csv
check "a line without an end" ends 3 it import visits long.csv
check "is named with its place" says 'long.csv, line 1'
check "the book is as it was" unchanged

# Words of the command line, and the statuses 2 and 4.
while IFS='|' read -r status words complaint; do
	check "mothtally $words" ends "$status" it $words
	check "mothtally $words: $complaint" says "$complaint"
done <<'END'
2|nonsense|"nonsense" is no command; there are week
2|week --nonsense|"--nonsense" is no option of week; it takes --farm, --pest
2|week --farm|wants a value
2|week more|no use for "more"
2|sheet --paper a3|a4.*letter
2|import|needs a kind of file
2|import visits|needs a file
2|import barometer f|"barometer" is no kind of file; there are: traps
2|export|needs a kind of file
2|backup|wants the name of a new file
2|week --book f|stands before the command
2||the pages need a terminal
4|week --farm Nowhere|there is no farm "Nowhere"; the book has: "Owl Rise"
4|week --pest XYZ|XYZ
4|due --farm Nowhere|no farm "Nowhere"
4|sheet --farm Nowhere|no farm "Nowhere"
4|import visits nothing.csv|nothing.csv cannot be read: No such file
END
check "a bad day for today: status 2" ends 2 $prog --today 2026-02-30 week
check "is told how to write it" says '--today wants a date such as 2026-07-21'
check "no book yet: status 4" ends 4 $prog --book none.db week
check "is told how to begin one" says 'no book at none.db yet: begin one'
check "and none is made" [ ! -e none.db ]

# Outputs that fail.
for words in week due sheet 'export visits' 'demo --print' --help --version check; do
	check "$words on a full device: status 5" ends 5 sh -c "
		exec $prog --book $book $words >/dev/full"
	check "$words: says so" says 'the output could not be written: No space left'
done
check "a sheet into a folder that is not there" ends 5 it sheet -o nowhere/sheet.txt
check "is said" says 'nowhere/sheet.txt could not be written: No such file'
check "a backup over a file that is there" ends 5 it backup before.db
check "is refused" says 'before.db'
check "and the file is as it was" unchanged

# Books that are no good, and stay as they are.
sqlite3 foreign.db 'CREATE TABLE shoes (size)'
echo 'no book at all' >text.db
: >empty.db
cp $book newer.db
sqlite3 newer.db 'PRAGMA user_version = 99'
cp $book damaged.db
dd if=/dev/zero of=damaged.db bs=4096 seek=1 count=40 conv=notrunc 2>dd.out
mkdir folder.db
while IFS='|' read -r file complaint; do
	[ -d "$file" ] || cp "$file" kept
	check "$file: status 5" ends 5 $prog --book "$file" week
	check "$file: $complaint" says "$complaint"
	check "$file: nor is it written to" \
		ends 5 $prog --book "$file" import traps traps.csv
	[ -d "$file" ] || check "$file: it is as it was" cmp "$file" kept
done <<'END'
foreign.db|foreign.db belongs to another program; it is left as it is
text.db|text.db is not a book of mothtally; it is left as it is
empty.db|empty.db is not a book of mothtally
newer.db|newer mothtally (book version 99.*install the newer one
damaged.db|damaged
folder.db|folder.db is not a file
END
check "check finds damage: status 5" ends 5 $prog --book damaged.db check

# A full disk: files end at 8 KiB.
limited() {
	sh -c "ulimit -S -f 16; exec $prog --today 2026-07-21 --book $*"
}
rm -rf backups
printf "$header\nOwl Rise,1,2026-07-14,,3,\n" >visits.csv
check "an import on a full disk: status 5" ends 5 limited $book import visits visits.csv
check "says that it is full" says 'the disk is full'
check "the book is as it was" unchanged
check "a new book on a full disk: status 5" ends 5 limited new.db import traps traps.csv
check "says so, too" says 'the disk is full'
check "and leaves nothing behind" [ "$(echo new.db*)" = 'new.db*' ]
check "an export on a full disk: status 5" ends 5 \
	sh -c "ulimit -S -f 1; exec $prog --book $book export pests out.csv"
check "says that, too" says 'out.csv could not be written'
check "and leaves no file" [ ! -e out.csv ]

# A book that may only be read; root may write everything, so it steps down.
reader() {
	if [ "$(id -u)" -eq 0 ]; then
		setpriv --reuid=65534 --regid=65534 --clear-groups "$@"
	else
		"$@"
	fi
}
mkdir shut
cp $book shut/owl.db
chmod 444 shut/owl.db
chmod 555 shut
chmod 1777 . # a sanitizer writes its report here
if reader $prog --version >out 2>&1; then
	check "a book that may only be read can be read" ends 0 \
		reader $prog --book shut/owl.db week
	check "writing to it: status 5" ends 5 reader $prog --book shut/owl.db \
		--today 2026-07-21 import visits visits.csv
	check "says why" says 'permission\|may only be read\|Permission denied'
	check "it is as it was" cmp shut/owl.db before.db
fi
chmod 755 shut

check "the good file is still taken" ends 0 it import visits visits.csv
check "and the book is sound" ends 0 it check
cd "${here%/tests/e2e}"
finish
