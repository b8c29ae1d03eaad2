# table.sh - the one table of tests/bench/run. A row compares two sides, each a function
# that prints what tests/bench/stopwatch prints, `ours` and `theirs`; or whatever
# `measure` was made to be. Needs $here, $work, $turns, $slack and $judged.

# A pair a turn: seconds of ours and theirs, then seconds of work. Who is first takes
# turns, so that a machine that becomes busy meanwhile is nobody's. False: one of them has
# failed.
by_turns() {
	: >"$work/pairs"
	for turn in $(seq "$turns"); do
		sides="theirs ours"
		[ $((turn % 2)) = 0 ] || sides="ours theirs"
		for side in $sides; do
			$side >"$work/$side" || return 1
		done
		paste -d ' ' "$work/ours" "$work/theirs" |
			awk '{ print $1, $4, $3, $6 }' >>"$work/pairs"
	done
}

measure() { by_turns; }

blanks=" | | | | | |" # behind what is left out
titles() {
	echo "| what | beside it | it takes | beside it | ratio | least to most | of the work | goal |"
	echo "|---|---|---|---|---|---|---|---|"
}

# What was measured as a row, in $work/row: words, words, unit, goal, and what the ratio
# is held to where the goal is out of reach. False: it is broken.
judge() {
	awk -v what="$1" -v beside="$2" -v unit="${3%:*}" -v other="${3#*:}" -v goal="$4" \
		-v held="${5:-}" -v slack="$slack" -v by="$judged" -v short="${short:-}" \
		-f $here/row.awk "$work/pairs" >"$work/row"
}

# The same, measured. What is broken, or could not be measured, is measured once more
# before it counts.
compare() {
	: >"$work/row"
	if { measure && judge "$@"; } || { measure && judge "$@"; }; then
		passed=$((passed + 1))
	else
		broken=$((broken + 1))
		[ -s "$work/row" ] || not_measured "$1" >"$work/row"
	fi
	[ "${short:-}" ] || cat "$work/row"
}

# A figure beside what it may be: words, words, unit, it, may, ratio (1).
bound() {
	echo "$4 $5" >"$work/figure"
	measure() { cp "$work/figure" "$work/pairs"; }
	compare "$1" "$2" "$3" "${6:-1}"
	measure() { by_turns; }
}

left_out() { echo "| $1 | left out: $2 |$blanks"; }

not_measured() {
	if [ "${short:-}" ]; then
		[ "$short" = ratio ] || printf -- '- | '
		printf 'could not be measured **broken**'
	else
		echo "| $1 | could not be measured | | | | | | **broken** |"
	fi
}

# A bare chroot has no pseudo-terminals. False: the row is left out.
on_terminal() {
	[ -e /dev/pts/ptmx ] || {
		left_out "$1" "this machine has no /dev/pts, so no terminals"
		return 1
	}
}

# False: the row is left out, for it is one of the clock alone, and a busy disk would be
# taken for a fault.
by_clock() {
	[ "$judged" = clock ] || {
		left_out "$1" "the clock judges it, by \`make bench\`"
		return 1
	}
}
