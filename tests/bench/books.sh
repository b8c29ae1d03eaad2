# books.sh - what tests/bench/run measures on books: files in and out, a count saved,
# pages, seasons, memory, and how all that grows.

mothtally() { "$program" --book "$1" --today "$today" "$2" ${3:+"$3"} ${4:+"$4"}; }
watched() { "$stopwatch" "$program" --book "$1" --today "$today" "$2" ${3:+"$3"} ${4:+"$4"}; }
opened() { "$stopwatch" --page quit "$program" --book "$1" --today "$today"; }

# Thousands set apart, as DEVELOPERS.md has them.
thousands() { echo "$1" | sed -E ':a; s/^([0-9]+)([0-9]{3})/\1 \2/; ta'; }

# A fresh book at $1 with the traps and thresholds of the folder $2, and its file $3.
fresh_book() {
	rm -rf "$work/backups"
	rm -f "$1"*
	for kind in traps thresholds ${3:+visits}; do
		file=$kind
		[ $kind != visits ] || file=$3
		mothtally "$1" import $kind "$2/$file.csv" >"$work/said" || return 1
	done
}

# Seasons $1 of traps $2 into $work/csv; sets $today and $visits, their number.
make_seasons() {
	rm -rf "$work/csv"
	sh $here/seasons "$1" "$2" 26 "$work/csv"
	today=$(tail -n 1 "$work/csv/last.csv" | cut -d, -f3)
	visits=$(($(wc -l <"$work/csv/visits.csv") - 1))
}

# The shell takes all in as text, without a look at it: a table that no count may stand in.
compare_import() {
	rows=$work/csv/$2.csv
	ours() {
		fresh_book "$work/import.db" "$work/csv" &&
			watched "$work/import.db" import visits "$rows"
	}
	theirs() {
		rm -f "$work/bare.db"
		"$stopwatch" sqlite3 "$work/bare.db" ".import --csv '$rows' visits"
	}
	compare "import $(thousands "$visits") visits, $1" "sqlite3 .import, a bare table" s 1.5
	[ "$2" != visits ] || bound_memory import
	rm -f "$work/bare.db" "$work/import.db"
}

# The same rows in the same words, trap by trap.
compare_export() {
	cat >"$work/export.sql" <<-'END'
		.headers on
		.mode csv
		SELECT f.name AS farm, t.label AS trap, v.day AS date, v.outcome, v.reason,
			v.count, v.females, v.others, c.name AS card, l.name AS lure,
			iif(v.stirred, 'yes', NULL) AS stirred, nullif(v.scout, '') AS scout,
			nullif(v.note, '') AS note
		FROM visit v JOIN trap t ON t.id = v.trap JOIN farm f ON f.id = t.farm
		LEFT JOIN card c ON c.id = v.new_card LEFT JOIN lure l ON l.id = v.new_lure
		ORDER BY v.trap, v.day;
	END
	sqlite3 "$work/all.db" ".read $work/export.sql" | tr -d '\r"' >"$work/theirs.csv"
	mothtally "$work/all.db" export visits | tr -d '\r"' | cmp -s - "$work/theirs.csv" ||
		{ echo "the two exports differ" >&2; exit 1; }
	rm -f "$work/theirs.csv"
	ours() { watched "$work/all.db" export visits; }
	theirs() { "$stopwatch" sqlite3 "$work/all.db" ".read $work/export.sql"; }
	compare "export $(thousands "$visits") visits" "sqlite3, the same rows" s 1.5
	bound_memory export
}

# A book of all seasons into one with the traps alone, and its visits copied there by
# SQLite row by row, each checked as it is on its way in: a merge finds its traps by
# name, so that no row can be taken over as it lies on the disk.
compare_merge() {
	fresh_book "$work/empty.db" "$work/csv"
	into() {
		rm -rf "$work/backups" "$work"/into.db*
		cp "$work/empty.db" "$work/into.db"
	}
	ours() {
		into &&
			watched "$work/into.db" merge "$work/all.db"
	}
	theirs() {
		into && "$stopwatch" sqlite3 "$work/into.db" "PRAGMA synchronous = EXTRA;
			ATTACH '$work/all.db' AS b;
			INSERT INTO visit SELECT * FROM b.visit WHERE true"
	}
	compare "merge a book of $(thousands "$visits") visits" "sqlite3 INSERT ... SELECT" s 3
	bound_memory merge
	rm -f "$work"/into.db*
}

# What the opening page asks the book for: its lists, and the season trap by trap. $1 is
# what the ratio is held to.
compare_opening() {
	on_terminal "from the start to the first page" || return 0
	first=$(sed -n 2p "$work/csv/last.csv" | cut -d, -f3)
	{
		echo ".mode csv"
		for table in farm block trap pest lure card threshold station biofix treatment \
			dispensers pick answer setting; do
			echo "SELECT * FROM $table;"
		done
		echo "SELECT id, trap, day, outcome, reason, count, females, others, new_card,
			new_lure, stirred FROM visit WHERE id >= 1000000 *
			(julianday('$first') - julianday('1900-01-01')) ORDER BY trap, id;"
	} >"$work/opening.sql"
	ours() { opened "$work/all.db"; }
	theirs() { "$stopwatch" sqlite3 "$work/all.db" ".read $work/opening.sql"; }
	compare "from the start to the first page" "sqlite3, the same rows" s 2 "$1"
}

# The memory that ours took in the row before, where that is of interest.
bound_memory() {
	[ ! "$weighing" ] || bound "memory: $1, $(thousands "$visits") visits" "what it may take" \
		MiB "$(awk '{ print $2 / 1024 }' "$work/ours")" 32
}

# What is asked of the present season, with 19 seasons before it and with none.
compare_seasons() {
	if on_terminal "the first page, 20 seasons"; then
		ours() { opened "$work/all.db"; }
		theirs() { opened "$work/last.db"; }
		compare "the first page, 20 seasons" "the last season alone" s 1.2
		bound_memory pages
	fi
	ours() { watched "$work/all.db" week; }
	theirs() { watched "$work/last.db" week; }
	compare "\`week\`, 20 seasons" "the last season alone" s 1.2
	bound_memory week
}

# Of a count saved into a book, and of the other: a book if it ends in .db, else a file
# that blocks are added to. The rest is the row.
compare_saves() {
	saved=$1 other=$2
	shift 2
	measure() { "$save" "$turns" "$saved" "$other" >"$work/pairs"; }
	compare "$@"
	measure() { by_turns; }
}

# The journal, its folder, its head, the book, the head cleared: five syncs against one.
save_count() {
	by_clock "save a count" || return 0
	type=$(df --output=fstype "$work" | tail -n 1)
	if [ "$type" = tmpfs ]; then
		left_out "save a count" "the folder of the build is on tmpfs, no disk"
		return
	fi
	cp "$work/all.db" "$work/save.db"
	compare_saves "$work/save.db" "$work/block" "save a count, on $type" \
		"write and fdatasync of 4 KiB" us 4 6
	rm -f "$work/block" "$work/save.db"
}

# In the week after the last, whose run is still open.
count_bytes() {
	on_terminal "type a count: sent to the terminal" || return 0
	measure() {
		cp "$work/last.db" "$work/counts.db" && "$counts" "$program" "$work/counts.db" "$(date -d "$today + 7 days" +%F)" \
			$((4 * turns)) >"$work/pairs"
	}
	compare "type a count: sent to the terminal" "cells that change" bytes:cells 3
	measure() { by_turns; }
	rm -f "$work/counts.db"
}

# Books of two seasons of 20, 200 and 2 000 traps.
make_growth() {
	for fold in 1 10 100; do
		make_seasons 2 $((20 * fold))
		rm -rf "$work/csv-$fold"
		mv "$work/csv" "$work/csv-$fold"
		fresh_book "$work/grown-$fold.db" "$work/csv-$fold" visits
	done
	visits=$((visits / 100))
}

grown() {
	case $what in
	import)
		fresh_book "$work/import.db" "$work/csv-$1" &&
			watched "$work/import.db" import visits "$work/csv-$1/visits.csv"
		;;
	export) watched "$work/grown-$1.db" export visits ;;
	week) watched "$work/grown-$1.db" week ;;
	page) opened "$work/grown-$1.db" ;;
	esac
}

# What $1 takes in a book 10 and 100 times as large, in a line that is called $2; it may
# take as many times as long, or $3 times.
grow() {
	what=$1 line="| $2 |" short=base
	for fold in 10 100; do
		if [ "$what" = save ]; then
			compare_saves "$work/grown-$fold.db" "$work/grown-1.db" "" "" us "$3"
		else
			ours() { grown $fold; }
			theirs() { grown 1; }
			compare "" "" s "${3:-$fold}"
		fi
		line="$line $(cat "$work/row") |"
		short=ratio
	done
	short=
	echo "$line"
}

grow_all() {
	make_growth
	echo
	echo "| what | a book of $(thousands $visits) visits | 10 times as many | 100 times as many |"
	echo "|---|---|---|---|"
	blanks=" | |"
	! by_clock "save a count" || more_turns grow save "save a count" 2
	grow import "import them"
	grow export "export them"
	grow week "\`week\`, of half of them"
	! on_terminal "the first page, of half of them" ||
		grow page "the first page, of half of them"
	rm -rf "$work"/csv-* "$work"/grown-*
}
