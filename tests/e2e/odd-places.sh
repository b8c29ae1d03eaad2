#!/bin/sh
# Started where nobody would expect it to be: with a book that is no file, that is a
# stranger's or may only be read, under odd names, without a home, with a folder for
# temporary files that is none. It ends soon, with one sentence that can be shown, or does
# what was asked for; and never touches another file.
. tests/e2e/lib.sh

demo=$PWD/share/demo today=2026-07-21
cd "$work"

it() {
	timeout 60 "$prog" --today $today "$@" </dev/null >out 2>err
}

shown_as_one() {
	[ "$(wc -l <err)" -eq 1 ] && ! LC_ALL=C grep -q '[^ -~]' err
}

# ends STATUS WORDS COMMAND ...: with one sentence that has these words
ends() {
	wanted=$1 words=$2
	shift 2
	"$@"
	status=$?
	[ $status -eq "$wanted" ] && shown_as_one && grep -q -- "$words" err && return
	echo "status $status, not $wanted:"
	cat -v err
	return 1
}

does() {
	"$@" && [ ! -s err ] && return
	cat -v err
	return 1
}

check "a book is made" does it --book book.db import traps "$demo/traps.csv"
check "and filled" does it --book book.db import visits "$demo/visits.csv"

# Books that are no files.
mkdir folder
mkfifo pipe
ln -s loop loop
ln -s nowhere dangling
for name in folder pipe /dev/null /dev/zero . /; do
	check "$name as a book is refused" ends 5 'is not a file' it --book $name week
	check "$name is not written either" ends 5 'is not a file' \
		it --book $name import traps "$demo/traps.csv"
	check "nor gone back to" ends 5 'is not a file' \
		it --book book.db restore $name --yes
	check "nor merged" ends 5 'is not a file' it --book book.db merge $name
done
check "a link to itself" ends 5 'cannot be opened' it --book loop week
check "a link to nowhere" ends 4 'there is no book' it --book dangling week
check "is not followed to make one" ends 5 . \
	it --book dangling import traps "$demo/traps.csv"
check "so that there is none" [ ! -e nowhere ]
check "a name without a letter" ends 2 'wants the name of a file' it --book '' week
check "what would be in the memory alone" ends 2 'wants the name of a file' \
	it --book :memory: import traps "$demo/traps.csv"
MOTHTALLY_BOOK=:memory:
export MOTHTALLY_BOOK
check "named by the environment too" ends 2 'MOTHTALLY_BOOK wants the name' it week
unset MOTHTALLY_BOOK
long=$(printf '%0300d' 0)
check "a name that is too long" ends 5 'cannot be opened' it --book $long week
deep=$(printf '%03000d' 0 | sed 's/0/a\//g')
check "a path that is too long" ends 5 'the book a/a' it --book ${deep}b.db week

# Names that mean something to somebody else: each is that of a file like any other.
n=0
for name in 'file:a.db' 'file:a.db?mode=memory' 'a.db?mode=ro' '-x' "a'b;.db" "$(printf 'a\nb')" \
	"$(printf 'a\033[2J')" 'a b' '%s%n' '--'; do
	n=$((n + 1))
	mkdir odd$n
	cd odd$n
	check "odd name $n: there is none yet" ends 4 'there is no book' \
		it --book "$name" week
	check "odd name $n: it is made" does it --book "$name" import traps \
		"$demo/traps.csv"
	check "odd name $n: as a file of that name" [ -f "./$name" ]
	check "odd name $n: alone" [ "$(ls -A | grep -cv -e '^out$' -e '^err$')" -eq \
		"$(printf '%s\n' "$name" | wc -l)" ]
	check "odd name $n: it can be read" does it --book "$name" week
	cd ..
done

# No home, and odd ones.
home=$HOME
for odd in '' "/$(printf '%04000d' 0)"; do
	HOME=$odd
	check "a home of $(printf %s "$odd" | wc -c) bytes" ends $([ "$odd" ] && echo 5 || echo 2) \
		'the book' it week
done
unset HOME
check "no home" ends 2 'HOME is not set' it week
check "a book that is named needs none" does it --book book.db week
HOME=/dev/null
export HOME
check "a home that is no folder" ends 5 'cannot be opened' it week
check "in which nothing can be made" ends 5 'cannot be opened' \
	it import traps "$demo/traps.csv"
HOME=$home

# No place for temporary files: the book needs none.
for TMPDIR in /nowhere /dev/null "/$(printf '%05000d' 0)" "$work/dangling" "$work/pipe"; do
	export TMPDIR
	cp book.db again.db
	check "no temporary files: a book is read" does it --book again.db week
	check "and written" does it --book again.db import places "$demo/places.csv"
	check "what goes to the printer needs one" ends 5 'nothing was printed' \
		it --book again.db print sheet
done
unset TMPDIR

# A stranger's book is refused, and nothing of it is run.
# stranger WHAT WORDS SQL
stranger() {
	cp book.db other.db
	sqlite3 other.db "$3" >sqlite.out 2>&1 || cat sqlite.out
	cp other.db other.was
	check "a book with $1 is refused" ends 5 "$2" it --book other.db week
	check "and not written to" ends 5 "$2" it --book other.db import visits \
		"$demo/visits.csv"
	check "nor merged" eval '! it --book book.db merge other.db && shown_as_one'
	check "nor gone back to" eval '! it --book book.db restore other.db --yes &&
		shown_as_one'
	check "it is as it was" cmp other.db other.was
	check "and so is ours" cmp book.db book.was
}
cp book.db book.was
stranger "a view" 'changed by another program' \
	"CREATE VIEW v AS SELECT writefile('$work/run', 'x');"
stranger "a trigger" 'changed by another program' \
	"CREATE TRIGGER t AFTER INSERT ON visit BEGIN DELETE FROM farm; END;"
stranger "a table more" 'changed by another program' "CREATE TABLE more (x);"
stranger "a column more" 'changed by another program' \
	"ALTER TABLE farm ADD COLUMN x TEXT;"
stranger "an index over an expression" 'changed by another program' \
	"CREATE INDEX i ON farm (abs(id));"
stranger "the mark of a newer program" 'newer mothtally' 'PRAGMA user_version = 999;'
stranger "the mark of another program" 'another program' 'PRAGMA application_id = 1;'
check "nothing was run" [ ! -e run ]

# A place where nothing can be written, for who is not root.
mkdir fixed
cp book.db fixed/book.db
chmod 755 . fixed
chmod 644 fixed/book.db
fixed() {
	timeout 60 setpriv --reuid=65534 --regid=65534 --clear-groups \
		"$prog" --book fixed/book.db --today $today "$@" </dev/null >out 2>err
}
if [ "$(id -u)" -eq 0 ] && fixed --version; then
	check "a book on a fixed place is read" does fixed week
	check "and looked over" does fixed check
	check "and given out" does fixed export visits
	check "writing it is refused" ends 5 'may only be read' \
		fixed import visits "$demo/visits-2025.csv"
	check "as is a copy beside it" ends 5 'the backup is not made' \
		fixed backup fixed/copy.db
	check "nothing was left there" [ "$(ls -A fixed)" = book.db ]
else
	echo "left out: nobody to whom a place could be closed"
fi

finish
