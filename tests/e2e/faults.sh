#!/bin/sh
# What is shown as saved is on the disk before it is shown, seen from outside; a book
# that another program holds, and one that two programs write.
. tests/e2e/lib.sh
. tests/e2e/farm

base="$work/base.db" book="$work/book.db"
make_farm "$base"

open_run() {
	start 80x24 "$1$prog --book $book --today $day; echo ended with \$?"
	wait_for 20 shows 'q quit'
	keys Enter
	wait_for 10 shows 'of 40 done'
}

book_has() {
	saved "$book" >"$work/got"
	diff - "$work/got"
}

# Reads what strace saw. Whenever a byte goes to the terminal, nothing of the book and its
# journal may lie unsynced, and the journal's head must be cleared: else the save would be
# taken back. The journal, its name and its head must be on the disk before the book is
# touched, the book before the head is cleared; a typed count must be saved before the
# first byte that answers its Enter, and the answer may wait for no key.
judge_trace() {
	awk '
		function path() {
			match($0, /<[^>]*>/)
			return substr($0, RSTART + 1, RLENGTH - 2)
		}
		function wrong(what) {
			if (!(what in said)) print "line " NR ": " what
			said[what]++
		}
		{ sub(/^[0-9]+ +/, "") }
		/^openat\(.*book\.db-journal", .*O_CREAT/ { named = 1; next }
		/^(pwrite64|write|ftruncate)\([0-9]+<[^>]*\/book\.db(-journal)?>/ {
			if (path() ~ /book\.db$/) {
				if (!valid) wrong("the book is written before its journal is valid")
				if (journal in unsynced)
					wrong("the book is written before its journal is synced")
				if (named) wrong("the book is written before the folder is synced")
			} else if (/, 12, 0\) /) {
				valid = 1
			} else if (/, "(\\0)+"(\.\.\.)?, 28, 0\) /) {
				for (p in unsynced)
					wrong("the journal is cleared before " p " is synced")
				valid = 0
				cleared = 1
			}
			if (path() ~ /journal$/) journal = path()
			unsynced[path()]
			next
		}
		/^f(data)?sync\(/ {
			delete unsynced[path()]
			if (path() == folder) named = 0
			if (path() == journal && cleared) {
				cleared = 0
				if (typed) { typed = 0; kept++ }
			}
			next
		}
		/^read\(0</ {
			if (answering) wrong("a key was read before the answer was sent")
			if (/"[0-9]",/) digits = 1
			if (/"\\r",/) { typed = answering = digits; digits = 0 }
			next
		}
		/^write\(1</ {
			answering = 0
			for (p in unsynced) wrong("shown before " p " is synced")
			if (valid) wrong("shown before the journal is cleared")
			if (typed) wrong("shown before it is saved")
		}
		END {
			if (kept != 40) print kept " of 40 counts seen saved"
			for (what in said) exit 1
			exit kept != 40
		}' folder="$work" "$1"
}

if strace -o "$work/trace" true 2>"$work/why"; then
	cp "$base" "$book"
	open_run "strace -y -s 99 -o $work/trace \
		-e trace=openat,read,write,pwrite64,ftruncate,fdatasync,fsync "
	i=0
	while [ $i -lt 40 ]; do
		i=$((i + 1))
		text "$(count_of $i)"
		keys Enter
	done
	check "a run goes in under strace" wait_for 60 shows '^ 40 of 40 done'
	keys Escape
	wait_for 10 shows 'q quit'
	keys q
	wait_for 10 shows 'ended with 0'
	check "every count is on the disk before it is shown" judge_trace "$work/trace"
	grep -v '^fdatasync' "$work/trace" >"$work/unsynced"
	check "a trace without the syncs would have been noticed" \
		eval '! judge_trace "$work/unsynced" >"$work/out"'
	check "and why" grep -q 'before the folder is synced' "$work/out"
else
	echo "left out, strace may not run here: $(cat "$work/why")"
fi

# Another program holds the book: the page waits two seconds, says so and keeps the
# count.
cp "$base" "$book"
open_run
mkfifo "$work/hold"
sqlite3 "$book" <"$work/hold" >"$work/held" &
holder=$!
exec 3>"$work/hold"
echo "BEGIN EXCLUSIVE; SELECT 'held';" >&3
wait_for 10 grep -q held "$work/held"
keys 7 Enter
check "a book in use: the count is not saved" wait_for 20 shows 'NOT SAVED'
check "the cause is said" shows 'another program is'
check "the count stays on the screen" shows '^ > 1 .*\[ 7 '
check "commands say so too" eval '! $prog --book "$book" week >"$work/out" 2>&1'
check "in a sentence" grep -q 'another program is using the book' "$work/out"
echo "ROLLBACK;" >&3
exec 3>&-
wait $holder
keys Enter
check "once the book is free Enter saves it" wait_for 10 shows '^ 1 of 40 done'
check "the book has it once" book_has <<END
1 7
END

# The book goes away, is exchanged, is overwritten while the run is open.
for what in removed exchanged damaged; do
	cp "$base" "$book"
	open_run
	case $what in
	removed) rm "$book" ;;
	exchanged) cp "$base" "$work/new.db" && mv "$work/new.db" "$book" ;;
	damaged) dd if=/dev/zero of="$book" bs=4096 seek=1 count=200 conv=notrunc \
		2>"$work/out" ;;
	esac
	keys 7 Enter
	check "a book $what under it: the count is not saved" wait_for 10 shows 'NOT SAVED'
	check "nor shown as done" shows '^ 0 of 40 done'
	check "it stays on the screen" shows '^ > 1 .*\[ 7 '
done
cp "$base" "$book"
open_run
keys 7 Enter
wait_for 10 shows '^ 1 of 40 done'

# Two programs on one book, each in its terminal.
second() {
	command tmux -S "$work/second" -f /dev/null "$@"
}
other() {
	second capture-pane -p | grep -q -- "$1"
}
other_keys() {
	second send-keys -- "$@"
}
trap 'second kill-server 2>/dev/null; stop; rm -rf "$work"' EXIT
second new-session -d -x 80 -y 24 "$prog --book $book --today $day"
wait_for 10 other 'q quit'
other_keys Enter
check "a second program goes on at the first open trap" wait_for 10 other '^ > 2 '
keys 3
other_keys 5 Enter
wait_for 10 other '^ 2 of 40 done'
check "the first sees the second's count" wait_for 10 shows '^ 2 of 40 done'
check "and keeps what is being typed" wait_for 10 shows '^ > 2 .*\[ 3 '
check "with the count that is there now" wait_for 10 shows 'was 5'
keys Escape
keys Enter
check "dropped, the next open trap follows" wait_for 10 shows '^ > 3 '
keys 9 Enter
check "the second sees the first's count" wait_for 10 other '^ 3 of 40 done'
other_keys Down 8 Enter
wait_for 10 other '^ 4 of 40 done'
check "the book has all of them" book_has <<END
1 7
2 5
3 9
4 8
END
check "and is sound" eval '$prog --book "$book" --today $day check >"$work/out"'
other_keys Escape q
check "the second ends" wait_for 10 eval '! second list-sessions >"$work/out" 2>&1'

finish
