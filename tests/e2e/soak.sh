#!/bin/sh
# One program stays open on a season's book while keys are typed on all its pages, at
# sizes drawn by lot: its memory stays flat and it leaves no file open. With SOAK=whole
# (make soak) 10 000 keys, and no frame may take over 50 ms; SEED picks the keys.
. tests/e2e/lib.sh

keys_typed=1000 seed=${SEED:-20260721} day=2026-07-21
[ "${SOAK:-}" != whole ] || keys_typed=10000
[ -z "${SANITIZED:-}" ] || keys_typed=300 # slow there
book="$work/book.db"
[ -e /dev/pts/ptmx ] || no_terminal

for part in traps places visits visits-2025 thresholds weather biofix dispensers \
	treatments picks fruit-checks answers; do
	$prog --book "$book" --today $day import "${part%-2025}" "share/demo/$part.csv" \
		>>"$work/import.out" 2>&1
done
${CC:-cc} -std=c11 -D_DEFAULT_SOURCE -O2 tests/e2e/soak.c tests/e2e/window.c \
	tests/e2e/glass.c -lutil -o "$work/soak"

# What stands behind a word of the driver's report.
told() {
	sed -n "s/^$1 //p" "$work/told"
}

at_most() {
	[ "$(told "$1" | cut -d. -f1)" -le "$2" ]
}

# Others that work on this machine take part in every wall clock.
is_quiet() {
	awk -v n="$(nproc)" '{ exit !($1 < 0.7 * n) }' /proc/loadavg
}

# What was given back to the C library goes back to the system at once.
export MALLOC_TRIM_THRESHOLD_=0 MALLOC_TOP_PAD_=0
mkdir "$work/desk" # weekly sheets are left there
top=$PWD
cd "$work/desk" || exit 1
if is_quiet; then was_quiet=yes; else was_quiet=; fi
check "the program stays open" "$work/soak" "$prog" "$book" $day "$seed" $keys_typed \
	>"$work/told"
cd "$top" || exit 1
check "it was on most pages" [ "$(told pages)" -ge 12 ]
check "no file is left open" at_most files 0
check "the book is sound" $prog --book "$book" --today $day check >"$work/check"
if [ -z "${SANITIZED:-}" ]; then
	check "memory is flat within 1 MiB" at_most memory_kib 1024
	echo "$(told keys) keys on $(told pages) pages; $(told memory_kib) KiB grown" \
		"of $(told resident_kib); $(told files) files left open"
	echo "longest frame, ms: $(told frame_ms); processor for one, ms: $(told work_ms)"
	echo "processor for one that prints, ms: $(told print_ms)"
fi
if [ "${SOAK:-}" = whole ] && [ -z "${SANITIZED:-}" ]; then
	check "no frame has the processor work for over 50 ms" at_most worked_over 0
	if [ "$was_quiet" ] && is_quiet; then
		check "no frame takes over 50 ms" at_most over 0
	else
		echo "not judged by the clock, others work here: $(told over) frames over" \
			"50 ms (load $(cut -d' ' -f1-3 /proc/loadavg))"
	fi
fi

finish
