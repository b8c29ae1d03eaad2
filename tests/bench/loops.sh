# loops.sh - what tests/bench/run measures beside plain loops, and frames beside the
# time that a frame has.

# All pests that have a base: those of single sines, as BASE or BASE:CAP in degrees F.
sines() {
	"$program" --book "$work/none.db" export pests 2>/dev/null | tr -d '\r' | awk -F , '
		function f(x) { return x == "" || unit == "F" ? x : x * 1.8 + 32 }
		$7 == "sine" && ($8 == "none" || $8 == "horizontal") {
			unit = $4
			print f($5) ($8 == "horizontal" ? ":" f($6) : "")
		}'
}

# Ours and a plain loop in the program $1, which must say the same.
compare_loop() {
	loop=$BUILD/$1 words=$2 goal=$3
	shift 3
	rules=$*
	[ "$("$loop" ours $rules)" = "$("$loop" plain $rules)" ] ||
		{ echo "the two sides of $loop differ" >&2; exit 1; }
	ours() { "$stopwatch" "$loop" ours $rules; }
	theirs() { "$stopwatch" "$loop" plain $rules; }
	compare "$words" "a plain loop" s "$goal"
}

compare_loops() {
	compare_loop heat "degree-days: 30 years x 10 stations x $(sines | wc -l) pests x 10" \
		3 $(sines)
	compare_loop flights "flights: 50 seasons x 200 traps x 40" 1.5
	compare_loop hotspots "hot spots: 120 blocks x 9 999 shuffles" 1.5
	compare_r
	bound "hot spots of a farm of 60 traps" "a wait that is seen" s \
		"$(awk '{ print $1 / 10 }' "$work/ours")" 0.1
}

compare_r() {
	if ! command -v Rscript >/dev/null; then
		left_out "hot spots, the same" "a plain loop in R is not measured without R"
		return
	fi
	theirs() { "$stopwatch" Rscript $here/hotspots.R; }
	compare "hot spots, the same" "a plain loop in R" s 0.5
}

# The sum of one season among all the years and stations, and with that year alone. The
# earlier years are not idle: what comes next is expected by them.
compare_weather() {
	sh $here/weather 30 10 "$work/csv"
	today=2025-12-31
	for book in many year; do
		file=weather
		[ $book = many ] || file=year
		rm -f "$work/$book.db"*
		for kind in traps visits weather stations biofix; do
			from=$kind
			[ $kind != weather ] || from=$file
			mothtally "$work/$book.db" import $kind "$work/csv/$from.csv" >"$work/said"
		done
	done
	today=2025-07-01
	flight() {
		"$stopwatch" "$program" --book "$work/$1.db" --today $today flight \
			--pest CM --farm "Farm 01"
	}
	ours() { flight many; }
	theirs() { flight year; }
	compare "\`flight\`, $(thousands $(($(wc -l <"$work/csv/weather.csv") - 1))) days of weather" \
		"one year of one station" s 2
	rm -rf "$work/csv" "$work/many.db" "$work/year.db"
}

make_lists() {
	today=2026-07-21
	sh $here/lists-book "$work/csv"
	rm -f "$work/lists.db"*
	for kind in traps visits thresholds farms pests lures cards stations; do
		mothtally "$work/lists.db" import $kind "$work/csv/$kind.csv" >"$work/said"
	done
	sqlite3 "$work/lists.db" "INSERT INTO place (farm, name, kind, uid, changed_at,
		changed_by) SELECT 1, 'wood ' || id, 'woodlot', uid, changed_at, '' FROM trap"
	rm -rf "$work/csv"
}

# Sets $name to the list that is worst in column $1, $a to its figure; or in $1 a column
# of $2, whose figure is $b.
name_worst() {
	awk -F '\t' -v a="$1" -v b="${2:-0}" '{
			at = b ? $a / $b : $a
			if (at > most) {
				most = at
				line = (b ? $a : $a / 1e3) " " (b ? $b : 1) " " $1
			}
		} END { print line }' "$work/scrolled" >"$work/worst"
	read -r a b name <"$work/worst"
}

# Sets $scrolled if that went well; false: it did not, or is slow and is to be done again.
scroll() {
	scrolled=
	"$lists" "$program" "$work/lists.db" $today ${1:+"$1"} >"$work/scrolled" || return 1
	scrolled=yes
	name_worst 2
	awk -v a="$a" 'BEGIN { exit a > 0.016 }'
}

# An arrow key in every list that may grow long, with 5 000 records; or in the list $1
# alone. Of each frame the quickest of three runs counts. A place that moths come from
# has no file of its own.
scroll_lists() {
	on_terminal "a key in a list of 5 000" || return 0
	make_lists
	scroll "$@" || scroll "$@" || [ "$scrolled" ] || {
		not_measured "a key in a list of 5 000"
		broken=$((broken + 1))
		return 0
	}
	name_worst 2
	bound "a key in a list of 5 000: $name, middle frame" "60 frames a second" s "$a" 0.016
	[ "${1:-}" ] || {
		name_worst 3
		bound "the same: $name, slowest frame" "60 frames a second" s "$a" 0.016 1.5
	}
	name_worst 4 5
	bound "the same: $name, sent to the terminal" "cells that change" bytes:cells "$a" "$b" 3
	cp "$work/scrolled" "$BUILD/lists.tsv"
}
